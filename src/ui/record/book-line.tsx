import type { TimelineLine } from '../../core/view/timeline-line';
import { clockTime } from '../time-words';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import './book-line.css';

const KIND: Readonly<Record<TimelineLine['kind'], PlainKey>> = {
  heard: 'line-heard',
  rejected: 'line-rejected',
  said: 'line-said',
  done: 'line-done',
  measured: 'line-measured',
  timer: 'line-timer',
  job: 'line-job',
  break: 'line-break',
  fault: 'line-fault',
  correction: 'line-correction',
  question: 'line-question',
  note: 'line-note',
  picture: 'line-picture',
};

const QUOTED: ReadonlySet<TimelineLine['kind']> = new Set(['heard', 'rejected']);

type BookLineProps = {
  readonly line: TimelineLine;
  /** Somebody has just jumped here. */
  readonly sought: boolean;
  /** The line that took this one back. */
  readonly takenBackBy: TimelineLine | undefined;
  /** The line this one takes back. */
  readonly takesBack: TimelineLine | undefined;
  readonly playing: boolean;
  readonly onJump: (seq: number) => void;
  readonly onPlay: (clip: string) => void;
};

/** A plain line of the day-book: when, what sort, the words. What was taken back is struck but stays. */
export function BookLine({ line, sought, takenBackBy, takesBack, playing, onJump, onPlay }: BookLineProps) {
  const w = useWords();
  const text = QUOTED.has(line.kind) ? <q>{line.text}</q> : line.text;
  return (
    <li class={`book-line book-${line.kind}${sought ? ' book-sought' : ''}`} tabIndex={sought ? -1 : undefined}>
      <time class="book-time" dateTime={new Date(line.at).toISOString()}>
        {clockTime(line.at)}
      </time>
      <span class="book-kind">{w(KIND[line.kind])}</span>
      <span class="book-text">
        {line.undone ? <s>{text}</s> : text}
        {line.who && <span class="book-who"> {w('line-who', { who: line.who })}</span>}
        {takenBackBy && (
          <Jump seq={takenBackBy.seq} onJump={onJump}>
            {w('line-taken-back', { when: clockTime(takenBackBy.at) })}
          </Jump>
        )}
        {takesBack && (
          <Jump seq={takesBack.seq} onJump={onJump}>
            {w('line-takes-back', { when: clockTime(takesBack.at), text: takesBack.text })}
          </Jump>
        )}
        {line.clip !== null && (
          <button type="button" class="book-link" aria-pressed={playing} onClick={() => line.clip && onPlay(line.clip)}>
            {w(line.kind === 'picture' ? 'clip-show' : playing ? 'clip-stop' : 'clip-play')}
          </button>
        )}
        {line.clip !== null && <span class="book-on-paper"> {w('clip-on-paper')}</span>}
      </span>
    </li>
  );
}

function Jump({
  seq,
  onJump,
  children,
}: {
  readonly seq: number;
  readonly onJump: (seq: number) => void;
  readonly children: string;
}) {
  return (
    <button type="button" class="book-link" onClick={() => onJump(seq)}>
      {children}
    </button>
  );
}
