import { beforeEach, describe, expect, test } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { openWorkshop } from '../../src/cli/workshop';
import { revisionOf } from '../../src/core/job/revision';
import type { Desk } from '../../src/machine/desk';
import { typedRecogniser } from '../../src/speech/typed';

const tongue = readTongue('en');
let ear: ReturnType<typeof typedRecogniser>;
let desk: Desk;

beforeEach(async () => {
  ear = typedRecogniser();
  const opened = await openWorkshop('procedures/practice-plate.yaml', tongue, ear);
  if (!opened.ok) return expect.unreachable(opened.error.join());
  desk = opened.value;
});

const tap = async (words: string, revision = revisionOf(desk.job)): Promise<void> => {
  desk.tap(words, revision);
  await desk.idle();
};
const last = (kind: string) => desk.snapshot.entries.findLast((entry) => entry.kind === kind);

describe('a sentence that is tapped', () => {
  test('does what it would do written, and is down as touched', async () => {
    await tap('this step is done');
    expect(last('heard')).toMatchObject({ words: 'this step is done', by: 'touch', command: 'done' });
    expect(last('step-done')).toMatchObject({ step: 'clamp' });
  });

  test('of a place that has been left does nothing', async () => {
    const before = revisionOf(desk.job);
    await tap('this step is done');
    const { length } = desk.job.entries;
    await tap('it reads top on the handle side', before);
    expect(last('rejected')).toMatchObject({ why: 'stale' });
    expect(desk.job.entries).toHaveLength(length);
  });

  test('asks back whatever it would have asked back, and a second tap is no confirmation', async () => {
    await tap('hand the job over');
    expect(desk.job.pending).toEqual({ kind: 'hand-over' });
    await tap('hand the job over');
    expect(desk.job.pending).toEqual({ kind: 'hand-over' });
    await tap('agreed and confirmed');
    expect(last('handed-over')).toBeDefined();
  });

  test('with a number out of place is told what was given, each time', async () => {
    for (const words of [
      'this step is done',
      'it reads top on the handle side',
      'this step is done',
      'i have the time',
    ])
      await tap(words);
    for (const _ of [1, 2]) {
      await tap('set at 5000 newton metres');
      expect(desk.snapshot).toMatchObject({ heard: { did: 'rejected', outcome: 'almost' }, saidCode: 'almost' });
      await tap('say again');
    }
    await tap('set at 15 newton metres');
    expect(last('setting-confirmed')).toMatchObject({ value: 15, unit: 'N·m' });
  });
});

describe('with the ears off', () => {
  beforeEach(() => tap('ears off now'));

  test('hands still work, tapping and writing', async () => {
    await tap('this step is done');
    desk.type('it reads top on the handle side');
    await desk.idle();
    expect(last('question-answered')).toMatchObject({ right: true });
  });

  test('nothing that is said counts but what opens them', async () => {
    ear.type('this step is done');
    await desk.idle();
    expect(last('step-done')).toBeUndefined();
    ear.type('listen to me again');
    ear.type('this step is done');
    await desk.idle();
    expect(last('step-done')).toBeDefined();
  });
});
