import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { decodeWav } from '../../src/voice/flite/wav';
import type { Bay } from './bay';
import { chromiumPath, ONCE_MORE } from './chromium';
import { visits } from './visits';

/** The clips of all jobs as this browser's disk has them. */
const onDisk = (page: Page): Promise<readonly string[]> =>
  page.evaluate(async () => {
    const settled = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((resolve, reject) => {
        request.onsuccess = () => resolve(request.result);
        request.onerror = () => reject(request.error);
      });
    const database = await settled(indexedDB.open('wrenchside'));
    const keys = await settled(database.transaction('blobs').objectStore('blobs').getAllKeys());
    database.close();
    return (keys as [string, string][]).map(([, id]) => id);
  });

describe.skipIf(!chromiumPath)('clips of what was heard', ONCE_MORE, () => {
  const visit = visits();
  let page: Page;
  let bay: Bay;

  beforeEach(async () => {
    ({ page, bay } = visit());
    await page.addInitScript(() => {
      // What is played is fetched by its address; the address is all a test needs.
      const play = HTMLMediaElement.prototype.play;
      HTMLMediaElement.prototype.play = function () {
        (window as unknown as { played: Promise<number[]> }).played = fetch(this.src)
          .then((answer) => answer.arrayBuffer())
          .then((bytes) => [...new Uint8Array(bytes)]);
        return play.call(this);
      };
    });
    await bay.open(visit().site.address);
  });

  const button = (label: string | RegExp) => page.getByRole('button', { name: label, exact: true });
  const asked = () => page.locator('.book-heard', { hasText: "what's next" });
  const keepClips = (label: 'No' | 'Yes, with the job') =>
    page.getByRole('group', { name: 'Keep clips of what was heard' }).getByLabel(label).check();

  async function heard(): Promise<void> {
    const questions = async (): Promise<number> =>
      (await bay.log()).filter((e) => e.kind === 'heard' && e.by === 'voice' && e.command === 'tell-next').length;
    const before = await questions();
    await bay.say("what's next");
    expect(await questions()).toBe(before + 1);
  }

  async function deleted(): Promise<void> {
    await expect.poll(() => onDisk(page)).toEqual([]);
  }

  test('are kept only when asked for, played in the record, there after a reload, in no file, and gone with the job or with everything', async () => {
    // Off until it is chosen: one question before, one after.
    await bay.begin('Practice plate');
    await heard();
    expect(await onDisk(page)).toEqual([]);
    await bay.go('Setup');
    await keepClips('Yes, with the job');
    await bay.go('Bench');
    await heard();
    await expect.poll(() => onDisk(page)).toHaveLength(1);

    await bay.go('Record');
    await asked().nth(1).waitFor();
    // The first question was asked while nothing was kept.
    expect(await asked().nth(0).getByRole('button').count()).toBe(0);
    await asked().nth(1).getByRole('button', { name: 'Play' }).click();
    await page.waitForFunction(() => 'played' in window);
    const bytes = await page.evaluate(() => (window as unknown as { played: Promise<number[]> }).played);
    const sound = decodeWav(Uint8Array.from(bytes));
    if (!sound.ok) throw new Error(sound.error.code);
    expect(sound.value.rateHz).toBe(16_000);
    const seconds = sound.value.samples.length / 16_000;
    expect(seconds).toBeGreaterThan(0.5);
    expect(seconds).toBeLessThan(4);
    expect(sound.value.samples.reduce((most, x) => Math.max(most, Math.abs(x)), 0)).toBeGreaterThan(0.05);
    await asked().nth(1).getByRole('button', { name: 'Play' }).waitFor();

    await page.reload();
    await page.click('.start-tap');
    await bay.go('Jobs');
    await button(/^Record: /).click();
    await asked().nth(1).getByRole('button', { name: 'Play' }).waitFor();
    expect(await asked().nth(0).getByRole('button').count()).toBe(0);

    const [download] = await Promise.all([page.waitForEvent('download'), button('Whole log (JSON)').click()]);
    const file = JSON.parse(readFileSync(await download.path(), 'utf8')) as { readonly blobs: readonly unknown[] };
    expect(file.blobs).toEqual([]);

    await bay.go('Jobs');
    await button(/^Delete: /).click();
    await button('Delete for good').click();
    await deleted();

    // What was chosen holds for the next job, until everything is deleted.
    await bay.begin('Practice plate');
    await heard();
    await expect.poll(() => onDisk(page)).toHaveLength(1);
    await bay.go('Setup');
    await button('Delete everything').click();
    await button('Delete for good').click();
    await deleted();
    await bay.go('Jobs');
    await bay.begin('Practice plate');
    await heard();
    expect(await onDisk(page)).toEqual([]);
  }, 180_000);
});
