import { readFileSync } from 'node:fs';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { heardClipId } from '../../src/core/log/heard-clip';
import type { VoiceEvent } from '../../src/core/ports';
import { fail, ok, type Result } from '../../src/core/result';
import { MOST_BYTES, MOST_MEGABYTES } from '../../src/shell/clips/clip-keeper';
import { Clips } from '../../src/shell/clips/clips';
import { LONGEST_MS, PATIENCE_MS, SILENCE_MS } from '../../src/shell/clips/note-taker';
import type { Still, StillFault } from '../../src/shell/clips/take-still';
import { beginJob, type DeskHost, type OpenJob } from '../../src/shell/job/job-desk';
import { NoticeBoard } from '../../src/shell/notice-board';
import type { Recorded } from '../../src/shell/sound/record-sound';
import { SharedEar } from '../../src/shell/sound/shared-ear';
import { SwitchedVoice } from '../../src/shell/sound/switched-voice';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { FakeEar, grammar, HandClock, say } from './fakes';

const file = 'procedures/tarnbeck-head-slice.yaml';
const start = { text: readFileSync(file, 'utf8'), file, machine: 'engine 7', who: 'Robin' };
const LOUD_DB = -20;
const QUIET_DB = -69;

/** Says nothing, and is done with it when the test says so. */
function handVoice() {
  const listeners = new Set<(event: VoiceEvent) => void>();
  const tell = (type: 'quiet' | 'sound-on' | 'sound-off') => {
    for (const listener of [...listeners]) listener({ type });
  };
  const voice = {
    say: () => undefined,
    prepare: () => undefined,
    play: () => undefined,
    hush: () => undefined,
    hold: () => undefined,
    resume: () => undefined,
    close: () => undefined,
    on: (listener: (event: VoiceEvent) => void) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
  return { voice, tell };
}

/** A recorder that gives so many bytes when it is stopped. */
function handRecorder() {
  let finish: ((it: Result<Recorded, { readonly code: 'not-recorded'; readonly detail: string }>) => void) | null =
    null;
  const recorder = {
    bytes: 1000,
    isRunning: () => finish !== null,
    end: () => {
      finish?.(ok({ mime: 'audio/webm', bytes: new Uint8Array(recorder.bytes) }));
      finish = null;
    },
    breakDown: () => {
      finish?.(fail({ code: 'not-recorded', detail: 'gone' }));
      finish = null;
    },
    record: (_: MediaStream, most: number) => {
      expect(most).toBe(MOST_BYTES);
      const done = new Promise<Result<Recorded, { readonly code: 'not-recorded'; readonly detail: string }>>(
        (resolve) => {
          finish = resolve;
        },
      );
      return { done, stop: () => recorder.end() };
    },
  };
  return recorder;
}

type Bench = Awaited<ReturnType<typeof bench>>;

async function bench() {
  const hands = new HandClock();
  const clock = { wall: () => 1_800_000_000_000 + hands.now, mono: () => hands.now };
  const memory = memoryStore();
  const disk = { isFull: false };
  const store: DeskHost['store'] = {
    ...memory,
    putBlob: async (...args) =>
      disk.isFull ? fail({ code: 'storage-full', detail: 'full' }) : memory.putBlob(...args),
  };
  const real = new FakeEar();
  const ear = new SharedEar(real);
  const { voice: plain, tell } = handVoice();
  const voice = new SwitchedVoice(plain);
  const recorder = handRecorder();
  const notices = new NoticeBoard(() => undefined);
  let ids = 0;
  const newId = () => `id-${++ids}`;
  const sound = { ear, voice, microphone: {} as MediaStream | null };
  const camera: { next: (asking: () => void) => Promise<Result<Still, StillFault>> } = {
    next: async () => ok({ mime: 'image/jpeg', bytes: new Uint8Array(5), camera: 'rear' }),
  };
  const clips = new Clips({
    record: recorder.record,
    still: (asking) => camera.next(asking),
    play: () => () => undefined,
    wav: async () => new Uint8Array(),
    url: () => ({ url: 'blob:', release: () => undefined }),
    sound,
    newId,
    after: hands.after,
    now: clock.mono,
    stopOnly: () => grammar('stop-only'),
    say,
    notices,
    changed: () => undefined,
  });
  const host: DeskHost = {
    store,
    hash: sha256Hex,
    clock,
    session: 's',
    newId,
    tongue: readTongue('en'),
    recogniser: ear,
    voice,
    after: hands.after,
    // As the shell does it.
    perform: (effect) => {
      if (effect === 'record-note') void clips.takeNote(open);
      if (effect === 'take-picture') void clips.takePicture(open);
      if (effect === 'hush') clips.stop();
    },
    settings: () => ({ people: [], wrenches: [], terse: false }),
  };
  const opened = await beginJob(host, start);
  if (!opened.ok) throw new Error(opened.error.code);
  const open: OpenJob = opened.value;
  const { desk } = open;
  desk.start([]);
  const type = async (words: string): Promise<void> => {
    hands.pass(1000);
    desk.type(words);
    await desk.idle();
  };
  const said = () => desk.snapshot.saidCode;
  return {
    ...{ hands, disk, store, real, ear, recorder, notices, sound, camera, clips, open, desk, type, said, tell },
    /** Heard by the ear as it is armed now. */
    heard: (words: string) => {
      const revision = real.asked.findLast((a) => a.startsWith('arm '))?.slice(4) ?? '';
      real.heard(revision, words);
    },
    /** Somebody speaks, or is silent, for so long; the level comes twenty times a second. */
    sounds: (db: number, ms: number) => {
      for (let passed = 0; passed < ms && recorder.isRunning(); passed += 50) {
        hands.pass(50);
        real.level(db);
      }
    },
    /** The prompt is over, and it records. */
    recording: async () => {
      await vi.waitFor(() => expect(said()).toBe('note-taking'));
      await vi.waitFor(() => {
        tell('quiet');
        expect(recorder.isRunning()).toBe(true);
      });
    },
    entries: (kind: string) => desk.snapshot.entries.filter((e) => e.kind === kind),
    blobs: async () => {
      const blobs = await store.blobs(open.card.id);
      if (!blobs.ok) throw new Error(blobs.error.code);
      return blobs.value;
    },
  };
}

describe('a note', () => {
  let b: Bench;
  beforeEach(async () => {
    b = await bench();
  });

  test('is asked for, recorded until a silence, kept, and told of; it stands at the step it was asked at', async () => {
    await b.type('take a note');
    const [step] = b.desk.job.plan.order;
    await b.recording();
    expect(b.notices.shown.map(({ id }) => id)).toEqual(['note']);
    b.sounds(LOUD_DB, 3000);
    // The work goes on by hand meanwhile.
    await b.type('this step is done');
    expect(b.desk.job.steps.size).toBe(1);
    b.sounds(LOUD_DB, 100);
    b.sounds(QUIET_DB, SILENCE_MS - 200);
    expect(b.recorder.isRunning()).toBe(true);
    b.sounds(QUIET_DB, 400);
    await vi.waitFor(() => expect(b.said()).toBe('note-kept'));
    const [blob] = await b.blobs();
    expect(b.entries('noted')).toMatchObject([{ step, blob: blob?.id }]);
    expect(b.notices.shown).toEqual([]);
  });

  test('no word of it is heard as a command, from the moment it is asked for until it is kept', async () => {
    const before = b.desk.job;
    const mine = b.desk.snapshot.live.revision;
    b.real.heard(mine, 'take a note');
    // The prompt is not over, nor even begun. Of what is asked for now the ear hears "stop" only.
    b.real.heard(mine, 'this step is done');
    await b.recording();
    b.sounds(LOUD_DB, 500);
    b.real.heard(mine, 'this step is done');
    b.sounds(QUIET_DB, SILENCE_MS + 100);
    b.real.heard(mine, 'this step is done');
    await vi.waitFor(() => expect(b.said()).toBe('note-kept'));
    expect(b.desk.job.steps).toEqual(before.steps);
    expect(b.entries('heard')).toHaveLength(1);
    // Then the desk has its ear again.
    await vi.waitFor(() => expect(b.real.asked.at(-1)).toBe(`arm ${mine}`));
    b.heard('this step is done');
    await vi.waitFor(() => expect(b.desk.job.steps.size).toBe(1));
  });

  test('answers no question that waits, which is asked again after it', async () => {
    await b.type('hand the job over');
    const question = b.said();
    const mine = b.desk.snapshot.live.revision;
    expect(b.desk.job.pending?.kind).toBe('hand-over');
    b.real.heard(mine, 'take a note');
    await b.recording();
    b.sounds(LOUD_DB, 500);
    b.real.heard(mine, 'agreed and confirmed');
    b.sounds(QUIET_DB, SILENCE_MS + 100);
    await vi.waitFor(() => expect(b.said()).toBe(`note-kept ${question}`));
    expect(b.desk.job.pending?.kind).toBe('hand-over');
    expect(b.entries('handed-over')).toEqual([]);
  });

  test('can be taken on a break, which goes on', async () => {
    await b.type('hold on');
    await b.type('take a note');
    await b.recording();
    b.sounds(LOUD_DB, 500);
    b.sounds(QUIET_DB, SILENCE_MS + 100);
    await vi.waitFor(() => expect(b.said()).toBe('note-kept'));
    expect(b.desk.job.paused).toBe(true);
  });

  test.each<[string, (at: Bench) => void]>([
    ['"stop" said into it', (at) => at.heard('stop')],
    ['"stop" by a button', (at) => at.desk.press({ rule: 'stop', slots: {} }, 'stop')],
    ['asking for one again', (at) => at.desk.press({ rule: 'take-note', slots: {} }, 'take-note')],
    ['leaving the job', (at) => void at.clips.settle()],
  ])('%s ends it, and it is kept', async (_, end) => {
    await b.type('take a note');
    await b.recording();
    b.sounds(LOUD_DB, 1000);
    end(b);
    await vi.waitFor(() => expect(b.said()).toBe('note-kept'));
    expect(b.entries('noted')).toHaveLength(1);
  });

  test('is not there where nothing was said', async () => {
    await b.type('take a note');
    await b.recording();
    b.sounds(QUIET_DB, PATIENCE_MS - 200);
    expect(b.recorder.isRunning()).toBe(true);
    b.sounds(QUIET_DB, 400);
    await vi.waitFor(() => expect(b.said()).toBe('note-empty'));
    expect(await b.blobs()).toEqual([]);
    expect(b.entries('noted')).toEqual([]);
  });

  test('of more than a minute is cut, kept, and said to be cut', async () => {
    await b.type('take a note');
    await b.recording();
    b.sounds(LOUD_DB, LONGEST_MS - 100);
    expect(b.recorder.isRunning()).toBe(true);
    b.sounds(LOUD_DB, 200);
    await vi.waitFor(() => expect(b.said()).toBe('note-cut'));
    expect(b.entries('noted')).toHaveLength(1);
  });

  test('that has grown too large, or whose microphone goes, is cut and kept', async () => {
    await b.type('take a note');
    await b.recording();
    b.sounds(LOUD_DB, 1000);
    b.recorder.end();
    await vi.waitFor(() => expect(b.said()).toBe('note-cut'));
    expect(b.entries('noted')).toHaveLength(1);
  });

  test('goes on while the app itself speaks in it', async () => {
    await b.type('take a note');
    await b.recording();
    b.sounds(LOUD_DB, 500);
    b.tell('sound-on');
    b.hands.pass(SILENCE_MS + 1000);
    b.tell('sound-off');
    b.sounds(QUIET_DB, 500);
    expect(b.recorder.isRunning()).toBe(true);
    b.sounds(QUIET_DB, SILENCE_MS);
    await vi.waitFor(() => expect(b.said()).toBe('note-kept'));
  });

  test('cannot be recorded without a microphone, nor by a recorder that breaks down; the job goes on', async () => {
    await b.type('take a note');
    await b.recording();
    b.recorder.breakDown();
    await vi.waitFor(() => expect(b.said()).toBe('note-failed'));
    b.sound.microphone = null;
    await b.type('take a note');
    expect(b.said()).toBe('note-no-microphone');
    await b.type('this step is done');
    expect(b.desk.job.steps.size).toBe(1);
  });
});

describe('a picture', () => {
  test('is taken, kept and told of', async () => {
    const b = await bench();
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.said()).toBe('picture-taken'));
    const [blob] = await b.blobs();
    expect(b.entries('pictured')).toMatchObject([{ step: b.desk.job.plan.order[0], blob: blob?.id }]);
    expect(blob?.mime).toBe('image/jpeg');
  });

  test.each<[StillFault['code'], string]>([
    ['no-camera', 'picture-no-camera'],
    ['refused', 'picture-refused'],
    ['busy', 'picture-busy'],
    ['failed', 'picture-failed'],
  ])('with the camera %s: said, and the job goes on', async (code, reply) => {
    const b = await bench();
    b.camera.next = async () => fail({ code, detail: '' });
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.said()).toBe(reply));
    expect(await b.blobs()).toEqual([]);
    await b.type('this step is done');
    expect(b.desk.job.steps.size).toBe(1);
  });

  test('that the browser asks about: said, asked once, and taken when it is allowed', async () => {
    const b = await bench();
    let allow = (): void => undefined;
    let asked = 0;
    b.camera.next = (asking) => {
      asked += 1;
      asking();
      return new Promise((resolve) => {
        allow = () => resolve(ok({ mime: 'image/jpeg', bytes: new Uint8Array(5), camera: '' }));
      });
    };
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.said()).toBe('picture-asks'));
    await b.type('take a picture');
    expect(asked).toBe(1);
    allow();
    await vi.waitFor(() => expect(b.said()).toBe('picture-taken'));
    expect(b.entries('pictured')).toHaveLength(1);
  });
});

describe('a disk that refuses them', () => {
  test('is told of and they wait; stored when asked again, in their order and at their steps', async () => {
    const b = await bench();
    b.disk.isFull = true;
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.said()).toBe('clip-not-kept'));
    expect(b.entries('pictured')).toEqual([]);
    const [notice] = b.notices.shown;
    expect(notice?.text).toContain(say('storage-full'));
    expect(notice?.acts?.map(({ event }) => event)).toEqual([{ type: 'keep-clips' }]);
    await b.type('this step is done');
    await b.clips.keepAgain(b.open);
    expect(b.entries('pictured')).toEqual([]);
    b.disk.isFull = false;
    await b.clips.keepAgain(b.open);
    await vi.waitFor(() => expect(b.said()).toBe('picture-taken'));
    expect(b.entries('pictured')).toMatchObject([{ step: b.desk.job.plan.order[0] }]);
    expect(b.notices.shown).toEqual([]);
    expect(await b.blobs()).toHaveLength(1);
  });

  test('a few wait; after that none is begun, which is said before anybody speaks', async () => {
    const b = await bench();
    b.disk.isFull = true;
    for (let n = 0; n < 4; n++) {
      await b.type('where am i');
      await b.type('take a picture');
      await vi.waitFor(() => expect(b.said()).toBe('clip-not-kept'));
    }
    await b.type('take a note');
    await vi.waitFor(() => expect(b.said()).toBe('clips-waiting'));
    b.disk.isFull = false;
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.entries('pictured')).toHaveLength(5));
  });
});

describe('the bound of a job', () => {
  const BOUND = MOST_MEGABYTES * 1_000_000;
  const filled = async (bytes: number, id = 'old') => {
    const b = await bench();
    await b.store.putBlob(b.open.card.id, { id, mime: 'image/jpeg', bytes: new Uint8Array(bytes) });
    return b;
  };

  test('where it is reached, the next is refused in words before it is taken, and none is dropped', async () => {
    const b = await filled(BOUND - MOST_BYTES + 1);
    for (const words of ['take a note', 'take a picture']) {
      await b.type('where am i');
      await b.type(words);
      await vi.waitFor(() => expect(b.said()).toBe('clips-full'));
    }
    expect(b.recorder.isRunning()).toBe(false);
    expect((await b.blobs()).map(({ id }) => id)).toEqual(['old']);
    // The ear is given back.
    await vi.waitFor(() => expect(b.real.asked.at(-1)).toBe(`arm ${b.desk.snapshot.live.revision}`));
  });

  test('one more that may be as large as any still goes in', async () => {
    const b = await filled(BOUND - MOST_BYTES);
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.said()).toBe('picture-taken'));
  });

  test('clips of what was heard have a bound of their own', async () => {
    const b = await filled(BOUND, heardClipId({ seq: 1, at: 1 }));
    await b.type('take a picture');
    await vi.waitFor(() => expect(b.said()).toBe('picture-taken'));
  });
});
