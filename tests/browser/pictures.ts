import { mkdirSync } from 'node:fs';
import { parseArgs } from 'node:util';
import type { Page } from 'playwright-core';
import { Bay } from './bay';
import { openContext } from './chromium';
import { TO_THE_FIRST_PASS } from './first-pass-words';
import { openSite } from './site';

// The README's pictures, taken anew: a job worked by typed words to the middle of a pass, then the other screens. With
// --every DIR, every screen by day and dim, to be looked at.

const { values } = parseArgs({ options: { every: { type: 'string' } } });

const SIZES = [
  { width: 800, height: 1280 },
  { width: 1280, height: 800 },
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
];
/** Where a question waits for its answer. */
const QUESTION = TO_THE_FIRST_PASS.findIndex((words) => words.startsWith('it reads'));
const IN_THE_PASS = ['bolt two done', 'what torque', 'bolt three done', 'bolt four done'];

const readme = new URL('./screens/', import.meta.url).pathname;
const site = await openSite();
const context = await openContext();
const bay = new Bay(await context.newPage());
const { page } = bay;
await bay.wireMicrophone('whole');

/** In the README by day; elsewhere by day and dim, and only where every screen is wanted. */
async function take(name: string, folder = values.every): Promise<void> {
  if (folder === undefined) return;
  mkdirSync(folder, { recursive: true });
  for (const colorScheme of folder === readme ? (['light'] as const) : (['light', 'dark'] as const)) {
    await page.emulateMedia({ colorScheme });
    for (const viewport of SIZES) {
      await page.setViewportSize(viewport);
      await page.waitForTimeout(700);
      const dim = colorScheme === 'dark' ? '-dim' : '';
      await page.screenshot({ path: `${folder}/${name}-${viewport.width}x${viewport.height}${dim}.png` });
    }
  }
  await page.emulateMedia({ colorScheme: 'light' });
  await page.setViewportSize({ width: 1280, height: 800 });
}

const say = async (all: readonly string[]): Promise<void> => {
  for (const words of all) await bay.type(words);
};

/** To the foot of a screen that is longer than the page. */
const toTheFoot = (on: Page): Promise<void> =>
  on.evaluate(() => {
    for (const element of document.querySelectorAll('.app-screen, .app-screen *')) element.scrollTop = 1e6;
    scrollTo(0, 1e6);
  });

await page.goto(site.address);
await page.waitForSelector('.start-tap');
await take('start');
await page.click('.start-tap');
await take('start-new');
// A job that waits, for the list of jobs.
await bay.begin('Practice plate');
await say(['this step is done']);
await bay.go('Jobs');
await bay.begin('Left head gasket');
await take('bench-step');
await say(TO_THE_FIRST_PASS.slice(0, QUESTION));
await take('bench-question');
await say([...TO_THE_FIRST_PASS.slice(QUESTION), ...IN_THE_PASS]);
await bay.armed();
await take('bench', readme);
await take('bench-pass');
await say(['hold on a minute']);
await take('bench-break');
await say(['i am back']);
await page.getByRole('button', { name: 'Screens' }).click();
await take('bench-screens');
await page.keyboard.press('Escape');
for (const screen of ['Record', 'Jobs', 'Procedures', 'Setup'] as const) {
  await bay.go(screen);
  await page.waitForTimeout(700);
  await take(screen.toLowerCase(), readme);
  await take(screen.toLowerCase());
  if (values.every === undefined) continue;
  await toTheFoot(page);
  await take(`${screen.toLowerCase()}-foot`);
}
if (values.every !== undefined) {
  await bay.go('Procedures');
  await page.getByRole('button', { name: 'Read: Both head gaskets' }).click();
  await page.waitForTimeout(700);
  await take('procedure');
  await page.getByRole('button', { name: 'Print the job card' }).click();
  await page.waitForTimeout(700);
  await take('card');
}
await context.close();
await site.close();
