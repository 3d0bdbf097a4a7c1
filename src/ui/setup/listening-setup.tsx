import { LevelMeter } from '../bench/level-meter';
import type { OnUi } from '../events';
import { FilePicker } from '../file-picker';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import { Choice } from './choice';
import { MicrophoneChoice, type Microphones } from './microphone-choice';
import type { Settings } from './settings';

export type MicrophoneCheck =
  | { readonly state: 'unchecked' }
  | { readonly state: 'checking'; readonly level: number }
  | { readonly state: 'heard'; readonly words: string }
  /** Sound came, but not as words that mean anything. */
  | { readonly state: 'unclear' }
  | { readonly state: 'silent' }
  | { readonly state: 'refused' };

export type NoiseCheck =
  | { readonly state: 'unchecked' }
  | { readonly state: 'measuring'; readonly level: number }
  /** `db` below full scale, as the microphone gives it: not a sound level meter's reading. */
  | { readonly state: 'quiet' | 'loud' | 'too-loud'; readonly db: number };

/** The model file the person has brought, where one is kept here. */
export type ModelState = { readonly name: string; readonly megabytes: number } | null;

const MICROPHONE: Readonly<Record<Exclude<MicrophoneCheck['state'], 'heard'>, PlainKey>> = {
  unchecked: 'microphone-unchecked',
  checking: 'microphone-checking',
  unclear: 'microphone-unclear',
  silent: 'microphone-silent',
  refused: 'microphone-refused',
};

const NOISE: Readonly<Record<NoiseCheck['state'], PlainKey>> = {
  unchecked: 'noise-unchecked',
  measuring: 'noise-measuring',
  quiet: 'noise-quiet',
  loud: 'noise-loud',
  'too-loud': 'noise-too-loud',
};

type ListeningSetupProps = {
  readonly settings: Settings;
  readonly microphones: Microphones;
  readonly microphone: MicrophoneCheck;
  readonly noise: NoiseCheck;
  readonly model: ModelState;
  readonly on: OnUi;
};

/** When it listens, with what, and whether it can hear at all where the machine stands. */
export function ListeningSetup({ settings, microphones, microphone, noise, model, on }: ListeningSetupProps) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-listening')}</h2>
      <Choice
        legend={w('talk-when')}
        value={settings.talk}
        options={[
          { value: 'always', label: w('talk-always') },
          { value: 'pedal', label: w('talk-pedal') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'talk', value })}
      />
      <MicrophoneChoice settings={settings} microphones={microphones} on={on} />
      <div class="setup-row">
        <button type="button" class="button" onClick={() => on({ type: 'check-microphone' })}>
          {w('microphone-check')}
        </button>
        <button type="button" class="button" onClick={() => on({ type: 'check-noise' })}>
          {w('noise-check')}
        </button>
      </div>
      {microphone.state === 'checking' && <LevelMeter level={microphone.level} state="listening" />}
      <p role="status">
        {microphone.state === 'heard'
          ? w('microphone-heard', { words: microphone.words })
          : w(MICROPHONE[microphone.state])}
      </p>
      {noise.state === 'measuring' && <LevelMeter level={noise.level} state="listening" />}
      <p role="status">
        {w(NOISE[noise.state])}{' '}
        {'db' in noise && <span class="quiet">{w('noise-db', { db: Math.round(noise.db) })}</span>}
      </p>
      <Choice
        legend={w('heard-keep')}
        value={settings.keepHeard ? 'on' : 'off'}
        options={[
          { value: 'off', label: w('heard-keep-off') },
          { value: 'on', label: w('heard-keep-on') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'keepHeard', value: value === 'on' })}
      />
      <p class="quiet">{w('heard-keep-means')}</p>
      <Choice
        legend={w('recogniser-which')}
        value={settings.recogniser}
        options={[
          { value: 'embedded', label: w('recogniser-embedded') },
          { value: 'own-model', label: w('recogniser-own'), disabled: model === null },
          { value: 'typed', label: w('recogniser-typed') },
        ]}
        onChoose={(value) => on({ type: 'setting-changed', key: 'recogniser', value })}
      />
      <p class="quiet">
        {model ? w('model-here', { name: model.name, size: Math.round(model.megabytes) }) : w('model-none')}
      </p>
      <FilePicker
        label={w('model-file')}
        accept=".zip,.tar.gz,.tgz"
        onFile={(file) => on({ type: 'import-files', what: 'model', files: [file] })}
      />
    </section>
  );
}
