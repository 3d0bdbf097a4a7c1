import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import { isTalk } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Job } from '../../src/core/job/job';
import { fail } from '../../src/core/result';
import { beginJob, type DeskHost } from '../../src/shell/job/job-desk';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { silentVoice } from '../../src/voice/silent';
import { nextWords } from '../browser/next-words';
import { SEED, tries } from '../long';
import { FakeEar, HandClock } from './fakes';

const file = 'procedures/tarnbeck-head-slice.yaml';
const start = { text: readFileSync(file, 'utf8'), file, machine: 'engine 7', who: 'Robin' };

/** An open job on a store that can be told to refuse, its desk told of what is stored as the seat tells it. */
async function bench() {
  const hands = new HandClock();
  const clock = { wall: () => 1_800_000_000_000 + hands.now, mono: () => hands.now };
  const store = memoryStore();
  const disk = { isFull: false };
  const host: DeskHost = {
    store: {
      ...store,
      append: async (...args) => (disk.isFull ? fail({ code: 'storage-full', detail: 'full' }) : store.append(...args)),
    },
    hash: sha256Hex,
    clock,
    session: 's',
    newId: () => 'id',
    tongue: readTongue('en'),
    recogniser: new FakeEar(),
    voice: silentVoice(clock, { pace: 'none' }),
    after: hands.after,
    perform: () => undefined,
    settings: () => ({ people: [], wrenches: [], terse: false }),
  };
  const opened = await beginJob(host, start);
  if (!opened.ok) throw new Error(opened.error.code);
  const { desk, writer } = opened.value;
  writer.on((event) => {
    if (event.type === 'recovered') desk.recovered(event.seq);
  });
  desk.start([]);
  const say = async (words: string): Promise<void> => {
    hands.pass(2000);
    desk.type(words);
    await desk.idle();
  };
  return { desk, writer, disk, hands, say };
}

/** All that a job says but its memory of how it came about; the running one has not folded the talk. */
const told = ({ past, plan, last, ...job }: Job) => job;

const asLogged = (desk: { readonly snapshot: { readonly entries: Parameters<typeof fold>[1] }; readonly job: Job }) =>
  fold(
    desk.job.plan,
    desk.snapshot.entries.filter((e) => !isTalk(e)),
  );

describe('after a write that was refused', () => {
  test('the job does not go on; stored at the next try, it counts, and it is said where the job stands', async () => {
    const { desk, disk, hands, say } = await bench();
    disk.isFull = true;
    await say('this step is done');
    expect(desk.snapshot).toMatchObject({ notSaved: true });
    expect(desk.job.steps.size).toBe(0);
    disk.isFull = false;
    // The writer tries again by itself after a while.
    hands.pass(10_000);
    await new Promise((next) => setTimeout(next, 0));
    await desk.idle();
    expect(desk.job.steps.size).toBe(1);
    expect(desk.snapshot).toMatchObject({ notSaved: false });
    expect(desk.snapshot.saidCode).toContain('caught-up');
    expect(told(desk.job)).toEqual(told(asLogged(desk)));
  });

  test('the next command that is stored brings it along, in the order of the log', async () => {
    const { desk, disk, say } = await bench();
    disk.isFull = true;
    await say('this step is done');
    disk.isFull = false;
    await say('this step is done');
    await desk.idle();
    expect(told(desk.job)).toEqual(told(asLogged(desk)));
    expect(desk.job.entries.map(({ seq }) => seq)).toEqual(
      desk.job.entries.map(({ seq }) => seq).toSorted((a, b) => a - b),
    );
  });
});

test('however the disk comes and goes, the desk ends as its log tells, and says nothing it has not written', async () => {
  const turn = fc.record({ full: fc.boolean(), wait: fc.constantFrom(0, 0, 6000), back: fc.nat({ max: 9 }) });
  let refused = 0;
  await fc.assert(
    fc.asyncProperty(fc.array(turn, { minLength: 10, maxLength: 40 }), async (turns) => {
      const { desk, writer, disk, hands, say } = await bench();
      for (const { full, wait, back } of turns) {
        disk.isFull = full;
        await say(back === 0 ? 'take that back' : back === 1 ? 'hold on' : (nextWords(desk.job) ?? "i'm back"));
        if (desk.snapshot.notSaved) refused += 1;
        hands.pass(wait);
        await new Promise((next) => setTimeout(next, 0));
      }
      disk.isFull = false;
      await writer.flush();
      await new Promise((next) => setTimeout(next, 0));
      await desk.idle();
      await writer.flush();
      expect(writer.fault()).toBeNull();
      expect(told(desk.job)).toEqual(told(asLogged(desk)));
      desk.close();
    }),
    { numRuns: tries(15, 200), seed: SEED },
  );
  expect(refused).toBeGreaterThan(10);
}, 60_000);
