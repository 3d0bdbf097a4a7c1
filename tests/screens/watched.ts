import type { BrowserContext, Page } from 'playwright-core';
import { percentile } from '../latency/edges';

type Timed = { readonly startTime: number; readonly duration: number };
/** From an event to the moment after the frame in which it was answered was handed on to be painted. */
type Event = Timed & { readonly name: 'pointerdown' | 'click' | 'keydown' };

/** What the watch in the page gives; all times in milliseconds of the page's clock. */
type Watch = {
  readonly events: readonly Event[];
  readonly longTasks: readonly Timed[];
  readonly ear: EarWork & { readonly share: (from: number, to: number) => number };
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

/** What the recogniser's worker was busy with. */
export type EarWork = {
  /** For each block of sound, while it was worked on. */
  readonly work: readonly { readonly from: number; readonly to: number }[];
  readonly utterances: readonly { readonly endedAt: number }[];
};

/** The frame of the last event is over by then. */
const PAINTED_MS = 250;

export const watchScript = (name: string): string => new URL(`./page/${name}`, import.meta.url).pathname;

export async function addWatch(context: BrowserContext): Promise<void> {
  await context.addInitScript({ path: watchScript('watch.js') });
}

/** From the tap to the paint of what `selector` finds. */
export async function fromTap(page: Page, selector: string, tap: () => Promise<void>): Promise<number> {
  const shown = page.evaluate((s) => (window as unknown as Watched).screensWatch.fromTap(s), selector);
  await tap();
  return shown;
}

/** One tap or key, by its event that took longest. */
export type Interaction = { readonly at: number; readonly ms: number; readonly name: string };
export type Act = { readonly interactions: readonly Interaction[]; readonly longTasks: readonly number[] };

/** Does something and gives how long each tap and key of it took to be answered. */
export async function during(page: Page, act: () => Promise<void>): Promise<Act> {
  const from = await page.evaluate(() => performance.now());
  await act();
  await page.waitForTimeout(PAINTED_MS);
  const { events, longTasks } = await page.evaluate(() => {
    const { screensWatch } = window as unknown as Watched;
    return { events: screensWatch.events, longTasks: screensWatch.longTasks };
  });
  const isFresh = ({ startTime }: Timed): boolean => startTime >= from;
  return {
    interactions: interactionsOf(events.filter(isFresh)),
    longTasks: longTasks.filter(isFresh).map(({ duration }) => duration),
  };
}

/** A click belongs to the finger that came down before it. */
function interactionsOf(events: readonly Event[]): readonly Interaction[] {
  const all: Interaction[] = [];
  for (const { name, startTime, duration } of events.toSorted((a, b) => a.startTime - b.startTime)) {
    const down = name === 'click' ? all.pop() : undefined;
    all.push(down && down.ms > duration ? down : { at: down?.at ?? startTime, ms: duration, name });
  }
  return all;
}

/** The slowest of all it took. */
export const worstOf = ({ interactions }: Act): number => Math.max(...interactions.map(({ ms }) => ms));

/** Rounded to a tenth of a millisecond. */
export const spread = (values: readonly number[]) => ({
  count: values.length,
  median: tenth(percentile(values, 0.5)),
  p95: tenth(percentile(values, 0.95)),
  worst: tenth(Math.max(...values)),
});

export const tenth = (ms: number): number => Math.round(ms * 10) / 10;
