import { beforeEach, describe, expect, test } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { openWorkshop } from '../../src/cli/workshop';
import { command } from '../../src/core/job/command';
import type { RejectReason } from '../../src/core/ports';
import type { Desk } from '../../src/machine/desk';
import { didSoFar, earScreen } from '../../src/shell/ear-screen';
import { FakeEar, say } from './fakes';

const tongue = readTongue('en');
let ear: FakeEar;
let desk: Desk;

beforeEach(async () => {
  ear = new FakeEar();
  const opened = await openWorkshop('procedures/practice-plate.yaml', tongue, ear);
  if (!opened.ok) return expect.unreachable(opened.error.join());
  desk = opened.value;
  ear.tell({ type: 'ready', msToLoad: 0 });
});

const at = { startFrame: 0, endFrame: 0 };

async function hear(words: string, score = 1): Promise<void> {
  ear.tell({ type: 'heard', revision: desk.snapshot.live.revision, words, score, ...at });
  await desk.idle();
}

const heard = () =>
  earScreen(desk.snapshot, {
    isSpeaking: false,
    isShut: false,
    trouble: null,
    say,
    did: didSoFar(desk.snapshot, (replies) => tongue.phrase(replies).shown, say),
  }).heard;

/** To the first bolt of the first pass. */
async function toTheBolts(): Promise<void> {
  for (const words of [
    'this step is done',
    'it reads top on the handle side',
    'this step is done',
    'i have the time',
    'set at fifteen',
  ])
    await hear(words);
}

describe('what was heard last', () => {
  test('is shown with how sure it was, and with what it did in the words of the day-book', async () => {
    await toTheBolts();
    expect(heard()).toEqual({ words: 'set at fifteen', how: 'sure', did: 'Set at 15 N·m.' });
    await hear('bolt one done', 0.6);
    expect(heard()).toEqual({ words: 'bolt one done', how: 'hardly-sure', did: 'Bolt 1 done, first pass.' });
    // It is not the answer said over again, which is what it once was, so that nothing was ever shown.
    expect(heard()?.did).not.toBe(desk.snapshot.said?.shown);
  });

  test('tells what was taken back by what it was, and not by the number of its line', async () => {
    await toTheBolts();
    await hear('bolt one done');
    await hear('take that back');
    expect(heard()?.did).toBe('Taken back. Bolt 1 done, first pass.');
  });

  test('that only asks, or is refused, changed nothing', async () => {
    await hear("what's next");
    expect(heard()).toMatchObject({ how: 'sure', did: 'Nothing changed.' });
    await toTheBolts();
    await hear('repeat this pass');
    expect(heard()?.did).toBe('Asked to confirm.');
  });

  test.each<[RejectReason, string]>([
    ['score', 'Nothing done: not sure enough. Say it again.'],
    ['filler', 'Nothing done: other talk, or noise.'],
    ['noise', 'Nothing done: other talk, or noise.'],
    ['ambiguous', 'Nothing done: it could mean two things.'],
  ])('and turned away for %s says why', async (why, did) => {
    ear.tell({ type: 'rejected', revision: '', words: 'bolt one', score: 0.2, why, ...at });
    expect(heard()).toEqual({ words: 'bolt one', how: 'rejected', did });
  });

  test('of the place before, or with a value out of place, says so', async () => {
    ear.tell({ type: 'heard', revision: 'long ago', words: 'this step is done', score: 1, ...at });
    expect(heard()).toMatchObject({ how: 'rejected', did: 'Nothing done: it was meant for the place before.' });
    await toTheBolts();
    await hear('bolt forty done');
    expect(heard()).toMatchObject({ how: 'rejected', did: 'Nothing done: the value does not fit here.' });
  });

  test('or pressed, tapped or written tells that instead of how sure it was', async () => {
    desk.press(command('tell-next'), "What's next?");
    expect(heard()).toMatchObject({ how: 'touch', words: "What's next?" });
    desk.type('where am i');
    expect(heard()).toMatchObject({ how: 'typed' });
  });
});
