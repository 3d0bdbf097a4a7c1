import type { BenchButton, BenchView } from '../../core/view/bench-view';
import { isBounce } from '../bounce';
import type { OnUi } from '../events';
import { letGo } from '../let-go';
import { useWords } from '../words/words-context';
import './fallback-buttons.css';

type FallbackButtonsProps = {
  readonly buttons: BenchView['buttons'];
  /** When a sheet was touched last that may have lain over them, by the clock of events. */
  readonly touchedAt: number;
  readonly on: OnUi;
};

/** Four buttons an elbow can hit, always in the same places, and stop, which is always there. */
export function FallbackButtons({ buttons, touchedAt, on }: FallbackButtonsProps) {
  const w = useWords();
  const press = (button: BenchButton) => on({ type: 'command', command: button.command, slots: button.slots });
  return (
    <section class="fallback" aria-label={w('buttons-label')}>
      {[0, 1, 2, 3].map((place) => {
        const button = buttons[place];
        return button ? (
          <button
            key={place}
            type="button"
            class={`fallback-button fallback-place-${place}`}
            onClick={(event) => {
              letGo(event);
              if (!isBounce(event, touchedAt)) press(button);
            }}
          >
            {button.label}
          </button>
        ) : (
          <span key={place} class={`fallback-empty fallback-place-${place}`} aria-hidden="true" />
        );
      })}
      <button
        type="button"
        class="fallback-button fallback-stop"
        onClick={(event) => {
          letGo(event);
          on({ type: 'command', command: 'stop', slots: 'none' });
        }}
      >
        {w('stop')}
        <small class="fallback-small">{w('stop-means')}</small>
      </button>
    </section>
  );
}
