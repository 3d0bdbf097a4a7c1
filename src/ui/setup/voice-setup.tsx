import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import type { Settings } from './settings';

/** A voice of the machine itself that speaks without a network. */
export type VoiceChoice = { readonly uri: string; readonly name: string };

type VoiceSetupProps = {
  readonly settings: Settings;
  readonly systemVoices: readonly VoiceChoice[];
  /** False where the embedded voice does not speak the language: then a voice of the machine stands in for it. */
  readonly builtInVoice: boolean;
  readonly on: OnUi;
};

export function VoiceSetup({ settings, systemVoices, builtInVoice, on }: VoiceSetupProps) {
  const w = useWords();
  const voice = settings.voice === 'embedded' && !builtInVoice ? 'system' : settings.voice;
  return (
    <section>
      <h2>{w('setup-voice')}</h2>
      <Choice
        legend={w('voice-which')}
        value={voice}
        options={[
          ...(builtInVoice ? [{ value: 'embedded' as const, label: w('voice-embedded') }] : []),
          { value: 'system', label: w('voice-system'), disabled: systemVoices.length === 0 },
          { value: 'silent', label: w('voice-silent') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'voice', value })}
      />
      {!builtInVoice && systemVoices.length === 0 && <p>{w('voice-none')}</p>}
      {voice === 'system' && systemVoices.length > 0 && (
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
      <Choice
        legend={w('speech-which')}
        value={settings.terse ? 'terse' : 'full'}
        options={[
          { value: 'full', label: w('speech-in-full') },
          { value: 'terse', label: w('speech-numbers') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'terse', value: value === 'terse' })}
      />
      <p class="quiet">{w('speech-means')}</p>
      <button type="button" class="button" onClick={() => on({ type: 'try-voice' })}>
        {w('voice-try')}
      </button>
    </section>
  );
}
