import type { BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { readTongue } from '../../src/cli/tongue-files';
import type { Entry } from '../../src/core/job/entry';
import { planOf } from '../../src/core/job/plan';
import { reply } from '../../src/core/phrasing/reply';
import { shipped } from '../core/job/workbench';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite, type Site } from './site';
import { carryOn, typed, typedNext } from './typist';
import { endWorker, started, upsetWorker, watchWorkers } from './workers';

const tongue = readTongue('en');
const plan = planOf(shipped('practice-plate'));
type Fault = 'microphone-refused' | 'microphone-missing' | 'recogniser-failed';
const wordsFor = (fault: Fault): string => tongue.phrase([reply(fault, {})]).shown;

describe.skipIf(!chromiumPath)('when something is broken', ONCE_MORE, () => {
  let site: Site;
  let context: BrowserContext;
  beforeAll(async () => {
    site = await openSite();
  });
  afterEach(async () => {
    await context?.close();
  });
  afterAll(async () => {
    await site?.close();
  });

  const begun = async (
    launch: Parameters<typeof openContext>[0],
    before: (bay: Bay) => Promise<void>,
  ): Promise<Bay> => {
    context = await openContext({ serviceWorkers: 'block', ...launch });
    const bay = new Bay(await context.newPage());
    await before(bay);
    await bay.open(site.address);
    await bay.begin('Practice plate');
    return bay;
  };

  /** Whatever is broken, hands still work, and nothing but hands has moved the job. */
  const handsWork = async (bay: Bay): Promise<void> => {
    const { page } = bay;
    const first = await bay.place();
    await page.getByRole('button', { name: 'Done', exact: true }).click();
    await page.waitForFunction((at) => document.getElementById('app')?.dataset.place !== at, first);
    const second = await bay.place();
    expect((await typed(bay, 'it reads top on the handle side')).some((e) => e.kind === 'question-answered')).toBe(
      true,
    );
    expect(await bay.place()).not.toBe(second);
    expect((await bay.log()).filter((e) => e.kind === 'heard' && e.by === 'voice')).toEqual([]);
  };

  const clearWords = async (bay: Bay, fault: Fault): Promise<void> => {
    await bay.page.waitForSelector('#app[data-ear="failed"]', { timeout: 60_000 });
    await bay.page.getByText(wordsFor(fault)).first().waitFor();
  };

  test('the microphone is refused: it says so, and the buttons do the job', async () => {
    const bay = await begun({ microphoneIs: 'refused' }, async () => undefined);
    await clearWords(bay, 'microphone-refused');
    await handsWork(bay);
  }, 120_000);

  test('there is no microphone: it says so, and the buttons do the job', async () => {
    const bay = await begun({ microphoneIs: 'missing' }, async () => undefined);
    await clearWords(bay, 'microphone-missing');
    await handsWork(bay);
  }, 120_000);

  test.each(['model/en-us/mdef', 'model/en-us/dict.txt', 'assets/rnnoise-*.wasm'])(
    'a file of the ear is not there (%s): it says so, and the buttons do the job',
    async (name) => {
      const bay = await begun({}, async ({ page }) => {
        await page.context().route(`**/${name}`, (route) => route.fulfill({ status: 404, body: 'not found' }));
      });
      await clearWords(bay, 'recogniser-failed');
      await handsWork(bay);
    },
    120_000,
  );

  test('a host that answers its start page for a file of the model is found out', async () => {
    const bay = await begun({}, async ({ page }) => {
      const start = { status: 200, contentType: 'text/html', body: '<!doctype html><title>Start</title>' };
      await page.context().route('**/model/en-us/mdef', (route) => route.fulfill(start));
    });
    await clearWords(bay, 'recogniser-failed');
    await handsWork(bay);
  }, 120_000);

  test('sound stays blocked: it says so, and the buttons do the job', async () => {
    const bay = await begun({}, async ({ page }) => {
      await page.addInitScript(() => {
        AudioContext.prototype.resume = () => new Promise(() => undefined);
        Object.defineProperty(AudioContext.prototype, 'state', { get: () => 'suspended' });
      });
    });
    await bay.page.getByText('No sound could be opened').first().waitFor();
    await handsWork(bay);
  }, 120_000);

  test('the ear dies without a word, and another breaks: it says so, nothing moves, and the next one hears', async () => {
    const bay = await begun({}, async (b) => {
      await b.wireMicrophone();
      await watchWorkers(context);
    });
    await bay.armed();
    for (const harm of [endWorker, upsetWorker]) {
      const place = await bay.place();
      const ears = await started(bay.page, 'ear-worker');
      const before = (await bay.log()).length;
      await harm(bay.page, 'ear-worker');
      const since = async (): Promise<readonly Entry[]> => (await bay.log()).slice(before);
      const told = async () => (await since()).some((e) => e.kind === 'said' && e.code.includes('recogniser-failed'));
      await bay.page.getByText(wordsFor('recogniser-failed')).first().waitFor({ timeout: 60_000 });
      await expect.poll(told, { timeout: 60_000 }).toBe(true);
      await expect.poll(() => started(bay.page, 'ear-worker'), { timeout: 60_000 }).toBeGreaterThan(ears);
      await bay.armed();
      expect(await bay.place()).toBe(place);
      await bay.say(harm === endWorker ? 'this step is done' : 'where am i');
      const heard = (await since()).filter((e) => e.kind === 'heard' && e.by === 'voice');
      expect(heard.map((e) => e.kind === 'heard' && e.command)).toEqual([harm === endWorker ? 'done' : 'tell-place']);
    }
  }, 240_000);

  test('the voice dies: the words stay on the screen, and the next voice speaks', async () => {
    const bay = await begun({}, async (b) => {
      await b.wireMicrophone('whole');
      await b.tapReplies();
      await watchWorkers(context);
    });
    await bay.armed();
    const voices = await started(bay.page, 'flite-worker');
    await endWorker(bay.page, 'flite-worker');
    const came = await typed(bay, 'this step is done');
    const said = came.find((e) => e.kind === 'said');
    expect(came.some((e) => e.kind === 'step-done')).toBe(true);
    expect(await bay.page.textContent('#app')).toContain(said?.kind === 'said' ? said.text : 'nothing was said');
    await bay.page.waitForFunction(
      (n) =>
        (window as unknown as { allWorkers: { address: string }[] }).allWorkers.filter(({ address }) =>
          address.includes('flite-worker'),
        ).length > n,
      voices,
      { timeout: 60_000 },
    );
    const { seconds } = await bay.repliesHeard();
    await typed(bay, 'it reads top on the handle side');
    await bay.armed();
    expect((await bay.repliesHeard()).seconds).toBeGreaterThan(seconds + 1);
  }, 240_000);

  test('a second tab reads only, and may write once the first is closed', async () => {
    const first = await begun({}, (b) => b.wireMicrophone());
    await typed(first, 'this step is done');
    const place = await first.place();

    const second = new Bay(await context.newPage());
    await second.wireMicrophone();
    await second.open(site.address);
    await second.page.getByText('Another tab of this browser is writing').first().waitFor();
    await second.page
      .getByRole('button', { name: /^Carry on/ })
      .first()
      .click();
    await second.page.waitForFunction(() => document.querySelector('.start') === null);
    expect(await second.page.locator('.bench').count()).toBe(0);
    // The first goes on undisturbed. A page behind another one is not drawn, so it is brought to the front.
    await first.page.bringToFront();
    expect((await typedNext(first, plan)).some((e) => e.kind === 'question-answered')).toBe(true);
    expect(await first.place()).not.toBe(place);
    const reached = await first.place();
    await first.page.close();

    await second.page.getByText('The other tab is closed').first().waitFor();
    await second.open(site.address);
    await carryOn(second);
    expect(await second.place()).toBe(reached);
    expect((await typed(second, 'this step is done')).some((e) => e.kind === 'step-done')).toBe(true);
  }, 180_000);
});
