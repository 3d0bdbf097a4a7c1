import { useState } from 'preact/hooks';
import { padKey } from '../../keyboard';
import { useWords } from '../../words/words-context';
import type { Blank } from './filled-sentence';
import { isWhole, withKey, withoutLast } from './number-entry';
import './number-pad.css';

type NumberPadProps = {
  readonly blank: Blank & { readonly kind: 'number' };
  /** The label of the button that takes the number. */
  readonly send: string;
  /** The number, with the words of its unit where it has one, and the touch that sent it, if one did. */
  readonly onDone: (words: string, event: MouseEvent | null) => void;
};

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;

/** A number keyed in with a knuckle: what it is so far, huge, beside keys as large as the Bench's buttons. */
export function NumberPad({ blank, send, onDone }: NumberPadProps) {
  const w = useWords();
  const [entry, setEntry] = useState('');
  // Where the unit must be named nobody guesses it.
  const first = blank.isUnitNeeded && blank.units.length > 1 ? null : (blank.units[0] ?? null);
  const [unit, setUnit] = useState(first);
  const isReady = isWhole(entry) && (unit !== null || blank.units.length === 0);
  const key = (pressed: string): void => setEntry((before) => withKey(before, pressed, blank.decimals));
  const done = (event: MouseEvent | null): void => {
    if (isReady) onDone(unit ? `${entry} ${unit.words}` : entry, event);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    const pressed = padKey(event.key);
    if (pressed === 'back') setEntry(withoutLast);
    else if (pressed !== 'done') key(pressed.put);
    // On a button it belongs to the button.
    else if (!(event.target instanceof HTMLButtonElement)) done(null);
  };

  const figure = entry.replace('.', blank.point);
  return (
    <section class="pad" tabIndex={-1} aria-label={w('pad-label')} onKeyDown={onKeyDown}>
      <div class="pad-side">
        <output class="pad-value">
          {figure}
          {unit ? ` ${unit.symbol}` : blank.symbol}
        </output>
        {blank.units.length > 1 && (
          <div class="pad-units">
            {blank.units.map((one) => (
              <button
                key={one.words}
                type="button"
                class="pad-unit"
                aria-pressed={one.words === unit?.words}
                onClick={() => setUnit(one)}
              >
                {one.symbol}
              </button>
            ))}
          </div>
        )}
        <button type="button" class="pad-send" disabled={!isReady} onClick={done}>
          {send}
        </button>
      </div>
      <div class="pad-keys">
        {DIGITS.map((digit) => (
          <button key={digit} type="button" class="pad-key" onClick={() => key(digit)}>
            {digit}
          </button>
        ))}
        <button
          type="button"
          class="pad-key"
          aria-label={w('pad-point-label')}
          disabled={blank.decimals === 0}
          onClick={() => key('.')}
        >
          {blank.point}
        </button>
        <button type="button" class="pad-key" onClick={() => key('0')}>
          0
        </button>
        <button type="button" class="pad-key pad-rub" onClick={() => setEntry(withoutLast)}>
          {w('pad-rub')}
        </button>
      </div>
    </section>
  );
}
