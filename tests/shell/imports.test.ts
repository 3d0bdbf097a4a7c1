import { describe, expect, test } from 'vitest';
import type { EntryBody } from '../../src/core/job/entry';
import { atOnce } from '../../src/core/pieces';
import { JobImports } from '../../src/shell/job/imports';
import { NoticeBoard } from '../../src/shell/notice-board';
import { printing } from '../../src/store/hand-over';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { say } from './fakes';
import { BEGUN, plateJob } from './plate-job';

const file = (bodies: readonly EntryBody[], edit: (text: string) => string = (text) => text): File =>
  new File([edit(atOnce(printing(plateJob(bodies), [])))], 'job.json');

const nothingElse = async () => undefined;

/** A clock on which every look costs so many ms, and shares as they are shown. */
function bench(isAllowed = true, costsMs = 0) {
  const store = memoryStore();
  const shares: number[] = [];
  const notices: NoticeBoard = new NoticeBoard(() => {
    for (const { share } of notices.shown) if (typeof share === 'number') shares.push(share);
  });
  let now = 0;
  let breaths = 0;
  const breathing = {
    now: () => {
      now += costsMs;
      return now;
    },
    after: (_: number, run: () => void) => {
      breaths += 1;
      queueMicrotask(run);
      return () => undefined;
    },
  };
  const left: string[] = [];
  const leave = async (id: string) => void left.push(id);
  const telling: typeof store = {
    ...store,
    adopt: async (card, entries, blobs, expected, tell) => {
      for (const share of [0.5, 1]) tell?.(share);
      return store.adopt(card, entries, blobs, expected);
    },
  };
  const writing = { isAllowed: () => isAllowed };
  const imports = new JobImports(telling, sha256Hex, 'en', say, notices, writing, leave, nothingElse, breathing);
  const told = () => notices.shown.map(({ id, kind, text: words }) => `${id} ${kind}: ${words}`);
  const length = async () => {
    const job = await store.read('j');
    return job.ok ? job.value.texts.length : 0;
  };
  return { imports, notices, told, length, left, shares, breaths: () => breaths };
}

describe('a job taken over from a file', () => {
  test('is here with its whole log, and an open one is left first', async () => {
    const b = bench();
    await b.imports.take(file(BEGUN));
    expect(await b.length()).toBe(2);
    expect(b.left).toEqual(['j']);
    expect(b.told()).toEqual(['import news: “Plate” is here now, with its whole log.']);
  });

  test.each([
    { what: 'no JSON', edit: () => '{', told: 'no JSON text' },
    { what: 'another format', edit: () => '{"format":"else"}', told: 'is not a job file' },
    {
      what: 'an edited entry',
      edit: (t: string) => t.replace('\\"machine\\":\\"plate\\"', '\\"machine\\":\\"other\\"'),
      told: 'Entry 1',
    },
  ])('with $what is refused in words, and nothing is changed', async ({ edit, told }) => {
    const b = bench();
    await b.imports.take(file(BEGUN, edit));
    expect(b.told().join()).toContain(told);
    expect(await b.length()).toBe(0);
  });

  test('sealed well but speaking of nothing we have is refused', async () => {
    const b = bench();
    await b.imports.take(file([...BEGUN, { kind: 'step-done', step: 'nowhere' }]));
    expect(b.told().join()).toContain('Entry 3');
    expect(await b.length()).toBe(0);
  });

  test.each([
    { keep: 'here' as const, outcome: 'stays as it was here' },
    { keep: 'file' as const, outcome: 'was replaced' },
  ])('that parted from the one here waits for the person, who keeps the $keep', async ({ keep, outcome }) => {
    const b = bench();
    await b.imports.take(file([...BEGUN, { kind: 'step-done', step: 'clamp' }]));
    await b.imports.take(file([...BEGUN, { kind: 'step-skipped', step: 'clamp' }, { kind: 'closed' }]));
    expect(b.notices.shown.find(({ id }) => id === 'fork')?.acts?.map(({ event }) => event.type)).toEqual([
      'export',
      'settle-fork',
      'settle-fork',
    ]);
    expect(await b.length()).toBe(3);
    await b.imports.settle(keep);
    expect(await b.length()).toBe(keep === 'here' ? 3 : 4);
    expect(b.told().join()).toContain(outcome);
  });

  test('waits while another one has parted, and is taken as soon as that is settled', async () => {
    const b = bench();
    await b.imports.take(file([...BEGUN, { kind: 'step-done', step: 'clamp' }]));
    await b.imports.take(file([...BEGUN, { kind: 'step-skipped', step: 'clamp' }]));
    await b.imports.take(file([...BEGUN, { kind: 'step-skipped', step: 'clamp' }, { kind: 'closed' }]));
    expect(b.told().join()).toContain('job.json waits until that is settled');
    expect(await b.length()).toBe(3);
    await b.imports.settle('file');
    // The one that waited goes on from the one that was kept.
    expect(await b.length()).toBe(4);
    expect(b.told().join()).toContain('goes on from what was here');
  });

  test('that takes long shows how much is done, which only grows, and lets the page answer meanwhile', async () => {
    const b = bench(true, 10);
    const many = Array.from({ length: 400 }, (): EntryBody => ({ kind: 'said', code: 'step', text: 'Done.' }));
    await b.imports.take(file([...BEGUN, ...many]));
    expect(await b.length()).toBe(402);
    expect(b.breaths()).toBeGreaterThan(50);
    expect(b.shares.length).toBeGreaterThan(50);
    expect(b.shares).toEqual(b.shares.toSorted((x, y) => x - y));
    expect(b.shares.at(-1)).toBe(1);
    expect(b.notices.shown.map(({ kind }) => kind)).toEqual(['news']);
  });

  test('and refused, leaves no bar behind', async () => {
    const b = bench(true, 30);
    await b.imports.take(file([...BEGUN, { kind: 'step-done', step: 'nowhere' }]));
    expect(b.notices.shown.map(({ kind }) => kind)).toEqual(['trouble']);
  });

  test('is not taken while another tab is writing', async () => {
    const b = bench(false);
    await b.imports.take(file(BEGUN));
    expect(await b.length()).toBe(0);
  });
});
