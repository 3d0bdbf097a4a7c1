import { assertNever } from '../core/result';
import type { Screen } from '../ui/app';
import type { ScreenName } from '../ui/events';
import type { Acknowledgement } from '../ui/setup/about';
import type { Settings } from '../ui/setup/settings';
import type { OfflineState } from '../ui/setup/storage-setup';
import type { VoiceChoice } from '../ui/setup/voice-setup';
import { benchScreen } from './bench-screen';
import type { RecordDesk } from './record/record-desk';
import type { Rooms } from './rooms';
import type { ShellParts } from './shell-parts';

export type Shown = {
  readonly name: ScreenName;
  readonly settings: Settings;
  readonly record: RecordDesk;
  readonly systemVoices: readonly VoiceChoice[];
  readonly acknowledgements: readonly Acknowledgement[];
  readonly offline: OfflineState;
};

/** What is on the screen, from what everybody has. Where there is no job to show, the list of jobs stands in. */
export function screenOf(shown: Shown, rooms: Rooms, parts: ShellParts): Screen {
  const { jobs, library, sound, storage } = rooms;
  const procedures = library.ready;
  const { lines } = jobs;
  const { people } = shown.settings;
  const list: Screen = { name: 'jobs', jobs: lines, procedures, people };
  switch (shown.name) {
    case 'start':
      return {
        name: 'start',
        started: sound.isOpen || sound.isRefused,
        jobs: lines.filter(({ card }) => !card.closed),
        procedures,
        people,
        isNew: lines.length === 0 && procedures.length > 0,
      };
    case 'bench':
      return bench(rooms, parts, shown.settings) ?? list;
    case 'record':
      return shown.record.screen() ?? list;
    case 'jobs':
      return list;
    case 'procedures':
      return { name: 'procedures', procedures: library.lines };
    case 'procedure':
      return rooms.procedures.screen(people) ?? { name: 'procedures', procedures: library.lines };
    case 'setup':
      return {
        name: 'setup',
        settings: shown.settings,
        today: new Date(parts.clock.wall()).toISOString().slice(0, 10),
        languages: parts.languages,
        spoken: parts.tongue.profile.code,
        builtInVoice: parts.tongue.profile.builtInVoice,
        systemVoices: shown.systemVoices,
        acknowledgements: shown.acknowledgements,
        model: rooms.models.state,
        ...rooms.setup.shown(),
        storage: storage.state,
        offline: shown.offline,
      };
    default:
      return assertNever(shown.name);
  }
}

function bench(
  rooms: Rooms,
  { tongue, words, clock }: ShellParts,
  { torqueUnit, volumeUnit }: Settings,
): Screen | null {
  const { seat, sound, say, session } = rooms;
  if (!seat.open) return null;
  return benchScreen(tongue, words, say, {
    seen: seat.open.desk.snapshot,
    moment: { at: clock.wall(), mono: clock.mono(), session },
    isSpeaking: sound.isSounding,
    isShut: sound.ear.isShutBy('pedal'),
    torqueUnit,
    volumeUnit,
  });
}
