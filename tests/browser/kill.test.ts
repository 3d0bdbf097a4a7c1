import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { durability, ENTRY_KINDS, type Entry, type EntryBody } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import { placeOf } from '../../src/core/job/place';
import { nodeOf, planOf } from '../../src/core/job/plan';
import { verifyChain } from '../../src/core/log/chain';
import { byKind, currentFormat, readLog } from '../../src/core/log/upgrade';
import { standOf } from '../../src/core/view/stand-of';
import { sha256Hex } from '../../src/store/hash';
import { shipped } from '../core/job/workbench';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { diskWatch, storedJobs, watchDisk } from './disk-watch';
import { nextWords } from './next-words';
import { openSite, type Site } from './site';
import { carryOn, send, typed, workOn } from './typist';

const RUNS = Number(process.env.KILL_RUNS ?? 2);
const SEED = Number(process.env.KILL_SEED ?? 20_261);

const TITLE = 'Left head gasket';
const plan = planOf(shipped('tarnbeck-head-slice'));
const FIRST_PASS = 'tighten.tighten-left.first.work';

/** Park and Miller, "Random number generators: good ones are hard to find" (1988): small, seeded, enough here. */
function seeded(seed: number): (below: number) => number {
  let state = seed;
  return (below) => {
    state = (state * 48_271) % 2_147_483_647;
    return state % below;
  };
}

/** Signal 9 to the browser on this profile and to all of its children: no handler runs, nothing is flushed. */
function killBrowserOn(profile: string): void {
  for (const pid of readdirSync('/proc').filter((name) => /^\d+$/.test(name))) {
    const words = commandLine(pid);
    if (words.includes(`--user-data-dir=${profile}`) && !words.some((word) => word.startsWith('--type=')))
      process.kill(-Number(pid), 'SIGKILL');
  }
}

function commandLine(pid: string): readonly string[] {
  try {
    return readFileSync(`/proc/${pid}/cmdline`, 'utf8').split('\0');
  } catch {
    return []; // It has ended since the folder was read.
  }
}

/** Tells Node of every entry the moment the screen shows it: what a person has been promised when the power goes. */
async function watchPromises(context: BrowserContext, shown: (entries: readonly Entry[]) => void): Promise<void> {
  await context.exposeBinding('promised', (_, entries: readonly Entry[]) => shown(entries));
  await context.addInitScript(() => {
    const told = new WeakMap<HTMLElement, { all: readonly unknown[]; count: number }>();
    Object.defineProperty(HTMLDivElement.prototype, 'entries', {
      configurable: true,
      get(this: HTMLElement) {
        return told.get(this)?.all ?? [];
      },
      set(this: HTMLElement, all: readonly unknown[]) {
        const known = told.get(this)?.count ?? 0;
        told.set(this, { all, count: all.length });
        const fresh = all.slice(Math.min(known, all.length));
        if (fresh.length > 0) void (window as unknown as { promised: (e: unknown) => void }).promised(fresh);
      },
    });
  });
}

/** The state entries that an answer has confirmed: those with something said after them. */
function confirmed(entries: readonly Entry[]): readonly Entry[] {
  const last = entries.findLast((e) => e.kind === 'said')?.seq ?? 0;
  return entries.filter((e) => durability(e) === 'strict' && e.seq < last);
}

describe.skipIf(!chromiumPath)('a browser killed in the middle of a pass', ONCE_MORE, () => {
  let site: Site;
  const profile = mkdtempSync(`${tmpdir()}/wrenchside-killed-`);

  beforeAll(async () => {
    site = await openSite();
  });
  afterAll(async () => {
    await site?.close();
    rmSync(profile, { recursive: true, force: true });
  });

  test(
    `${RUNS} times at seeded moments: the same bolt, nothing confirmed is lost, the chain holds`,
    async () => {
      const random = seeded(SEED);
      let promised: Entry[] = [];
      for (let run = 0; run <= RUNS; run++) {
        const context = await openContext({ profile });
        await watchPromises(context, (entries) => promised.push(...entries));
        const bay = new Bay(await context.newPage());
        await bay.wireMicrophone();
        await bay.open(site.address);

        if (run > 0) {
          const label = `seed ${SEED}, kill ${run}`;
          const id = promised.flatMap((e) => (e.kind === 'job-started' ? [e.job] : []))[0];
          const stored = (await storedJobs(bay.page)).find((job) => job.id === id);
          expect(stored, label).toBeDefined();
          if (!stored) return;
          const chain = verifyChain(stored.texts, sha256Hex, stored.head);
          expect(chain.ok, `${label}: ${JSON.stringify(!chain.ok && chain.error.problem)}`).toBe(true);
          const log = readLog<EntryBody>(
            stored.texts,
            sha256Hex,
            currentFormat(byKind<EntryBody>(ENTRY_KINDS)),
            stored.head,
          );
          if (!log.ok) throw new Error(label);
          // Nothing confirmed is lost, nothing is changed, and the order is that of the promises.
          const kept = log.value.filter((e) => durability(e) === 'strict');
          const owed = confirmed(promised);
          expect(owed.length, label).toBeGreaterThan(0);
          expect(kept.slice(0, owed.length).map(bare), label).toEqual(owed.map(bare));
          // The same bolt: the app stands where the fold of the stored log stands.
          const job = fold(plan, log.value);
          // And so does its line in the list, which had no last word of it.
          const { at } = standOf(job, stored.head);
          const line =
            at.kind === 'pass' ? `Pass ${at.number} of ${at.total}, ${at.done} of ${at.bolts} done` : at.kind;
          await bay.page.locator('.jobs > li').first().getByText(line).waitFor();
          promised = [];
          await carryOn(bay);
          const entries = await bay.log();
          expect(entries.slice(0, log.value.length).map(bare), label).toEqual(log.value.map(bare));
          const resumed = fold(plan, entries);
          expect(nextWords(resumed), label).toBe(nextWords(job));
          expect(await bay.place(), label).toBe(nodeOf(plan, placeOf(resumed)));
          console.log(`${label}: ${log.value.length} entries kept, ${owed.length} owed, next "${nextWords(job)}"`);
        } else {
          await bay.begin(TITLE);
          await workOn(bay, plan, FIRST_PASS);
        }

        if (run === RUNS) {
          await context.close();
          break;
        }
        // Some bolts with their answers, then as fast as the keyboard goes, and the plug is pulled somewhere in it.
        for (let n = random(3); n >= 0; n--)
          await typed(bay, nextWords(fold(plan, await bay.log())) ?? 'close the job');
        const ended = new Promise((resolve) => context.once('close', resolve));
        const burst = (async () => {
          for (let n = 0; n < 3; n++) await send(bay.page, nextWords(fold(plan, await bay.log())) ?? 'where am i');
        })().catch(() => undefined);
        await new Promise((resolve) => setTimeout(resolve, random(400)));
        killBrowserOn(profile);
        await ended;
        await burst;
      }
    },
    120_000 + RUNS * 60_000,
  );

  test('a slow disk: what changes the job is stored strictly, and neither shown as done nor said before it is', async () => {
    const slowMs = 1200;
    const context = await openContext();
    await watchDisk(context, slowMs);
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.open(site.address);
    await bay.begin(TITLE);
    await bay.armed();
    for (let turn = 0; turn < 3; turn++) {
      const words = nextWords(fold(plan, await bay.log())) ?? '';
      const came = await typed(bay, words);
      await bay.armed();
      const { writes, sounds } = await diskWatch(bay.page);
      const states = came.filter((e) => durability(e) === 'strict');
      expect(states.length, words).toBeGreaterThan(0);
      for (const state of states) {
        const write = writes.find(({ seqs }) => seqs.includes(state.seq));
        expect(write?.durability, state.kind).toBe('strict');
        const opened = write?.opened ?? 0;
        const complete = write?.complete ?? 0;
        expect(complete - opened).toBeGreaterThanOrEqual(slowMs);
        const answer = came.find((e) => e.kind === 'said');
        expect(answer?.mono, `${state.kind} confirmed`).toBeGreaterThanOrEqual(complete);
        expect(
          sounds.filter((t) => t > opened && t < complete),
          'sounds while the disk works',
        ).toEqual([]);
        expect(
          sounds.some((t) => t >= complete),
          'the answer is said',
        ).toBe(true);
      }
    }
    const { writes } = await diskWatch(bay.page);
    const jobs = writes.filter(({ stores }) => stores.includes('jobs') && !stores.includes('entries'));
    expect(jobs.map(({ durability: how }) => how)).toEqual(jobs.map(() => 'strict'));
    await context.close();
  }, 180_000);
});

/** What an entry says, without the hashes that storing gives it. */
function bare({ seq, kind, at, mono, session, ...rest }: Entry): unknown {
  return { seq, kind, at, mono, session, ...rest };
}
