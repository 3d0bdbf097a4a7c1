import type { ReadingView, VoiceLine } from '../../core/voice-profile/reading-view';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import { ReadingSheet } from './reading-sheet';

type VoicesSetupProps = {
  readonly voices: readonly VoiceLine[];
  /** The one the ear listens with; empty for nobody's. */
  readonly chosen: string;
  readonly people: readonly string[];
  readonly reading: ReadingView;
  readonly on: OnUi;
};

/** Whose voice, at which microphone, the ear listens for; and the way to teach it one. It listens without any. */
export function VoicesSetup({ voices, chosen, people, reading, on }: VoicesSetupProps) {
  const w = useWords();
  const nameOf = ({ person, headset }: VoiceLine): string => w('profile-name', { person, headset });
  return (
    <section>
      <h2>{w('setup-voices')}</h2>
      <p>{w('voices-mean')}</p>
      {voices.length > 0 && (
        <Choice
          legend={w('voices-whose')}
          value={voices.some(({ id }) => id === chosen) ? chosen : ''}
          options={[
            { value: '', label: w('voices-nobody') },
            ...voices.map((voice) => ({ value: voice.id, label: nameOf(voice) })),
          ]}
          onChoose={(value) => on({ type: 'setting-changed', key: 'voiceProfile', value })}
        />
      )}
      <ul class="setup-list">
        {voices.map((voice) => (
          <li key={voice.id}>
            <span>{nameOf(voice)}</span>
            <button
              type="button"
              class="button button-plain"
              aria-label={w('job-action', { action: w('setup-remove'), title: nameOf(voice) })}
              onClick={() => on({ type: 'delete-voice', id: voice.id })}
            >
              {w('setup-remove')}
            </button>
          </li>
        ))}
      </ul>
      <button type="button" class="button" onClick={() => on({ type: 'reading-open' })}>
        {w('reading-start')}
      </button>
      {reading.state !== 'closed' && <ReadingSheet reading={reading} people={people} on={on} />}
    </section>
  );
}
