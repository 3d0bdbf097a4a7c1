import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { findings } from './axe';
import type { Bay } from './bay';
import { chromiumPath, ONCE_MORE } from './chromium';
import { visits } from './visits';

describe.skipIf(!chromiumPath)('screens and jobs by voice alone', ONCE_MORE, () => {
  const visit = visits();
  let page: Page;
  let bay: Bay;

  beforeEach(async () => {
    ({ page, bay } = visit());
    await bay.open(visit().site.address);
    await bay.talkFast();
  });

  const line = () => page.locator('.ear-line-heard');

  async function speak(words: string): Promise<void> {
    await bay.listens();
    await bay.utter(words);
  }

  /** Says something and waits until this is read in the line under the screen, and until it listens again. */
  async function say(words: string, answer: string | RegExp): Promise<void> {
    await speak(words);
    await line().getByText(answer).waitFor({ timeout: 30_000 });
    await bay.armed();
  }

  /** The same where a job is open then: its Bench is the answer. */
  async function agree(): Promise<void> {
    await speak('agreed and confirmed');
    await page.waitForSelector('.bench', { timeout: 30_000 });
    await bay.armed();
  }

  const boxes = () =>
    page.evaluate(() =>
      ['.nav', '.app-screen', '.app-ear'].map((it) =>
        JSON.stringify(document.querySelector(it)?.getBoundingClientRect()),
      ),
    );

  test('a job is begun by its number, worked, left for the record and come back to, and carried on after a reload', async () => {
    const standing = await boxes();
    const radio = await bay.armed();
    await bay.utter('and in other news the weather stays wet until the weekend');
    await page.waitForTimeout(2500);
    expect(await bay.armed()).toBe(radio);
    expect(await page.locator('.nav-place[aria-current]').textContent()).toBe('Jobs');

    await say('begin procedure two', /Begin Practice plate.*\?/);
    await say('forget about it', 'Forgotten. Nothing changed.');
    expect(await page.getByText('No job has been begun on this machine.').count()).toBe(1);
    // What was agreed to later is agreed to nothing.
    await say('show me the procedures', 'The procedures.');
    expect(await page.locator('.row-title', { hasText: 'Practice plate' }).textContent()).toMatch(/^2 /);
    expect(await boxes()).toEqual(standing);
    expect(await findings(page)).toEqual([]);

    await say('begin procedure two', /Begin Practice plate.*\?/);
    await agree();
    expect((await bay.log())[0]?.kind).toBe('job-started');
    const first = await bay.place();
    await bay.say('this step is done');
    const second = await bay.place();
    expect(second).not.toBe(first);

    const before = (await bay.log()).length;
    await speak('show me the record');
    await page.waitForSelector('.record');
    await say('which words now', /You can say/);
    expect(await page.locator('.ear-line-place').textContent()).toMatch(/^Step \d of \d/);
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.app-ear').isVisible()).toBe(false);
    await page.emulateMedia({ media: 'screen' });
    await speak('show me the bench');
    await page.waitForSelector('.bench');
    await bay.armed();
    const told = (await bay.log()).slice(before);
    expect(told.every(({ kind }) => kind === 'heard' || kind === 'said' || kind === 'rejected')).toBe(true);
    expect(await bay.place()).toBe(second);

    await page.reload();
    await page.click('.start-tap');
    await say('carry on with the job', /Go on with Practice plate.*\?/);
    await agree();
    expect(await bay.place()).toBe(second);
  }, 300_000);

  test('a procedure is rehearsed, and a job handed over to a file', async () => {
    await bay.go('Procedures');
    await page.getByRole('button', { name: 'Read: Practice plate' }).click();
    await page.getByRole('button', { name: 'Rehearse' }).click();
    await page.waitForSelector('.bench');
    const first = await bay.place();
    await bay.say('this step is done');
    expect(await bay.place()).not.toBe(first);
    await bay.go('Jobs');
    await page.getByText('No job has been begun').waitFor();

    await bay.begin('Practice plate');
    await bay.say('hand the job over');
    const [download] = await Promise.all([page.waitForEvent('download'), speak('agreed and confirmed')]);
    const file: { readonly entries: readonly string[] } = JSON.parse(readFileSync(await download.path(), 'utf8'));
    expect(file.entries.map((text): string => JSON.parse(text).kind)).toContain('handed-over');
  }, 120_000);
});
