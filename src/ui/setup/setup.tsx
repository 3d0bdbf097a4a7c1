import type { IsoDay } from '../../core/fastening/wrench';
import type { ReadingView, VoiceLine } from '../../core/voice-profile/reading-view';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import { About, type Acknowledgement } from './about';
import { type CameraCheck, CameraSetup } from './camera-setup';
import { type LanguageChoice, LanguageSetup } from './language-setup';
import type { MicrophoneCheck, ModelState, NoiseCheck } from './listening-setup';
import { ListeningSetup } from './listening-setup';
import type { Microphones } from './microphone-choice';
import { PedalKeys } from './pedal-keys';
import { PeopleSetup } from './people-setup';
import { ScreenSetup } from './screen-setup';
import type { Settings } from './settings';
import { type OfflineState, StorageSetup, type StorageState } from './storage-setup';
import { UnitsSetup } from './units-setup';
import { type VoiceChoice, VoiceSetup } from './voice-setup';
import { VoicesSetup } from './voices-setup';
import { WrenchSetup } from './wrench-setup';
import './setup.css';

export type SetupProps = {
  readonly settings: Settings;
  /** The day by which calibrations are overdue. */
  readonly today?: IsoDay;
  readonly languages?: readonly LanguageChoice[];
  /** The language that is spoken now, which a choice may not have reached yet. */
  readonly spoken?: string;
  /** False where the embedded voice does not speak that language. */
  readonly builtInVoice?: boolean;
  readonly microphones?: Microphones;
  readonly microphone?: MicrophoneCheck;
  readonly noise?: NoiseCheck;
  readonly camera?: CameraCheck;
  readonly model?: ModelState;
  readonly voices?: readonly VoiceLine[];
  readonly reading?: ReadingView;
  /** The voices of the machine itself; none where the browser has none that works without a network. */
  readonly systemVoices?: readonly VoiceChoice[];
  readonly storage?: StorageState;
  readonly offline?: OfflineState;
  readonly acknowledgements?: readonly Acknowledgement[];
};

/** Everything that is set once and then left alone. Each change goes out at once; there is no save button to forget. */
export function Setup(props: SetupProps & { readonly on: OnUi }) {
  const { settings, on } = props;
  const w = useWords();
  return (
    <main class="page setup">
      <h1>{w('nav-setup')}</h1>
      <LanguageSetup languages={props.languages ?? []} spoken={props.spoken ?? settings.language} on={on} />
      <PeopleSetup people={settings.people} on={on} />
      <WrenchSetup wrenches={settings.wrenches} today={props.today ?? ''} on={on} />
      <UnitsSetup settings={settings} on={on} />
      <VoiceSetup
        settings={settings}
        systemVoices={props.systemVoices ?? []}
        builtInVoice={props.builtInVoice ?? true}
        on={on}
      />
      <ListeningSetup
        settings={settings}
        microphones={props.microphones ?? null}
        microphone={props.microphone ?? { state: 'unchecked' }}
        noise={props.noise ?? { state: 'unchecked' }}
        model={props.model ?? null}
        on={on}
      />
      <VoicesSetup
        voices={props.voices ?? []}
        chosen={settings.voiceProfile}
        people={settings.people}
        reading={props.reading ?? { state: 'closed' }}
        on={on}
      />
      <CameraSetup camera={props.camera ?? { state: 'unchecked' }} on={on} />
      <PedalKeys />
      <ScreenSetup settings={settings} on={on} />
      <StorageSetup storage={props.storage ?? null} offline={props.offline ?? null} on={on} />
      <About acknowledgements={props.acknowledgements ?? []} />
    </main>
  );
}
