import type { Page } from 'playwright-core';
import type { Entry } from '../../src/core/job/entry';
import { fold } from '../../src/core/job/evolve';
import type { Plan } from '../../src/core/job/plan';
import type { Bay } from './bay';
import { nextWords } from './next-words';

/** Puts words in the typed field and sends them. Does not wait for the answer. */
export async function send(page: Page, words: string): Promise<void> {
  await page.fill('.talk-field', words);
  await page.press('.talk-field', 'Enter');
}

/** Sends words and waits for the first answer. Returns the entries that came of it. */
export async function typed(bay: Bay, words: string): Promise<readonly Entry[]> {
  const before = (await bay.log()).length;
  await send(bay.page, words);
  await bay.page.waitForFunction(
    (n) => {
      const log = (document.getElementById('app') as unknown as { entries: readonly Entry[] }).entries;
      const heard = log.findIndex((e, i) => i >= n && (e.kind === 'heard' || e.kind === 'rejected'));
      return heard >= 0 && log.slice(heard).some((e) => e.kind === 'said');
    },
    before,
    { timeout: 30_000 },
  );
  return (await bay.log()).slice(before);
}

/** Says the next right thing, whatever the document asks for here. */
export async function typedNext(bay: Bay, plan: Plan): Promise<readonly Entry[]> {
  return typed(bay, nextWords(fold(plan, await bay.log())) ?? 'where am i');
}

/** Does the next right things until the job is at this node, or at most so many of them. Returns how many were done. */
export async function workOn(bay: Bay, plan: Plan, node: string, most = 60): Promise<number> {
  for (let n = 0; n < most; n++) {
    if ((await bay.place()) === node) return n;
    const words = nextWords(fold(plan, await bay.log()));
    if (words === null) return n;
    await typed(bay, words);
  }
  return most;
}

/** Goes back to a job of an earlier run of the browser. */
export async function carryOn(bay: Bay): Promise<void> {
  await bay.page
    .getByRole('button', { name: /^Carry on/ })
    .first()
    .click();
  await bay.page.waitForSelector('.bench');
}
