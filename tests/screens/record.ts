import type { Page } from 'playwright-core';
import { Bay } from '../browser/bay';
import { openContext } from '../browser/chromium';
import type { Site } from '../browser/site';
import type { LongRecord } from './long-record';
import { addWatch, during, fromTap, spread, tenth, type Watched, worstOf } from './watched';

const SOUGHT = 'bolt seven';

/** A job of so many entries is taken over from its file and its record is read as a person would: by tap, wheel and word. */
export async function measureRecord(site: Site, { text, entries, last }: LongRecord) {
  const context = await openContext({ touch: true });
  try {
    await addWatch(context);
    const { page } = await opened(new Bay(await context.newPage()), site);
    const takenMs = await takeOver(page, text, entries);
    const firstRowsMs = await fromTap(page, '.book-rows .book-line', () =>
      page
        .getByRole('button', { name: /^Record/ })
        .last()
        .tap(),
    );
    await page.waitForTimeout(1000);

    const scrolled = await page.evaluate(() => (window as unknown as Watched).screensWatch.scrollThrough());
    if (!scrolled.last.includes(last)) throw new Error(`the last row is "${scrolled.last}", not "${last}"`);
    const search = await searched(page, entries);
    const jump = await page.evaluate(() => (window as unknown as Watched).screensWatch.jumpToPhase());
    if (jump.ms === null) throw new Error(`the jump to "${jump.words}" never arrived`);
    return {
      entries,
      megabytes: tenth(text.length / 1e6),
      takenMs: tenth(takenMs),
      firstRowsMs: tenth(firstRowsMs),
      frames: { ...spread(scrolled.apart), blank: scrolled.blank },
      search,
      jumpMs: tenth(jump.ms),
    };
  } finally {
    await context.close();
  }
}

async function opened(bay: Bay, site: Site): Promise<Bay> {
  await bay.wireMicrophone('whole');
  await bay.open(site.address);
  await bay.go('Jobs');
  return bay;
}

/** From the choice of the file to the notice that the job is here; throws the app's own words where it is refused. */
async function takeOver(page: Page, text: string, entries: number): Promise<number> {
  const began = performance.now();
  const file = { name: 'long-job.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await page.locator('.picker-input').setInputFiles(file);
  const row = page.locator('.row').filter({ hasText: new RegExp(`${entries}|${entries.toLocaleString('en')}`) });
  await row.waitFor({ timeout: 120_000 }).catch(async () => {
    throw new Error(`the file was not taken over: ${await page.locator('.notices').textContent()}`);
  });
  return performance.now() - began;
}

/** Letter by letter, as it is typed: each one searches again. */
async function searched(page: Page, entries: number) {
  const field = page.locator('.filter input[type=search]');
  await field.tap();
  const letters: number[] = [];
  for (const letter of SOUGHT) letters.push(worstOf(await during(page, () => page.keyboard.type(letter))));
  const found = /^(\d+) of (\d+)/.exec(((await page.locator('.filter-found').textContent()) ?? '').replaceAll(',', ''));
  const many = Number(found?.[1]);
  if (Number(found?.[2]) !== entries || !(many > 0 && many < entries))
    throw new Error(`"${SOUGHT}" found ${found?.[0] ?? 'nothing'}`);
  const strays = await page
    .locator('.book-rows .book-line')
    .evaluateAll(
      (lines, words) => lines.filter((line) => !words.every((w) => line.textContent?.toLowerCase().includes(w))).length,
      SOUGHT.split(' '),
    );
  if (strays > 0) throw new Error(`${strays} lines were shown without "${SOUGHT}"`);
  await field.fill('');
  return { ...spread(letters), found: many };
}
