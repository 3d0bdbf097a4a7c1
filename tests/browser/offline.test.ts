import { cpSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { leavings } from './leavings';
import { dist } from './site';
import { typed } from './typist';

const ready = (page: Page) => page.waitForSelector('#app[data-offline="ready"]', { timeout: 120_000 });

describe.skipIf(!chromiumPath)('without a network', ONCE_MORE, () => {
  const { folder, site, browser } = leavings();

  test('a second start with the server gone and the browser new works, ear and voice included', async () => {
    const profile = folder('offline');
    const served = await site();
    const first = await openContext({ profile });
    const page = await first.newPage();
    await page.goto(served.address);
    await ready(page);
    await first.close();
    await served.close();

    const bay = new Bay(await (await browser({ profile })).newPage());
    await bay.wireMicrophone();
    await bay.tapReplies();
    await bay.open(served.address);
    await bay.talkFast();
    await bay.begin('Practice plate');
    const start = await bay.place();
    await bay.say('this step is done');
    expect(await bay.place()).not.toBe(start);
    const log = await bay.log();
    expect(log.some((e) => e.kind === 'heard' && e.by === 'voice' && e.command === 'done')).toBe(true);
    expect((await bay.repliesHeard()).seconds).toBeGreaterThan(0.5);
    // A file that is in no build is not there: the start page never stands in for it.
    const missing = await bay.page.evaluate(async () => {
      const answer = await fetch('model/en-us/feature_transform');
      return { status: answer.status, body: await answer.text() };
    });
    expect(missing).toEqual({ status: 404, body: '' });
  }, 240_000);

  test('the language in use is kept with its model, and those of other languages are not', async () => {
    const profile = folder('offline-french');
    const served = await site();
    const first = await openContext({ profile });
    const page = await first.newPage();
    await page.goto(served.address);
    await ready(page);
    expect(served.asked.filter((path) => path.includes('model/fr-fr'))).toEqual([]);
    await page.getByRole('button', { name: 'Setup', exact: true }).click();
    await page.getByRole('radio', { name: 'Français' }).click();
    await page.getByRole('button', { name: 'Toucher pour commencer' }).waitFor();
    await ready(page);
    expect(served.asked.filter((path) => path.includes('model/fr-fr/mdef'))).toHaveLength(1);
    await first.close();
    await served.close();

    const bay = new Bay(await (await browser({ profile })).newPage());
    await bay.wireMicrophone();
    await bay.open(served.address);
    await bay.page.getByText("Plaque d'essai", { exact: false }).first().click();
    await bay.page.getByLabel('Qui travaille').fill('Ansel');
    await bay.page.getByRole('button', { name: 'Commencer', exact: true }).click();
    // The ear listens: the model came from what was kept.
    await bay.armed();
    expect((await typed(bay, 'cette étape est terminée')).some((e) => e.kind === 'step-done')).toBe(true);
  }, 240_000);

  test('it works from any folder of a host', async () => {
    const root = folder('host');
    cpSync(dist, join(root, 'estate/bay 2'), { recursive: true });
    const served = await site(root);
    const address = `${served.address}estate/bay%202/`;
    const context = await browser();
    const page = await context.newPage();
    await page.goto(address);
    await ready(page);
    await served.close();
    await page.close();
    const bay = new Bay(await context.newPage());
    await bay.open(address);
    await bay.begin('Practice plate');
    expect((await typed(bay, 'this step is done')).some((e) => e.kind === 'step-done')).toBe(true);
  }, 240_000);
});
