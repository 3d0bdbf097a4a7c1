import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { Tappable } from '../../../core/view/tappable';
import { isBounce } from '../../bounce';
import type { OnUi } from '../../events';
import { Sheet } from '../../sheet';
import { useWords } from '../../words/words-context';
import { isLast, nextBlank, sentence } from './filled-sentence';
import { NumberPad } from './number-pad';
import './tap-sheet.css';

export type TapSheetProps = {
  /** What can be said under this revision. */
  readonly offered: () => readonly Tappable[];
  readonly revision: string;
  /** When the touch came that opened it, by the clock of events. */
  readonly openedAt: number;
  readonly on: OnUi;
  /** With the time of the touch that closed it; 0 where none did. */
  readonly onClose: (at: number) => void;
};

/** What stands in a sentence where something is still to be put in. */
const GAP = '…';

type Begun = { readonly rule: string; readonly revision: string; readonly filled: readonly string[] };

/**
 * Everything that can be said now, to be tapped: a complete sentence goes off as it stands, one with blanks once they
 * are filled in. It is sent as if it had been written, so the job asks back whatever it would have asked back.
 */
export function TapSheet({ offered, revision, openedAt, on, onClose }: TapSheetProps) {
  const w = useWords();
  const all = useMemo(() => offered(), [revision]);
  const [begun, begin] = useState<Begun | null>(null);
  const [cameUp, setCameUp] = useState(openedAt);
  // What was begun under other words is not gone on with.
  const now = begun?.revision === revision ? begun : null;
  const parts = all.find(({ rule }) => rule === now?.rule)?.parts;
  const blank = now && parts ? nextBlank(parts, now.filled) : undefined;

  const body = useRef<HTMLElement>(null);
  const stage = `${now?.rule} ${now?.filled.length}`;
  useEffect(() => {
    // The pad, where there is one: digits may come from a keyboard.
    const pad = body.current?.querySelector<HTMLElement>('.pad');
    (pad ?? body.current)?.focus({ preventScroll: true });
    body.current?.closest('dialog')?.scrollTo(0, 0);
  }, [stage]);
  const goOn = (to: Begun, of: Tappable['parts'], event: MouseEvent | null): void => {
    setCameUp(event?.timeStamp ?? cameUp);
    if (nextBlank(of, to.filled)) {
      begin(to);
      return;
    }
    onClose(event?.timeStamp ?? 0);
    on({ type: 'tapped', words: sentence(of, to.filled, GAP), revision });
  };
  const fill = (words: string, event: MouseEvent | null): void => {
    if (now && parts) goOn({ ...now, filled: [...now.filled, words] }, parts, event);
  };
  const firmly =
    (act: (event: MouseEvent) => void) =>
    (event: MouseEvent): void => {
      if (!isBounce(event, cameUp)) act(event);
    };

  const back = blank ? { label: w('tap-back'), go: () => begin(null) } : undefined;
  return (
    <Sheet
      title={parts && now ? sentence(parts, now.filled, GAP) : w('tap-title')}
      onClose={() => onClose(0)}
      back={back}
    >
      <section ref={body} class="tap" tabIndex={-1} aria-label={w('tap-title')}>
        {blank?.kind === 'number' && now && parts ? (
          <NumberPad
            key={now.filled.length}
            blank={blank}
            send={isLast(parts, now.filled) ? w('typed-send') : w('tap-on')}
            onDone={fill}
          />
        ) : (
          <ul class="tap-list">
            {blank?.kind === 'choice'
              ? blank.choices.map((words) => (
                  <Tap key={words} words={words} onTap={firmly((event) => fill(words, event))} />
                ))
              : all.map((one) => (
                  <Tap
                    key={one.rule}
                    words={sentence(one.parts, [], GAP)}
                    onTap={firmly((event) => goOn({ rule: one.rule, revision, filled: [] }, one.parts, event))}
                  />
                ))}
          </ul>
        )}
      </section>
    </Sheet>
  );
}

function Tap({ words, onTap }: { readonly words: string; readonly onTap: (event: MouseEvent) => void }) {
  return (
    <li>
      <button type="button" class="tap-sentence" onClick={onTap}>
        {words}
      </button>
    </li>
  );
}
