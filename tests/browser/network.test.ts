import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { planOf } from '../../src/core/job/plan';
import { shipped } from '../core/job/workbench';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite, type Site } from './site';
import { typed, workOn } from './typist';

const plan = planOf(shipped('practice-plate'));

describe.skipIf(!chromiumPath)('what goes over the network', ONCE_MORE, () => {
  let site: Site;
  beforeAll(async () => {
    site = await openSite();
  });
  afterAll(async () => {
    await site?.close();
  });

  test('a whole session asks its own address only, and once all is kept nothing but whether there is an update', async () => {
    const context = await openContext();
    const asked: string[] = [];
    context.on('request', (request) => asked.push(request.url()));
    const bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.open(site.address);
    await bay.talkFast();
    await bay.begin('Practice plate');
    await bay.armed();
    await workOn(bay, plan, 'closing');
    expect(await bay.place()).toBe('closing');
    await typed(bay, 'what is still off');
    await bay.armed();
    expect(asked.length).toBeGreaterThan(10);
    const own = (url: string) => url.startsWith(site.address) || url.startsWith(`blob:${site.address}`);
    expect(asked.filter((url) => !own(url))).toEqual([]);
    expect(bay.troubles).toEqual([]);

    await bay.page.waitForSelector('#app[data-offline="ready"]', { timeout: 120_000 });
    await bay.page.close();
    const before = site.asked.length;
    const again = new Bay(await context.newPage());
    await again.wireMicrophone();
    await again.open(site.address);
    await again.begin('Wheel, five studs');
    await again.armed();
    await typed(again, 'this step is done');
    await again.armed();
    expect(site.asked.slice(before).filter((path) => path !== '/service-worker.js')).toEqual([]);
    await context.close();
  }, 300_000);

  test('no name of another host can be resolved, nor any other host be asked', async () => {
    const context = await openContext();
    const page = await context.newPage();
    await page.goto(site.address);
    // The policy refuses it before the resolver would: both must be in force.
    const refused = page.waitForEvent('console', (message) => message.text().includes('Content Security Policy'));
    const outcome = await page.evaluate(() =>
      fetch('http://example.org/').then(
        () => 'reached',
        () => 'refused',
      ),
    );
    expect(outcome).toBe('refused');
    await refused;
    await expect(page.goto('http://example.org/')).rejects.toThrow('ERR_NAME_NOT_RESOLVED');
    await context.close();
  }, 60_000);
});
