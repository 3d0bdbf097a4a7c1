import { readFileSync } from 'node:fs';
import { expect, test, vi } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import type { Wrench } from '../../src/core/fastening/wrench';
import { beginJob, type DeskHost, resumeJob, takeWrenches } from '../../src/shell/job/job-desk';
import { sha256Hex } from '../../src/store/hash';
import { memoryStore } from '../../src/store/memory-store';
import { silentVoice } from '../../src/voice/silent';
import { FakeEar, HandClock } from './fakes';

const file = 'procedures/tarnbeck-head-slice.yaml';
const start = { text: readFileSync(file, 'utf8'), file, machine: 'engine 7', who: 'Robin' };
const mine: Wrench = { id: 'w', say: 'my wrench', unit: 'N·m', least: 10, most: 100, graduation: 1, dropped: false };

function bench() {
  const hands = new HandClock();
  const clock = { wall: () => 1_800_000_000_000 + hands.now, mono: () => hands.now };
  const settings = { people: ['Robin', 'Alex'], wrenches: [mine], terse: false };
  let ids = 0;
  const host: DeskHost = {
    store: memoryStore(),
    hash: sha256Hex,
    clock,
    session: 's',
    newId: () => `id-${++ids}`,
    tongue: readTongue('en'),
    recogniser: new FakeEar(),
    voice: silentVoice(clock, { pace: 'none' }),
    after: hands.after,
    perform: () => undefined,
    settings: () => settings,
  };
  return { host, settings };
}

async function begun() {
  const { host, settings } = bench();
  const open = await beginJob(host, start);
  if (!open.ok) throw new Error(open.error.code);
  return { host, settings, open: open.value };
}

test('a job is begun with the people and the wrenches of Setup, in its log', async () => {
  const { open } = await begun();
  const { entries, job } = open.desk.snapshot;
  expect(job.people).toEqual(['Robin', 'Alex']);
  expect([...job.wrenches.values()].map(({ id }) => id)).toContain('w');
  const kinds = entries.map(({ kind }) => kind).slice(0, 4);
  expect(kinds).toEqual(['job-started', 'session-opened', 'wrenches-owned', 'wrench-chosen']);
  expect(job.owned.map(({ id }) => id)).toContain('w');
});

test('where Setup asks for numbers only, a new job begins so, and one that is taken up again stays as it was', async () => {
  const { host, settings, open: full } = await begun();
  expect(full.desk.job.terse).toBe(false);
  settings.terse = true;
  const terse = await beginJob(host, start);
  if (!terse.ok) throw new Error(terse.error.code);
  expect(terse.value.desk.job.terse).toBe(true);
  expect(terse.value.desk.snapshot.entries.filter(({ kind }) => kind === 'terse-set')).toHaveLength(1);
  await full.writer.close();
  const again = await resumeJob(host, full.card.id, () => start.text);
  if (!again.ok) throw new Error(again.error.code);
  expect(again.value.desk.job.terse).toBe(false);
});

test('taken up again it does not choose once more what it has', async () => {
  const { host, open } = await begun();
  await open.writer.close();
  const again = await resumeJob(host, open.card.id, () => start.text);
  if (!again.ok) throw new Error(again.error.code);
  expect(again.value.desk.job.entries.filter(({ kind }) => kind === 'wrench-chosen')).toHaveLength(
    open.desk.job.entries.filter(({ kind }) => kind === 'wrench-chosen').length,
  );
});

test.each([
  ['has been changed since: it keeps its own, and says so', `${start.text}\n# mended\n`, true],
  ['is as it was: nothing is said of it', start.text, false],
  ['is gone: nothing is said of it', null, false],
])('taken up again when its document %s', async (_, textNow, isSaid) => {
  const { host, open } = await begun();
  await open.writer.close();
  const again = await resumeJob(host, open.card.id, () => textNow);
  if (!again.ok) throw new Error(again.error.code);
  const [first] = again.value.desk.job.entries;
  expect(first?.kind === 'job-started' && first.text).toBe(start.text);
  expect(again.value.greeting.some(({ code }) => code === 'document-changed')).toBe(isSaid);
});

test('a wrench that Setup learns about while the job is open is taken over through the desk', async () => {
  const { host, settings, open } = await begun();
  open.desk.start([]);
  settings.wrenches = [{ ...mine, calibrationDue: '2030-01-31' }];
  takeWrenches(open.desk, host);
  await open.desk.idle();
  expect(open.desk.job.wrenches.get('torque-wrench')?.calibrationDue).toBe('2030-01-31');
  expect(open.desk.snapshot.saidCode).toContain('wrench-chosen');
  open.desk.close();
});

test('once it is quiet, what the likeliest words will be answered with is rendered', async () => {
  const { host } = bench();
  const prepared: string[][] = [];
  const voice = { ...host.voice, prepare: (texts: readonly string[]) => void prepared.push([...texts]) };
  const open = await beginJob({ ...host, voice }, start);
  if (!open.ok) throw new Error(open.error.code);
  const { desk } = open.value;
  desk.start(open.value.greeting);
  await vi.waitFor(() => expect(prepared).not.toEqual([]));
  const foreseen = prepared.at(-1) ?? [];
  desk.type('this step is done');
  await desk.idle();
  expect(foreseen).toContain(desk.snapshot.said?.spoken);
  desk.close();
});
