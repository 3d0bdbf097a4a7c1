import { describe, expect, test } from 'vitest';
import type { EntryBody } from '../../src/core/job/entry';
import { JobImports } from '../../src/shell/job/imports';
import { NoticeBoard } from '../../src/shell/notice-board';
import { jobFileText } from '../../src/store/hand-over';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { say } from './fakes';
import { BEGUN, plateJob } from './plate-job';

const file = (bodies: readonly EntryBody[], edit: (text: string) => string = (text) => text): File =>
  new File([edit(jobFileText(plateJob(bodies)))], 'job.json');

const nothingElse = async () => undefined;

function bench(isAllowed = true) {
  const store = memoryStore();
  const notices = new NoticeBoard(() => undefined);
  const left: string[] = [];
  const leave = async (id: string) => void left.push(id);
  const imports = new JobImports(
    store,
    sha256Hex,
    'en',
    say,
    notices,
    { isAllowed: () => isAllowed },
    leave,
    nothingElse,
  );
  const told = () => notices.shown.map(({ id, kind, text: words }) => `${id} ${kind}: ${words}`);
  const length = async () => {
    const job = await store.read('j');
    return job.ok ? job.value.texts.length : 0;
  };
  return { imports, notices, told, length, left };
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

  test('is not taken while another tab is writing', async () => {
    const b = bench(false);
    await b.imports.take(file(BEGUN));
    expect(await b.length()).toBe(0);
  });
});
