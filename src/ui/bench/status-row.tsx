import type { BenchView } from '../../core/view/bench-view';
import { countdown } from '../time-words';
import { useWords } from '../words/words-context';
import './status-row.css';

type StatusRowProps = {
  readonly view: BenchView;
  readonly onShowLooseEnds: () => void;
};

/** What must not be forgotten while the eye is on the bolt: the phase, loose ends, timers, whose figures these are. */
export function StatusRow({ view, onShowLooseEnds }: StatusRowProps) {
  const w = useWords();
  return (
    <div class="status">
      {view.demonstration && <strong class="status-demonstration">{w('demonstration-mark')}</strong>}
      <button type="button" class="status-ends" onClick={onShowLooseEnds} disabled={view.looseEnds.length === 0}>
        {w('loose-ends-count', { count: view.looseEnds.length })}
      </button>
      <ul class="status-timers" aria-label={w('timers')}>
        {view.timers.map((t) => (
          <li key={t.say} class={t.over ? 'timer timer-over' : 'timer'}>
            {t.say} <b class="timer-left">{t.over ? w('timer-over') : countdown(t.leftMs)}</b>
          </li>
        ))}
      </ul>
    </div>
  );
}
