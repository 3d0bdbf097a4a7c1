import { expect, test } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { EMPTY, sealAfter } from '../../src/core/log/chain';
import type { Porch } from '../../src/core/porch/porch';
import { PorchDesk } from '../../src/shell/porch/porch-desk';
import { typedRecogniser } from '../../src/speech/typed';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import type { UiEvent } from '../../src/ui/events';
import { silentVoice } from '../../src/voice/silent';
import { BEGUN, plateJob } from './plate-job';

const PLATE = { number: 1, id: 'practice-plate', title: 'Plate' };
const JOB = { number: 1, id: 'j', title: 'Plate', closed: false };
const tongue = readTongue('en');
const clock = { wall: () => 1, mono: () => 1 };

function porch(perform: (event: UiEvent) => Promise<boolean> = async () => true) {
  const done: UiEvent[] = [];
  const store = memoryStore();
  const recogniser = typedRecogniser();
  const stands: { now: Omit<Porch, 'asked'> } = { now: { procedures: [PLATE], jobs: [JOB], last: JOB } };
  const desk = new PorchDesk({
    parts: { store, hash: sha256Hex, clock },
    session: 's',
    tongue,
    recogniser,
    voice: silentVoice(clock, { pace: 'none' }),
    isSounding: () => false,
    stands: () => stands.now,
    begun: () => ({ machine: 'a plate', who: 'Ansel' }),
    perform: async (event) => {
      done.push(event);
      return perform(event);
    },
    faster: () => undefined,
    changed: () => undefined,
  });
  desk.open();
  const say = async (words: string): Promise<string> => {
    recogniser.type(words);
    // What is done for a sentence is done in turns of its own.
    for (let turns = 0; turns < 20; turns++) await Promise.resolve();
    return desk.view.said?.shown ?? '';
  };
  return { desk, done, store, stands, say };
}

test('a job is begun after its read-back, for the machine of its document and whoever works here', async () => {
  const { say, done } = porch();
  expect(await say('begin procedure one')).toMatch(/^Begin Plate\?/);
  expect(done).toEqual([]);
  await say('agreed and confirmed');
  expect(done).toEqual([{ type: 'begin-job', procedure: 'practice-plate', machine: 'a plate', who: 'Ansel' }]);
  await say('agreed and confirmed');
  expect(done).toHaveLength(1);
});

test('forgotten, it is not begun; nor is it where somebody went elsewhere by hand', async () => {
  const { say, done, desk } = porch();
  await say('begin procedure one');
  expect(await say('forget about it')).toBe('Forgotten. Nothing changed.');
  await say('carry on with the job');
  desk.forget();
  await say('agreed and confirmed');
  expect(done).toEqual([]);
});

test('a question is over when a job is open, and nothing is heard then', async () => {
  const { say, done, desk } = porch();
  await say('open job one');
  desk.close();
  await say('agreed and confirmed');
  await say('show me the jobs');
  desk.open();
  await say('agreed and confirmed');
  expect(done).toEqual([]);
});

test('what is no sentence here does nothing, and is asked back once', async () => {
  const { say, done, desk } = porch();
  expect(await say('bolt seven done')).toBe('Say again.');
  await say('and now the weather');
  expect(done).toEqual([]);
  expect(desk.view.heard).toMatchObject({ did: 'rejected' });
});

test('a number that no line has is told', async () => {
  const { say, done } = porch();
  expect(await say('begin procedure nine')).toContain('9');
  expect(done).toEqual([]);
});

test('the numbers are those of the lists as they are now', async () => {
  const { say, done, stands, desk } = porch();
  stands.now = { ...stands.now, procedures: [{ ...PLATE, number: 2 }] };
  desk.look();
  expect(await say('begin procedure one')).not.toMatch(/^Begin/);
  await say('begin procedure two');
  await say('agreed and confirmed');
  expect(done.map(({ type }) => type)).toEqual(['begin-job']);
});

test('while a job is being opened nothing else is', async () => {
  let opened = (_: boolean): void => undefined;
  const { say, done } = porch(() => new Promise((resolve) => (opened = resolve)));
  await say('carry on with the job');
  await say('agreed and confirmed');
  expect(await say('begin procedure one')).toBe('Say again.');
  expect(done.map(({ type }) => type)).toEqual(['resume-job']);
  opened(false);
  await say('say again');
  expect(await say('say again')).toBe('That could not be opened. Look at the screen.');
});

test('the briefing is read from the log as it is stored, and nothing is written', async () => {
  const { say, store, done } = porch();
  const moment = { at: 1, mono: 1, session: 's', who: 'me' };
  const sealed = sealAfter(EMPTY, BEGUN, moment, sha256Hex).map((one) => one.sealed);
  expect(await store.adopt(plateJob(BEGUN).card, sealed, [], null)).toMatchObject({ ok: true });
  await say('brief me now');
  await expect.poll(() => say('say again'), { timeout: 60_000 }).toMatch(/step 1 of/i);
  expect(await store.read('j')).toMatchObject({ ok: true, value: { head: { seq: BEGUN.length } } });
  expect(done).toEqual([]);
});

test('a job that is not there cannot be told of', async () => {
  const { say } = porch();
  await say('brief me now');
  await expect.poll(() => say('say again'), { timeout: 60_000 }).toBe('That could not be opened. Look at the screen.');
});

test('with ears off only what opens them is heard', async () => {
  const { say, done } = porch();
  await say('ears off now');
  await say('show me the jobs');
  expect(done).toEqual([]);
  await say('listen to me again');
  await say('show me the jobs');
  expect(done).toEqual([{ type: 'open-screen', name: 'jobs' }]);
});

test('it says which words there are, and says it again', async () => {
  const { say } = porch();
  const told = await say('which words now');
  expect(told).toContain('carry on with the job');
  expect(await say('say again')).toBe(told);
  expect(await say('stop')).toContain('not the engine');
});

test('a key stops the talking, and forgets what was asked', async () => {
  const { say, done, desk } = porch();
  await say('begin procedure one');
  desk.stop();
  expect(desk.view.said?.shown).toContain('not the engine');
  await say('agreed and confirmed');
  expect(done).toEqual([]);
});
