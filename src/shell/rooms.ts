import type { RuleName } from '../core/job/command';
import { MANNERS } from '../core/job/command';
import type { Reply } from '../core/phrasing/reply';
import type { Settings } from '../ui/setup/settings';
import { sayer } from '../ui/words/say';
import type { Say } from '../ui/words/words';
import { Clips } from './clips/clips';
import type { HeardClips } from './clips/heard-clips';
import type { Everything } from './everything/everything';
import type { JobImports } from './job/imports';
import type { DeskHost } from './job/job-desk';
import { Jobs } from './job/jobs';
import { Seat } from './job/seat';
import { Writing } from './job/writing';
import { Library } from './library';
import { NoticeBoard } from './notice-board';
import { ProcedureDesk } from './procedure-desk';
import type { Exports } from './record/exports';
import { RecordRoom } from './record/record-room';
import { ModelDesk } from './setup/model-desk';
import { SetupRoom } from './setup/setup-room';
import { StorageWatch } from './setup/storage-watch';
import type { ShellParts } from './shell-parts';
import { microphoneWatch } from './sound/microphone-watch';
import { PushToTalk } from './sound/push-to-talk';
import { Sound } from './sound/sound';

/** Everyone who answers something that is done on a screen. */
export type Rooms = {
  readonly say: Say;
  readonly session: string;
  readonly notices: NoticeBoard;
  readonly sound: Sound;
  readonly talk: PushToTalk;
  readonly seat: Seat;
  readonly jobs: Jobs;
  readonly library: Library;
  readonly procedures: ProcedureDesk;
  /** Fetched when the first file comes. */
  readonly imports: () => Promise<JobImports>;
  /** Fetched when something is to leave. */
  readonly exports: () => Promise<Exports>;
  /** Fetched when all of it is to leave or to come. */
  readonly everything: () => Promise<Everything>;
  readonly record: RecordRoom;
  readonly clips: Clips;
  /** Fetched when the first clip of what was heard is kept or looked for. */
  readonly heardClips: () => Promise<HeardClips>;
  readonly storage: StorageWatch;
  readonly models: ModelDesk;
  readonly setup: SetupRoom;
};

type Hooks = {
  readonly settings: () => Settings;
  readonly perform: DeskHost['perform'];
  /** Uses settings from now on, and keeps them. */
  readonly change: (settings: Settings) => Promise<void>;
  readonly changed: () => void;
};

/** Puts them together. None knows more of the others than it is given here. */
export function roomsOf(parts: ShellParts, { settings, perform, change, changed }: Hooks): Rooms {
  const { store, hash, tongue, after, clock, newId } = parts;
  const session = newId();
  const say = sayer(parts.words);
  const words = { say, show: (replies: readonly Reply[]) => tongue.phrase(replies).shown };
  const grammarOf = (...rules: readonly RuleName[]) =>
    tongue.liveGrammar(
      rules.map((rule) => ({ rule, manner: MANNERS[rule], slots: {} })),
      '',
    );
  const notices = new NoticeBoard(changed);
  const breathing = { now: clock.mono, after };
  const models = new ModelDesk(parts.models, say, notices);
  const sound: Sound = new Sound(
    parts.sound,
    settings,
    (news) => models.tell(news),
    async (id) => (await setup.desk()).voices.aid(id),
    () => void setup.desk().then(({ voices }) => voices.unaided()),
    microphoneWatch({
      settings,
      say,
      notices,
      speak: (news) => {
        if (seat.open) seat.open.desk.tell([news]);
        else sound.voice.say({ id: news.code, text: tongue.phrase([news]).spoken, priority: 'normal' });
      },
    }),
  );
  sound.ear.on(({ type }) => {
    if (type === 'ready' || type === 'failed') notices.clear('model-loading');
  });
  const host = (): DeskHost => {
    const { ear: recogniser, voice } = sound;
    return { store, hash, clock, newId, tongue, after, session, recogniser, voice, perform, settings };
  };
  const seat = new Seat(host, notices, say, changed, () => clips.settle());
  const library = new Library(tongue.profile.code, store, parts.documents, changed);
  const writing = new Writing(parts.lock, say, notices, () => void jobs.look().then(changed));
  const jobs = new Jobs({ parts, host, seat, library, writing, notices, say, changed });
  const setup = new SetupRoom({
    store,
    newId,
    say,
    notices,
    after,
    changed,
    choose: (id) => change({ ...settings(), voiceProfile: id }),
    words: parts.words,
    microphones: parts.microphones,
    camera: parts.clips,
    now: clock.wall,
    chosen: () => settings().voiceProfile,
    ear: sound.ear,
    reading: () => sound.reading(),
    grammar: () => grammarOf('tell-next', 'tell-place'),
  });
  const leave = async (id: string): Promise<void> => {
    if (seat.open?.card.id === id) await seat.leave();
  };
  let fetched: Promise<JobImports> | undefined;
  let heard: Promise<HeardClips> | undefined;
  const heardClips = (): Promise<HeardClips> => {
    heard ??= import('./clips/heard-clips').then(
      (it) => new it.HeardClips(parts.clips.wav, () => notices.news('clip', say('heard-not-kept'))),
    );
    return heard;
  };
  sound.ear.on((event) => {
    if ('sound' in event && event.sound) void keepHeard(event.sound);
  });
  const keepHeard = async (samples: Float32Array): Promise<void> => {
    // The desk, told of the same event, writes its line first.
    await null;
    const { open } = seat;
    const line = open?.desk.snapshot.entries.findLast(({ kind }) => kind === 'heard' || kind === 'rejected');
    if (open && line) await (await heardClips()).keep(open, line, samples);
    changed();
  };
  const exports = async () =>
    new (await import('./record/exports')).Exports(store, parts.save, words, notices, breathing);
  const everything = async () => {
    const { Everything } = await import('./everything/everything');
    return new Everything({
      store,
      now: clock.wall,
      save: parts.save,
      library,
      settings,
      change,
      exports,
      say,
      notices,
    });
  };
  const clipHost = { ...parts.clips, sound, newId, after, now: clock.mono, say, notices, changed };
  const clips = new Clips({ ...clipHost, stopOnly: () => grammarOf('stop') });
  return {
    say,
    session,
    notices,
    sound,
    talk: new PushToTalk(sound.ear, () => sound.voice.hush(), after, changed),
    seat,
    jobs,
    library,
    procedures: new ProcedureDesk(library, say, notices, parts.words, tongue.profile.code),
    imports: () => {
      fetched ??= import('./job/imports').then(
        (it) =>
          new it.JobImports(
            store,
            hash,
            tongue.profile.code,
            say,
            notices,
            writing,
            leave,
            async (...file) => {
              await (await everything()).take(...file, (share) =>
                notices.work('share', say('everything-taking'), share),
              );
              notices.clear('share');
              await seat.wrenchesChanged();
            },
            breathing,
          ),
      );
      return fetched;
    },
    exports,
    everything,
    record: new RecordRoom(words),
    heardClips,
    clips,
    storage: new StorageWatch(store, say, notices),
    models,
    setup,
  };
}
