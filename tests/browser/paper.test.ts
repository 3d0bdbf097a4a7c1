import type { BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { openSite, type Site } from './site';

/** The width between the margins of paper.css, in CSS pixels of a 96th of an inch: 210 and 215.9 mm less 30 mm. */
const PAPERS = [
  { format: 'A4', width: Math.floor(((210 - 30) / 25.4) * 96) },
  { format: 'Letter', width: Math.floor(((215.9 - 30) / 25.4) * 96) },
] as const;

describe.skipIf(!chromiumPath)('on paper', ONCE_MORE, () => {
  let site: Site;
  let context: BrowserContext;
  let bay: Bay;
  beforeAll(async () => {
    site = await openSite();
  });
  afterEach(async () => {
    await context.close();
  });
  afterAll(async () => {
    await site.close();
  });

  async function open(): Promise<void> {
    context = await openContext({ serviceWorkers: 'block' });
    bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
    await bay.page.addInitScript(() => {
      window.print = () => undefined;
    });
    await bay.open(site.address);
  }

  /** Held to this paper: nothing reaches over its edge, and every page has the job and the machine at its head. */
  async function printed(head: string): Promise<void> {
    for (const { format, width } of PAPERS) {
      await bay.page.emulateMedia({ media: 'print', colorScheme: 'dark' });
      await bay.page.setViewportSize({ width, height: 1000 });
      const wide = await bay.page.evaluate(() =>
        [...document.querySelectorAll('main *')]
          .filter((e) => e.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
          .map((e) => e.outerHTML.slice(0, 80)),
      );
      expect({ format, wide }).toEqual({ format, wide: [] });
      // Black on white, whatever the theme of the screen.
      const { color, backgroundColor } = await bay.page.evaluate(() => {
        const { color, backgroundColor } = getComputedStyle(document.body);
        return { color, backgroundColor };
      });
      expect({ color, backgroundColor }).toEqual({ color: 'rgb(0, 0, 0)', backgroundColor: 'rgb(255, 255, 255)' });
      const atHead = await bay.page.evaluate(() =>
        document.documentElement.style.getPropertyValue('--paper-head').slice(1, -1),
      );
      expect(atHead).toBe(head);
      const pdf = (await bay.page.pdf({ format })).toString('latin1');
      expect(pdf.match(/\/Type \/Page[^s]/g)?.length).toBeGreaterThan(1);
      await bay.page.emulateMedia({ media: 'screen', colorScheme: 'light' });
      await bay.page.setViewportSize({ width: 1280, height: 800 });
    }
  }

  test.each([
    ['Both head gaskets, the whole job', 'Tarnbeck 32V6 petrol engine, forestry carrier'],
    ['Wheel, five studs', 'A road wheel on five studs'],
  ])(
    'the job card of %s',
    async (title, machine) => {
      await open();
      await bay.go('Procedures');
      await bay.page.getByRole('button', { name: `Print the job card: ${title}` }).click();
      await bay.page.waitForSelector('.card h2');
      for (const section of ['Tools and sockets, by phase', 'Wrench settings, pass by pass', 'Bags and slots'])
        await bay.page.getByRole('heading', { level: 2, name: section }).waitFor();
      await printed(`Job card: ${title} · ${machine}`);
    },
    60_000,
  );

  test('the record', async () => {
    await open();
    await bay.begin('Left head gasket');
    for (let i = 0; i < 5; i++) await bay.type('this step is done');
    for (const reading of ['bulkhead', 'radiator']) await bay.type(`it reads printed face to the ${reading}`);
    for (const words of ['this step is done', 'take that back', 'this step is done', 'hold on a minute', 'i am back'])
      await bay.type(words);
    await bay.go('Record');
    await bay.page.waitForSelector('.record-title');
    await printed('Left head gasket, the short run · Tarnbeck 32V6 petrol engine, forestry carrier');
  }, 60_000);
});
