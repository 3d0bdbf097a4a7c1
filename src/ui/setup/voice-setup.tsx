import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import type { Settings } from './settings';

type VoiceSetupProps = { readonly settings: Settings; readonly systemVoice: boolean; readonly on: OnUi };

export function VoiceSetup({ settings, systemVoice, on }: VoiceSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-voice')}</h2>
      <Choice
        legend={w('voice-which')}
        value={settings.voice}
        options={[
          { value: 'embedded', label: w('voice-embedded') },
          { value: 'system', label: w('voice-system'), disabled: !systemVoice },
          { value: 'silent', label: w('voice-silent') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'voice', value })}
      />
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
