import { describe, expect, test } from 'vitest';
import type { Lesson, LineVerdict, ReadingAloud, ReadingEvent } from '../../src/core/voice-profile/reading-aloud';
import { ReadingSession } from '../../src/shell/setup/reading-session';
import { SharedEar } from '../../src/shell/sound/shared-ear';
import { FakeEar, grammar, HandClock } from './fakes';

const LESSON: Lesson = {
  model: { folder: 'en-us', checksum: 1 },
  means: null,
  voiceDb: -30,
  noiseDb: -60,
  sureness: 'sure',
};

/** A reading ear that writes down what is asked of it. */
class FakeReader implements ReadingAloud {
  readonly asked: string[] = [];
  #tell: (event: ReadingEvent) => void = () => undefined;
  readonly read = (words: readonly string[]) => void this.asked.push(words.join(' '));
  readonly learn = () => void this.asked.push('LEARN');
  readonly end = () => void this.asked.push('END');
  readonly on = (listener: (event: ReadingEvent) => void) => {
    this.#tell = listener;
    return () => {
      this.#tell = () => undefined;
    };
  };

  tell(event: ReadingEvent): void {
    this.#tell(event);
  }

  line(verdict: LineVerdict): void {
    this.tell({ type: 'line', heard: { verdict, voiceDb: -30, noiseDb: -60 } });
  }
}

async function reading(parts: { readonly isOther?: boolean; readonly canKeep?: boolean } = {}) {
  const real = new FakeEar();
  const clock = new HandClock();
  const reader = new FakeReader();
  const kept: Lesson[] = [];
  const ear = new SharedEar(real);
  const toDesk: string[] = [];
  ear.on(({ type }) => toDesk.push(type));
  ear.arm(grammar('job'));
  const session = new ReadingSession({
    ear,
    reading: async () => (parts.isOther ? null : reader),
    lines: ['Oil the threads.', 'Both must be cold.'],
    grammar: () => grammar('check'),
    after: clock.after,
    keep: async (lesson) => {
      kept.push(lesson);
      return parts.canKeep ?? true;
    },
    changed: () => undefined,
  });
  await session.begin();
  return { real, clock, reader, kept, session, toDesk };
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done));

describe('lines read aloud', () => {
  test('are asked for one at a time, then learned from, kept, and the ear is given back', async () => {
    const { real, reader, kept, session } = await reading();
    expect(session.view).toEqual({ state: 'waiting' });
    real.level(-40);
    expect(session.view).toMatchObject({ state: 'reading', line: 1, of: 2, text: 'Oil the threads.', last: null });
    reader.line('good');
    expect(session.view).toMatchObject({ line: 2, text: 'Both must be cold.', last: 'good' });
    reader.line('good');
    expect(session.view).toEqual({ state: 'learning' });
    reader.tell({ type: 'lesson', lesson: LESSON });
    await settled();
    expect(kept).toEqual([LESSON]);
    expect(session.view).toEqual({ state: 'done', found: 'fits-already', voiceDb: -30, noiseDb: -60 });
    expect(reader.asked).toEqual(['oil the threads', 'both must be cold', 'LEARN', 'END']);
    expect(real.asked.at(-1)).toBe('arm job');
  });

  test.each<LineVerdict>(['unlike', 'too-quiet', 'too-loud', 'too-noisy'])(
    'one that was %s is asked for again',
    async (verdict) => {
      const { real, reader, session } = await reading();
      real.level(-40);
      reader.line(verdict);
      expect(session.view).toMatchObject({ line: 1, text: 'Oil the threads.', last: verdict });
    },
  );

  test('one that does not come is told of after a while, and can be left out', async () => {
    const { real, clock, session } = await reading();
    real.level(-60);
    clock.pass(15_000);
    expect(session.view).toMatchObject({ line: 1, last: 'nothing' });
    session.skip();
    expect(session.view).toMatchObject({ line: 2, last: null });
  });

  test('move nothing: what is heard meanwhile is kept from the job', async () => {
    const { real, toDesk } = await reading();
    real.heard('loan/1', 'this step is done');
    real.heard('job', 'this step is done');
    expect(toDesk).not.toContain('heard');
  });

  test('that are stopped leave nothing behind', async () => {
    const { real, reader, kept, session } = await reading();
    real.level(-40);
    session.stop();
    reader.line('good');
    reader.tell({ type: 'lesson', lesson: LESSON });
    await settled();
    expect(kept).toEqual([]);
    expect(reader.asked.at(-1)).toBe('END');
    expect(real.asked.at(-1)).toBe('arm job');
  });
});

describe('a reading ends in words', () => {
  test.each([
    { what: 'another recogniser listens', why: 'other-recogniser', parts: { isOther: true }, happens: () => undefined },
    {
      what: 'the browser refuses the microphone',
      why: 'refused',
      parts: {},
      happens: (real: FakeEar) => real.tell({ type: 'failed', code: 'microphone-refused', detail: '' }),
    },
    {
      what: 'the microphone is gone',
      why: 'no-microphone',
      parts: {},
      happens: (real: FakeEar) => real.tell({ type: 'failed', code: 'microphone-lost', detail: '' }),
    },
    {
      what: 'too few lines were good',
      why: 'too-few',
      parts: {},
      happens: (_: FakeEar, reader: FakeReader) => reader.tell({ type: 'lesson', lesson: null }),
    },
    {
      what: 'the model cannot be adapted',
      why: 'model',
      parts: {},
      happens: (_: FakeEar, reader: FakeReader) => reader.tell({ type: 'reading-failed', detail: 'mdef' }),
    },
    {
      what: 'the store refuses',
      why: 'not-kept',
      parts: { canKeep: false },
      happens: (_: FakeEar, reader: FakeReader) => reader.tell({ type: 'lesson', lesson: LESSON }),
    },
  ])('where $what', async ({ why, parts, happens }) => {
    const { real, reader, session } = await reading(parts);
    happens(real, reader);
    await settled();
    expect(session.view).toEqual({ state: 'failed', why });
  });
});
