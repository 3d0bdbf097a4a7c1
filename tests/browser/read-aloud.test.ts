import type { BrowserContext, Locator } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { findings } from './axe';
import { Bay } from './bay';
import { chromiumPath, ONCE_MORE, openContext } from './chromium';
import { byKeyboard } from './hands';
import { openSite } from './site';

const WAIT = { timeout: 60_000 };
/** Somebody whom the model does not fit. */
const SMALLER = 1.3;

describe.skipIf(!chromiumPath)('lines read aloud', ONCE_MORE, () => {
  let site: Awaited<ReturnType<typeof openSite>>;
  let context: BrowserContext;
  let bay: Bay;
  let sheet: Locator;

  beforeAll(async () => {
    site = await openSite();
  });
  beforeEach(async () => {
    context = await openContext();
    bay = new Bay(await context.newPage());
    sheet = bay.page.getByRole('dialog', { name: 'Fit to a voice' });
    await bay.wireMicrophone();
    await bay.open(site.address);
    await bay.go('Setup');
  });
  afterEach(async () => {
    await context?.close();
  });
  afterAll(async () => {
    await site?.close();
  });

  async function check(name: string): Promise<void> {
    expect.soft({ name, found: await findings(bay.page) }).toEqual({ name, found: [] });
  }

  const line = async (): Promise<string> => (await sheet.locator('.reading-text').textContent(WAIT)) ?? '';

  /** From the button to the first line, by keys alone. */
  async function begin(person: string, headset: string): Promise<void> {
    const hand = byKeyboard(bay.page);
    await hand.press(bay.page.getByRole('button', { name: 'Read aloud' }));
    await hand.write(sheet.getByLabel('Who reads'), person);
    await hand.write(sheet.getByLabel('Which headset or mask'), headset);
    await check('who reads');
    await hand.press(sheet.getByRole('button', { name: 'Show the first line' }));
    await sheet.locator('.reading-text').waitFor(WAIT);
  }

  /** Reads the line that is shown, and waits for the next or for the end. */
  async function read(): Promise<void> {
    const text = await line();
    await bay.utter(text, 'rms', SMALLER);
    await sheet
      .locator('.reading-text')
      .filter({ hasText: text })
      .waitFor({ state: 'detached', ...WAIT });
  }

  test('fit the ear to a voice, are kept for the next day, and can be thrown away', async () => {
    await begin('Ansel', 'half mask');
    await check('a line');
    // Something else than the line is not learned from.
    await bay.utter('say again');
    await sheet.getByText('That did not sound like the line').waitFor(WAIT);
    for (let n = 0; n < 4; n++) await read();
    await sheet.getByText('Fitted to this voice').waitFor(WAIT);
    await sheet.getByText(/Voice -\d+ dB, room -\d+ dB/).waitFor();
    await check('what was found');
    await bay.page.keyboard.press('Escape');
    await sheet.waitFor({ state: 'detached' });

    const mine = bay.page.getByRole('radio', { name: 'Ansel, half mask' });
    await expect.poll(() => mine.isChecked()).toBe(true);
    await check('the list of voices');
    // The ear that is fitted hears.
    await bay.page.getByRole('button', { name: 'Check the microphone' }).click();
    await bay.page.getByText("Say: what's next").waitFor(WAIT);
    await bay.page.waitForTimeout(2_000);
    await bay.utter("what's next", 'rms', SMALLER);
    await bay.page.getByText("It heard “what's next”").waitFor(WAIT);

    await bay.page.reload();
    await bay.page.click('.start-tap');
    await bay.go('Setup');
    await expect.poll(() => mine.isChecked()).toBe(true);
    await bay.page.getByRole('button', { name: 'Take out: Ansel, half mask' }).click();
    await mine.waitFor({ state: 'detached' });
    expect(bay.troubles).toEqual([]);
  }, 240_000);

  test('can be put away half-way, and nothing is kept', async () => {
    await begin('Berta', 'throat microphone');
    await read();
    await sheet.getByRole('button', { name: 'Put away' }).click();
    await sheet.waitFor({ state: 'detached' });
    expect(await bay.page.getByRole('radio', { name: /Berta/ }).count()).toBe(0);
    expect(bay.troubles).toEqual([]);
  }, 120_000);
});
