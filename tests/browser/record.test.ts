import type { BrowserContext, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { longRecord } from '../screens/long-record';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { byKeyboard, byTouch, type Hand } from './hands';
import { openSite, type Site } from './site';

/** Two days of the whole job, with bolts taken back. */
const ENTRIES = 4000;

describe.skipIf(!chromiumPath).each([
  ['keyboard', byKeyboard],
  ['touch', byTouch],
] as const)('the record read by %s alone', ONCE_MORE, (name, handOf) => {
  let site: Site;
  let context: BrowserContext;
  let page: Page;
  let hand: Hand;
  const { text } = longRecord(ENTRIES);

  beforeAll(async () => {
    site = await openSite();
    context = await openContext({ touch: name === 'touch', serviceWorkers: 'block' });
    page = await context.newPage();
    hand = handOf(page);
    const bay = new Bay(page);
    await bay.wireMicrophone();
    await bay.open(site.address);
    await bay.takeOver(text);
    await hand.press(page.getByRole('button', { name: /^Record/ }).last());
    await page.waitForSelector('.book-line');
  });
  afterAll(async () => {
    await context.close();
    await site.close();
  });

  const day = (nth: number): Locator => page.locator('.strip-day').nth(nth);
  const sought = (): Locator => page.locator('.book-sought');
  const isAtHead = (line: Locator): Promise<boolean> =>
    line.evaluate((e) => {
      const page = e.closest('.book-page')?.getBoundingClientRect();
      return page !== undefined && Math.abs(e.getBoundingClientRect().top - page.top) < 5;
    });

  test('a day pressed on the strip is brought to the head of the page', async () => {
    await expect.poll(() => day(0).getAttribute('aria-current')).toBe('true');
    await hand.press(day(1));
    await expect.poll(() => day(1).getAttribute('aria-current')).toBe('true');
    expect(await day(0).getAttribute('aria-current')).toBeNull();
    expect(await day(1).getAttribute('aria-label')).toMatch(/^Tuesday 3 March 2026, 0?7:30 to .*Done: \d+/);
  });

  test('a phase chosen from the list is brought to the head of the page', async () => {
    await hand.choose(page.getByLabel('Go to phase'), 'Strip');
    const phase = page.locator('.book-phase').filter({ hasText: /^Strip/ });
    await phase.first().waitFor();
    await expect.poll(() => isAtHead(phase.first())).toBe(true);
  });

  test('what went wrong goes from the summary to its line, and a taken-back line to what took it back', async () => {
    await hand.press(page.locator('summary').filter({ hasText: /^Out of the ordinary: [1-9]/ }));
    await hand.press(page.locator('.summary-list button').filter({ hasText: 'Taken back: Bolt' }).first());
    await sought().waitFor();
    await hand.press(sought().locator('.book-link'));
    await expect.poll(() => sought().locator('s').count()).toBe(1);
    await hand.press(sought().locator('.book-link'));
    await expect.poll(() => sought().getAttribute('class')).toContain('book-correction');
  });

  test('a bolt in the table goes to the moment it was told', async () => {
    await hand.press(page.locator('summary').filter({ hasText: 'Pass by bolt' }));
    const cell = page.locator('.bolts-jump').first();
    const when = (await cell.textContent()) ?? '';
    await hand.press(cell);
    await expect.poll(() => sought().locator('.book-time').textContent()).toBe(when.match(/\d\d:\d\d/)?.[0]);
    expect(await sought().textContent()).toContain('Bolt');
  });

  test('trouble alone is shown where it is asked for, and found words are counted', async () => {
    await hand.pick(page.getByRole('radio', { name: 'Trouble' }));
    await expect.poll(() => page.locator('.book-heard').count()).toBe(0);
    const shown = await page
      .locator('.book-line')
      .evaluateAll((all) =>
        all
          .filter((e) => !(e.matches('.book-fault, .book-correction') || e.querySelector('s')))
          .map((e) => e.textContent),
      );
    expect(shown).toEqual([]);
    await hand.pick(page.getByRole('radio', { name: 'Everything' }));
    await hand.write(page.getByRole('searchbox'), 'bolt two');
    await expect.poll(() => page.locator('.filter-found').textContent()).toMatch(/^[1-9]\d* of /);
  });

  test('the tools of the document stand in it, and that nobody said which wrench was used', async () => {
    await hand.press(page.locator('summary').filter({ hasText: /^Tools: 17$/ }));
    const row = page.getByRole('row').filter({ hasText: /^torque wrench/ });
    expect(await row.textContent()).toContain('not named');
  });
});
