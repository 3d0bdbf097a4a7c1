import type { BrowserContext, Page } from 'playwright-core';
import { percentile } from '../latency/edges';

type Timed = { readonly startTime: number; readonly duration: number };

/** What the watch in the page gives; all times in milliseconds. */
type Watch = {
  readonly events: readonly (Timed & { readonly name: string })[];
  readonly longTasks: readonly Timed[];
  readonly fromTap: (selector: string) => Promise<number>;
  readonly scrollThrough: () => Promise<{
    readonly apart: readonly number[];
    /** Frames in which no row was in sight. */
    readonly blank: number;
    readonly last: string;
  }>;
  readonly jumpToPhase: () => Promise<{ readonly ms: number | null; readonly words: string }>;
};
export type Watched = { readonly screensWatch: Watch };

/** What the browser does not report was over within this; its own steps are of 8 ms. */
const LEAST_MS = 16;
/** Reports of events come after the frame that they are about. */
const REPORTED_MS = 250;

export async function addWatch(context: BrowserContext): Promise<void> {
  await context.addInitScript({ path: new URL('./page/watch.js', import.meta.url).pathname });
}

/** From the tap to the paint of what `selector` finds. */
export async function fromTap(page: Page, selector: string, tap: () => Promise<void>): Promise<number> {
  const shown = page.evaluate((s) => (window as unknown as Watched).screensWatch.fromTap(s), selector);
  await tap();
  return shown;
}

/** `worst` names the event that took longest, or nothing where all were quick. */
export type Act = { readonly worstMs: number; readonly worst: string; readonly longTasks: readonly number[] };

/** Does something and gives the longest the browser took from one of its events to the next paint. */
export async function during(page: Page, act: () => Promise<void>): Promise<Act> {
  const from = await page.evaluate(() => performance.now());
  await act();
  await page.waitForTimeout(REPORTED_MS);
  const { events, longTasks } = await page.evaluate(() => {
    const { screensWatch } = window as unknown as Watched;
    return { events: screensWatch.events, longTasks: screensWatch.longTasks };
  });
  const isFresh = ({ startTime }: Timed): boolean => startTime >= from;
  const slowest = events.filter(isFresh).toSorted((a, b) => b.duration - a.duration)[0];
  return {
    worstMs: Math.max(LEAST_MS, slowest?.duration ?? 0),
    worst: slowest?.name ?? '',
    longTasks: longTasks.filter(isFresh).map(({ duration }) => duration),
  };
}

/** Rounded to a tenth of a millisecond. */
export const spread = (values: readonly number[]) => ({
  count: values.length,
  median: tenth(percentile(values, 0.5)),
  p95: tenth(percentile(values, 0.95)),
  worst: tenth(Math.max(...values)),
});

export const tenth = (ms: number): number => Math.round(ms * 10) / 10;
