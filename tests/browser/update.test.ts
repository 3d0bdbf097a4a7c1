import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { listed } from '../../src/offline/vite-offline';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE } from './chromium';
import { leavings } from './leavings';
import { dist } from './site';
import { carryOn, typed } from './typist';

const ready = (page: Page) => page.waitForSelector('#app[data-offline="ready"]', { timeout: 120_000 });

/** A copy of the build that differs in one thing one can see, as a next version would. */
function nextVersion(folder: string): void {
  cpSync(dist, folder, { recursive: true });
  const page = join(folder, 'index.html');
  writeFileSync(page, readFileSync(page, 'utf8').replace('<html>', '<html data-version="next">'));
  const worker = join(folder, 'service-worker.js');
  const code = readFileSync(worker, 'utf8');
  const changed = code.replace(JSON.stringify(listed(dist)), () => JSON.stringify(listed(folder)));
  expect(changed).not.toBe(code);
  writeFileSync(worker, changed);
}

describe.skipIf(!chromiumPath)('a newer version', ONCE_MORE, () => {
  const { folder, site, browser } = leavings();

  test('an update waits while a job is open, and takes hold at the next start with the job intact', async () => {
    const next = folder('next');
    nextVersion(next);
    const before = await site();
    const context = await browser();
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.page.goto(before.address);
    await ready(bay.page);
    await bay.page.click('.start-tap');
    await bay.begin('Practice plate');
    await typed(bay, 'this step is done');
    await before.close();

    const after = await site(next, before.port);
    const waits = await bay.page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      for (let n = 0; n < 300 && !registration.waiting; n++) await new Promise((resolve) => setTimeout(resolve, 100));
      return registration.waiting !== null;
    });
    expect(waits).toBe(true);
    // Only what has changed was fetched again.
    const fetched = after.asked.filter((path) => path !== '/service-worker.js');
    expect(fetched).toEqual(['/index.html']);
    const place = await bay.place();
    const version = () => bay.page.getAttribute('html', 'data-version');
    expect(await version()).toBeNull();
    expect((await typed(bay, 'where am i')).some((e) => e.kind === 'said')).toBe(true);
    expect(await bay.place()).toBe(place);

    await bay.page.goto(after.address);
    await bay.page.waitForSelector('html[data-version="next"] .start-tap');
    await bay.page.click('.start-tap');
    await carryOn(bay);
    expect(await bay.place()).toBe(place);
    await ready(bay.page);
  }, 240_000);
});
