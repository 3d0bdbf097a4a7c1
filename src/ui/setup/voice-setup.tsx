import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import type { Settings } from './settings';

/** A voice of the machine itself that speaks without a network. */
export type VoiceChoice = { readonly uri: string; readonly name: string };

type VoiceSetupProps = {
  readonly settings: Settings;
  readonly systemVoices: readonly VoiceChoice[];
  readonly on: OnUi;
};

export function VoiceSetup({ settings, systemVoices, on }: VoiceSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-voice')}</h2>
      <Choice
        legend={w('voice-which')}
        value={settings.voice}
        options={[
          { value: 'embedded', label: w('voice-embedded') },
          { value: 'system', label: w('voice-system'), disabled: systemVoices.length === 0 },
          { value: 'silent', label: w('voice-silent') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'voice', value })}
      />
      {settings.voice === 'system' && (
        <label class="field">
          {w('voice-system-which')}
          <select
            value={settings.systemVoice}
            onChange={(event) => on({ type: 'setting-changed', key: 'systemVoice', value: event.currentTarget.value })}
          >
            {systemVoices.map(({ uri, name }) => (
              <option key={uri} value={uri}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <label class="field">
        {w('voice-rate', { rate: settings.speechRate.toFixed(1) })}
        <input
          type="range"
          min="0.7"
          max="1.3"
          step="0.1"
          value={settings.speechRate}
          onChange={(event) =>
            on({ type: 'setting-changed', key: 'speechRate', value: Number(event.currentTarget.value) })
          }
        />
      </label>
      <button type="button" class="button" onClick={() => on({ type: 'try-voice' })}>
        {w('voice-try')}
      </button>
    </section>
  );
}
