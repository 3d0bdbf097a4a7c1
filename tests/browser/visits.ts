import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect } from 'vitest';
import { Bay } from './bay';
import { openContext } from './chromium';
import { openSite, type Site } from './site';

export type Visit = { readonly site: Site; readonly context: BrowserContext; readonly page: Page; readonly bay: Bay };

/**
 * For the tests of a file the app as it is built, and for each of them a browser of its own with a page that has our
 * microphone in front of it. Nothing of it may end in an error of the page. `visit()` is the one of the test that runs.
 */
export function visits(): () => Visit {
  let site: Site;
  let now: Visit | undefined;
  beforeAll(async () => {
    site = await openSite();
  });
  beforeEach(async () => {
    const context = await openContext({ serviceWorkers: 'block' });
    const page = await context.newPage();
    const bay = new Bay(page);
    await bay.wireMicrophone();
    now = { site, context, page, bay };
  });
  afterEach(async () => {
    const { bay, context } = visit();
    expect(bay.troubles.filter((text) => !text.includes('Service Worker'))).toEqual([]);
    await context.close();
  });
  afterAll(async () => {
    await site.close();
  });
  const visit = (): Visit => {
    if (!now) throw new Error('no test is running');
    return now;
  };
  return visit;
}
