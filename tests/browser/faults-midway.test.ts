import { readFileSync } from 'node:fs';
import type { BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import type { Entry } from '../../src/core/job/entry';
import { type ReplyCode, reply } from '../../src/core/phrasing/reply';
import { Bay } from './bay';
import { breakable, deviceComes, happens, keepBusy, microphoneIs, soundIs, tracksGiven } from './breakable';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite, type Site } from './site';
import { typed } from './typist';
import { started, watchWorkers } from './workers';

type Told = Extract<ReplyCode, 'microphone-lost' | 'microphone-refused' | 'audio-blocked' | 'recogniser-failed'>;

const tongue = readTongue('en');
const wordsFor = (code: Told | 'document-changed'): string => tongue.phrase([reply(code, {})]).shown;
const own = readFileSync('procedures/practice-plate.yaml', 'utf8')
  .replace('id: practice-plate', 'id: own-plate')
  .replace('title: Practice plate, three bolts', 'title: A plate of our own');

/** One job is worked through all of them: what one fault left broken, the next would stumble over. */
describe.skipIf(!chromiumPath)('a fault in the middle of a job', ONCE_MORE, () => {
  let site: Site;
  let context: BrowserContext;
  let bay: Bay;
  beforeAll(async () => {
    site = await openSite();
    context = await openContext({ serviceWorkers: 'block' });
    bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await breakable(bay.page);
    await watchWorkers(context);
    await bay.open(site.address);
    await bring(own);
    // Its name stands in the notice too, which is not the place to begin it.
    await bay.page.locator('.notice-away').click();
    await bay.go('Jobs');
    await bay.begin('A plate of our own');
    await bay.armed();
  }, 120_000);
  afterAll(async () => {
    await context?.close();
    await site?.close();
  });

  const bring = async (text: string): Promise<void> => {
    await bay.go('Procedures');
    const file = { name: 'own-plate.yaml', mimeType: 'application/yaml', buffer: Buffer.from(text) };
    await bay.page.locator('input[accept*=".yaml"]').setInputFiles(file);
    await bay.page.getByText('A plate of our own').first().waitFor();
  };

  const since = async (n: number): Promise<readonly Entry[]> => (await bay.log()).slice(n);
  const saidIn = (entries: readonly Entry[]): readonly string[] =>
    entries.flatMap((e) => (e.kind === 'said' ? e.code.split(' ') : []));
  const marks = (entries: readonly Entry[]): readonly string[] =>
    entries.filter((e) => e.kind === 'step-done' || e.kind === 'bolt-done').map(({ kind }) => kind);

  /** Shown in the ear's place, and told to whoever does not look. */
  const toldOf = async (code: Told, from: number): Promise<void> => {
    await bay.page.waitForSelector('#app[data-ear="failed"]', { timeout: 30_000 });
    await bay.page.locator('.ear-state', { hasText: wordsFor(code) }).waitFor();
    expect(saidIn(await since(from))).toContain(code);
  };

  /** It says that it hears, and a spoken question is answered; the place is what it was. */
  const hearsAgain = async (from: number, place: string): Promise<void> => {
    await bay.armed();
    expect(saidIn(await since(from))).toContain('hears-again');
    const asked = (await bay.log()).length;
    await bay.say('where am i');
    const heard = (await since(asked)).filter((e) => e.kind === 'heard' && e.by === 'voice');
    expect(heard.map((e) => e.kind === 'heard' && e.command)).toEqual(['tell-place']);
    expect(await bay.place()).toBe(place);
  };

  const now = async () => ({ place: await bay.place(), n: (await bay.log()).length });

  test('the microphone is pulled out and plugged in: it is opened once, and hears', async () => {
    const { place, n } = await now();
    const given = await tracksGiven(bay.page);
    await happens(bay.page, 'ended');
    await toldOf('microphone-lost', n);
    expect(await bay.place()).toBe(place);
    await deviceComes(bay.page);
    await hearsAgain(n, place);
    expect(await tracksGiven(bay.page)).toBe(given + 1);
    expect(marks(await since(n))).toEqual([]);
  }, 60_000);

  test('the system mutes the microphone and lets it sound again', async () => {
    const { place, n } = await now();
    await happens(bay.page, 'mute');
    await toldOf('microphone-lost', n);
    await happens(bay.page, 'unmute');
    await hearsAgain(n, place);
    expect(marks(await since(n))).toEqual([]);
  }, 60_000);

  test('permission is withdrawn: the buttons work; given back in the settings, it hears without a reload', async () => {
    const { place, n } = await now();
    await microphoneIs(bay.page, 'refused');
    await happens(bay.page, 'ended');
    await deviceComes(bay.page);
    await toldOf('microphone-refused', n);
    expect(saidIn(await since(n)).filter((code) => code === 'microphone-refused')).toHaveLength(1);
    expect(await bay.place()).toBe(place);
    await bay.page.getByRole('button', { name: 'Done', exact: true }).click();
    await bay.page.waitForFunction((at) => document.getElementById('app')?.dataset.place !== at, place);
    const moved = await bay.place();
    await microphoneIs(bay.page, 'open');
    await hearsAgain(n, moved);
    expect(marks(await since(n))).toEqual(['step-done']);
  }, 60_000);

  test('a call takes the sound: what was answered meanwhile is said after the tap that gives it back', async () => {
    const { n } = await now();
    await soundIs(bay.page, 'held');
    await toldOf('audio-blocked', n);
    await typed(bay, 'it reads top on the handle side');
    const place = await bay.place();
    await soundIs(bay.page, 'open');
    await bay.page.locator('.ear-state').click();
    await hearsAgain(n, place);
    const back = (await since(n)).find((e) => e.kind === 'said' && e.code.startsWith('hears-again'));
    expect(back?.kind === 'said' ? back.code.split(' ').length : 0).toBeGreaterThan(1);
  }, 60_000);

  test('the ear hangs: it is replaced, and what was said to it moves nothing later', async () => {
    const { place, n } = await now();
    const ears = await started(bay.page, 'ear-worker');
    keepBusy(bay.page, 'ear-worker', 3_600_000);
    await bay.utter('this step is done');
    await toldOf('recogniser-failed', n);
    await hearsAgain(n, place);
    expect(await started(bay.page, 'ear-worker')).toBeGreaterThan(ears);
    expect(marks(await since(n))).toEqual([]);
  }, 90_000);

  test('the ear is slow: what was said to the place before does nothing in the one a hand has moved to', async () => {
    const { place, n } = await now();
    keepBusy(bay.page, 'ear-worker', 5_000);
    await bay.utter('this step is done');
    await bay.page.getByRole('button', { name: 'Done', exact: true }).click();
    await bay.page.waitForFunction((at) => document.getElementById('app')?.dataset.place !== at, place);
    const moved = await bay.place();
    await bay.say('where am i');
    // What comes of the late words, stale or unheard while it answered, is told by tests/cases; here nothing may move.
    const heard = (await since(n)).flatMap((e) => (e.kind === 'heard' && e.by === 'voice' ? [e.command] : []));
    expect(heard).toEqual(['tell-place']);
    expect(await bay.place()).toBe(moved);
    expect(marks(await since(n))).toEqual(['step-done']);
  }, 60_000);

  test('the tab is frozen and thawed: it hears, and nothing has moved', async () => {
    const { place, n } = await now();
    const cdp = await context.newCDPSession(bay.page);
    await cdp.send('Page.setWebLifecycleState', { state: 'frozen' });
    await new Promise((resolve) => setTimeout(resolve, 3_000));
    await cdp.send('Page.setWebLifecycleState', { state: 'active' });
    await bay.armed();
    await bay.say('where am i');
    expect((await since(n)).some((e) => e.kind === 'heard' && e.by === 'voice' && e.command === 'tell-place')).toBe(
      true,
    );
    expect(await bay.place()).toBe(place);
    expect(marks(await since(n))).toEqual([]);
  }, 60_000);

  test('its document is replaced by another text: the job keeps its own and says so', async () => {
    const { place, n } = await now();
    await bring(own.replace('Wear eye protection.', 'Wear gloves.'));
    await bay.page.locator('.notices', { hasText: wordsFor('document-changed') }).waitFor();
    expect(saidIn(await since(n))).toEqual(['document-changed']);
    await bay.go('Bench');
    expect(await bay.place()).toBe(place);
    const [first] = await bay.log();
    expect(first?.kind === 'job-started' && first.text).toBe(own);
  }, 60_000);
});
