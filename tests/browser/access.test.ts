import { readFileSync } from 'node:fs';
import type { BrowserContext } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { findings } from './axe';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { TO_THE_FIRST_PASS } from './first-pass-words';
import { motion } from './motion';
import { openSite } from './site';

describe.skipIf(!chromiumPath)('every screen, day and dim', ONCE_MORE, () => {
  let site: Awaited<ReturnType<typeof openSite>>;
  let context: BrowserContext;
  let bay: Bay;

  beforeAll(async () => {
    site = await openSite();
  });
  // A browser for each run, so that one that is run once more finds no job of the run before.
  beforeEach(async () => {
    context = await openContext();
    await context.grantPermissions(['camera', 'microphone'], { origin: site.address.replace(/\/$/, '') });
    bay = new Bay(await context.newPage());
    await bay.wireMicrophone();
  });
  afterEach(async () => {
    await context?.close();
  });
  afterAll(async () => {
    await site?.close();
  });

  async function check(name: string, schemes: readonly ('light' | 'dark')[] = ['light', 'dark']): Promise<void> {
    // The code of a screen comes when it is first opened.
    await bay.page.waitForSelector('main h1');
    for (const colorScheme of schemes) {
      await bay.page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      expect.soft({ name, colorScheme, found: await findings(bay.page) }).toEqual({ name, colorScheme, found: [] });
    }
    expect.soft({ name, moves: await motion(bay.page) }).toEqual({ name, moves: [] });
  }

  const button = (name: string | RegExp) => bay.page.getByRole('button', { name });

  /** Opens a screen, and waits until it is the one that is shown. */
  async function visit(screen: 'Record' | 'Jobs' | 'Setup' | 'Procedures' | 'Bench'): Promise<void> {
    await bay.go(screen);
    if (screen === 'Bench' || screen === 'Record') await bay.page.waitForSelector(`.${screen.toLowerCase()}`);
    else await bay.page.getByRole('heading', { level: 1, name: screen }).waitFor();
  }

  /** The colours of one theme while the system asks for the other. */
  async function chosen(theme: 'Day' | 'Dim', system: 'light' | 'dark', paper: string): Promise<void> {
    await visit('Setup');
    await bay.page.getByRole('radio', { name: theme, exact: true }).check();
    await check(`Setup, ${theme} chosen`, [system]);
    expect(await bay.page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe(paper);
    for (const screen of ['Jobs', 'Procedures', 'Record', 'Bench'] as const) {
      await visit(screen);
      await check(`${screen}, ${theme} chosen`, [system]);
    }
  }

  /** What of the Record is folded, or laid over it. */
  async function checkRecordOpened(): Promise<void> {
    const folded = bay.page.locator('.summary-part:not([open]) summary');
    while ((await folded.count()) > 0) await folded.first().click();
    await check('the record unfolded');
    await bay.page.getByRole('combobox').selectOption({ index: 0 });
    await bay.page.locator('.book-page').evaluate((page) => {
      page.scrollTop = page.scrollHeight;
    });
    await bay.page.locator('.book-picture').getByRole('button').last().click();
    await bay.page.getByRole('dialog').getByRole('img').waitFor();
    await check('a picture');
    await bay.page.keyboard.press('Escape');
  }

  /** Where it is asked again before anything is deleted. */
  async function checkDeleting(): Promise<void> {
    await visit('Jobs');
    await button(/^Delete/)
      .first()
      .click();
    await check('a job about to be deleted');
    await button('Keep').click();
    await visit('Setup');
    await button('Delete everything').click();
    await check('everything about to be deleted');
    await button('Keep everything').click();
  }

  async function checkBrokenDocument(): Promise<void> {
    const text = readFileSync('procedures/practice-plate.yaml', 'utf8');
    const buffer = Buffer.from(text.replace('id: practice-plate', 'id: own').replace('torque: 15 N·m', 'torque: 15'));
    await visit('Procedures');
    await bay.page.locator('.picker-input').setInputFiles({ name: 'own.yaml', mimeType: 'text/yaml', buffer });
    await bay.page.locator('.issue').first().waitFor();
    await check('a broken document');
  }

  /** 22 mm on a ten-inch tablet, less what rounding takes. */
  const KNUCKLE = 130;
  const smallest = (controls: string): Promise<number> =>
    bay.page.locator(controls).evaluateAll((all) =>
      Math.min(
        ...all.map((one) => {
          const { width, height } = one.getBoundingClientRect();
          return Math.min(width, height);
        }),
      ),
    );

  /** From the first step to the first pass, one bolt done, by typed words. */
  async function toTheFirstPass(): Promise<void> {
    for (const words of TO_THE_FIRST_PASS) await bay.type(words);
  }

  /** Once a bolt is the one to be worked, the one before it is written: a key pressed sooner would be asked again. */
  const workAt = (bolt: number) => bay.page.locator('.work-line', { hasText: `Bolt ${bolt},` }).waitFor();

  test('has nothing that axe calls a violation', async () => {
    await bay.page.goto(site.address);
    await bay.page.waitForSelector('.start-tap');
    await check('before the tap');
    await bay.page.click('.start-tap');
    await check('start');
    await bay.begin('Left head gasket');
    await check('a warning on the bench');
    await toTheFirstPass();
    await check('a pass on the bench');
    await bay.page.locator('.words-all').press('Enter');
    await bay.page.waitForSelector('.tap-sentence');
    await check('the sheet of sentences');
    expect(await smallest('.tap-sentence')).toBeGreaterThanOrEqual(KNUCKLE);
    await bay.page.getByRole('button', { name: 'bolt … done' }).press('Enter');
    await bay.page.waitForSelector('.pad');
    await check('the number pad');
    expect(await smallest('.pad button')).toBeGreaterThanOrEqual(KNUCKLE);
    await bay.page.keyboard.press('Escape');
    await bay.page.waitForFunction(() => document.querySelector('dialog[open]') === null);
    await bay.type('take a picture');
    await bay.page.getByRole('button', { name: 'Screens' }).click();
    await check('the sheet of screens');
    for (const [screen, heading] of [
      ['Record', 'Left head gasket, the short run'],
      ['Jobs', 'Jobs'],
      ['Setup', 'Setup'],
      ['Procedures', 'Procedures'],
    ] as const) {
      await bay.go(screen);
      await bay.page.getByRole('heading', { level: 1, name: heading }).waitFor();
      await check(screen);
    }
    await visit('Record');
    await checkRecordOpened();
    await checkDeleting();
    await checkBrokenDocument();
    await chosen('Dim', 'light', 'rgb(16, 19, 22)');
    await chosen('Day', 'dark', 'rgb(247, 244, 236)');
    await visit('Procedures');
    await bay.page.getByRole('button', { name: 'Read: Both head gaskets' }).click();
    await bay.page.getByRole('heading', { level: 1, name: 'Both head gaskets' }).waitFor();
    await check('a procedure');
    await bay.page.getByRole('button', { name: 'Print the job card' }).click();
    await bay.page.getByRole('heading', { level: 2, name: 'Bags and slots' }).waitFor();
    await check('a job card');
    // In the hand, once each.
    await bay.page.setViewportSize({ width: 390, height: 844 });
    for (const screen of ['Setup', 'Jobs', 'Procedures', 'Record', 'Bench'] as const) {
      await visit(screen);
      await check(`${screen} on a phone`, ['light']);
    }
  }, 600_000);

  test("the tour's notice has none either, and on a phone its words have the whole width", async () => {
    await bay.open(site.address);
    await bay.page.getByRole('button', { name: 'Two-minute tour' }).click();
    await bay.page.locator('.notice', { hasText: 'A short tour' }).waitFor();
    await check('the tour');
    await bay.page.setViewportSize({ width: 390, height: 844 });
    await check('the tour on a phone');
    const widths = await bay.page.evaluate(() => {
      const notice = document.querySelector('.notice');
      const style = notice && getComputedStyle(notice);
      const room = notice && style ? notice.clientWidth - 2 * Number.parseFloat(style.paddingLeft) : 0;
      return { room, words: notice?.querySelector('p')?.getBoundingClientRect().width };
    });
    expect(widths.words).toBeCloseTo(widths.room, 0);
  }, 120_000);

  test('a screen begins at its head, wherever the one before was left', async () => {
    await bay.open(site.address);
    for (const screen of ['Procedures', 'Setup', 'Jobs']) {
      await bay.go(screen);
      await bay.page.getByRole('heading', { level: 1, name: screen }).waitFor();
      const box = bay.page.locator('.app-screen');
      expect({ screen, top: await box.evaluate((e) => e.scrollTop) }).toEqual({ screen, top: 0 });
      await box.evaluate((e) => {
        e.scrollTop = e.scrollHeight;
      });
      expect(await box.evaluate((e) => e.scrollTop)).toBeGreaterThan(0);
    }
  }, 60_000);

  test('can be worked by keyboard alone', async () => {
    await bay.open(site.address);
    await bay.begin('Left head gasket');
    await toTheFirstPass();
    await workAt(2);
    expect(await bay.place()).toBe('tighten.tighten-left.first.work');
    await bay.page.keyboard.press('PageDown');
    await workAt(3);
    await bay.page.keyboard.press('Home');
    await bay.page.waitForFunction(() =>
      (document.getElementById('app') as unknown as { entries: { kind: string }[] }).entries.some(
        (e) => e.kind === 'undone',
      ),
    );
  }, 60_000);
});
