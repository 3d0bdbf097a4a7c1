import type { BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite, type Site } from './site';
import { typed } from './typist';

/** What each place of the tour is told by. */
const FIRST = 'A short tour on three bolts';

describe.skipIf(!chromiumPath)('the tour', ONCE_MORE, () => {
  let site: Site;
  let context: BrowserContext;
  let bay: Bay;
  beforeAll(async () => {
    site = await openSite();
  });
  beforeEach(async () => {
    context = await openContext({ serviceWorkers: 'block' });
    bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.tapReplies();
    await bay.open(site.address);
    await bay.page.getByRole('button', { name: 'Two-minute tour' }).click();
    await bay.page.waitForSelector('.bench');
    await bay.page.getByText(FIRST).waitFor();
  });
  afterEach(async () => {
    await context.close();
  });
  afterAll(async () => {
    await site.close();
  });

  test('tells what can be said where, with words that are taken, and keeps nothing', async () => {
    for (const [words, told] of [
      ['say again', FIRST],
      ['this step is done', 'Here I wait for what you see'],
      ['it reads top near the wall', 'Here I wait for what you see'],
      ['it reads top on the handle side', 'ask “which words now”'],
      ['which words now', 'ask “which words now”'],
      ['this step is done', 'say what it is set at'],
      ['i have the time', 'say what it is set at'],
      ['set at fifteen', 'report it by its number'],
      ['bolt one done', 'report it by its number'],
      ['take that back', 'report it by its number'],
      ['bolt one done', 'report it by its number'],
      ['bolt three done', 'report it by its number'],
      ['bolt two done', 'That was one pass'],
    ] as const) {
      const came = await typed(bay, words);
      expect(came.filter(({ kind }) => kind === 'rejected')).toEqual([]);
      await bay.page.locator('.notice', { hasText: told }).waitFor();
    }
    await bay.page.getByRole('button', { name: 'Skip the tour' }).click();
    await bay.page.waitForSelector('.start');
    // Nothing was kept, so it is offered again.
    await bay.page.getByRole('button', { name: 'Two-minute tour' }).waitFor();
    expect(bay.troubles.filter((text) => !text.includes('Service Worker'))).toEqual([]);
  }, 60_000);

  test('is spoken, and skipped by a spoken stop', async () => {
    await bay.armed();
    expect((await bay.repliesHeard()).seconds).toBeGreaterThan(1);
    await bay.say('stop');
    await expect.poll(() => bay.page.getByText(FIRST).count(), { timeout: 10_000 }).toBe(0);
    await bay.say('this step is done');
    expect(await bay.place()).toBe('ready.corner');
    expect(await bay.page.locator('.notice').count()).toBe(0);
  }, 120_000);
});
