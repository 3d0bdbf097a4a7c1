import type { BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { longRecord } from '../screens/long-record';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { canReadSheets, type Sheet, sheetsOf } from './sheets';
import { openSite, type Site } from './site';

/** The width between the margins of paper.css, in CSS pixels of a 96th of an inch: 210 and 215.9 mm less 30 mm. */
const PAPERS = [
  { format: 'A4', width: Math.floor(((210 - 30) / 25.4) * 96) },
  { format: 'Letter', width: Math.floor(((215.9 - 30) / 25.4) * 96) },
] as const;

/** Printers cannot reach the edge; 5 mm is what most of them leave white (common practice). */
const EDGE_MM = 5;
/** Enough of the whole job for its bolts, readings, debts and what was taken back. */
const ENTRIES = 1200;

const withoutSpace = (text: string): string => text.replaceAll(/\s+/g, '');

describe.skipIf(!chromiumPath || !canReadSheets)('on paper', ONCE_MORE, () => {
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

  /**
   * Held to both papers, and read back as somebody else's program reads it: nothing reaches over an edge, every sheet has
   * the job and the machine at its head and its number at its foot, and all `texts` are on them.
   */
  async function printed(head: string, texts: readonly string[]): Promise<void> {
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
      const sheets = sheetsOf(await bay.page.pdf({ format }));
      expect(sheets.length).toBeGreaterThan(1);
      expect(sheets.flatMap((sheet, i) => faultsOf(sheet, head, `${i + 1} / ${sheets.length}`))).toEqual([]);
      const all = withoutSpace(sheets.map(({ text }) => withoutHeadAndFoot(text, head)).join(''));
      expect(texts.filter((text) => !all.includes(withoutSpace(text)))).toEqual([]);
      await bay.page.emulateMedia({ media: 'screen', colorScheme: 'light' });
      await bay.page.setViewportSize({ width: 1280, height: 800 });
    }
  }

  const withoutHeadAndFoot = (text: string, head: string): string =>
    text.replace(head, '').replace(/^\d+ \/ \d+$/m, '');

  function faultsOf({ text, white }: Sheet, head: string, number: string): readonly string[] {
    const lines = text.split('\n').map((line) => line.trim());
    return [
      ...(lines.includes(head) ? [] : [`sheet ${number} has no head: ${lines[0]}`]),
      ...(lines.includes(number) ? [] : [`sheet ${number} has no number`]),
      ...Object.entries(white).flatMap(([edge, mm]) => (mm < EDGE_MM ? [`sheet ${number}: ${edge} ${mm} mm`] : [])),
    ];
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
      await printed(
        `Job card: ${title} · ${machine}`,
        await bay.page.locator('.card td, .card h2, .card h3, .card li').allTextContents(),
      );
    },
    60_000,
  );

  test('the record', async () => {
    const { text, last } = longRecord(ENTRIES);
    await open();
    await bay.go('Jobs');
    const file = { name: 'long-job.json', mimeType: 'application/json', buffer: Buffer.from(text) };
    await bay.page.locator('.picker-input').setInputFiles(file);
    await bay.page
      .locator('.row')
      .filter({ hasText: /1,?200/ })
      .waitFor();
    await bay.page
      .getByRole('button', { name: /^Record/ })
      .last()
      .click();
    await bay.page.waitForSelector('.record-title');
    const bodies: readonly string[] = (JSON.parse(text) as { entries: readonly string[] }).entries;
    const said = bodies.flatMap((body): readonly string[] => {
      const entry = JSON.parse(body) as { readonly kind: string; readonly text?: string };
      return entry.kind === 'said' && entry.text ? [entry.text] : [];
    });
    expect(said.length).toBeGreaterThan(ENTRIES / 10);
    await printed('Both head gaskets, the whole job · Tarnbeck 32V6 petrol engine, forestry carrier', [
      'Values here are spoken confirmations',
      ...(await bay.page.locator('.summary-part summary').allTextContents()),
      ...(await bay.page.locator('.bolts-table caption').allTextContents()),
      ...said,
      last,
    ]);
  }, 120_000);
});
