import { type NotPositive, notPositive } from '../fastening/positive';
import { type Millimetres, millimetres, type Window } from '../fastening/quantity';
import { sideOf, steady } from '../fastening/steady';
import type { Working } from '../fastening/working';
import { fail, ok, type Result } from '../result';

/** One valve as measured cold: the shim in it, the gap found and the gap wanted, all in mm. */
export type ValveGap = {
  readonly shim: Millimetres;
  readonly gap: Millimetres;
  readonly wanted: Millimetres;
};

/** The shims there are: every `step` from `least` to `most`, in mm. */
export type ShimRange = { readonly least: Millimetres; readonly most: Millimetres; readonly step: Millimetres };

export type ShimChoice = {
  /** What the sum gives, before choosing among the sizes there are. */
  readonly ideal: Millimetres;
  readonly shim: Millimetres;
  /** The gap this shim leaves. */
  readonly gap: Millimetres;
  readonly working: Working;
};

export type ShimError =
  | NotPositive
  | { readonly code: 'negative-gap'; readonly given: number }
  | { readonly code: 'no-such-shim'; readonly ideal: Millimetres; readonly range: ShimRange }
  /** The nearest size leaves a gap outside the window. */
  | { readonly code: 'gap-outside-window'; readonly choice: ShimChoice; readonly window: Window };

/**
 * The shim that brings a valve's gap nearest to the one wanted: new = old + measured - wanted, then the nearest size.
 * In mm; `window` is what the document allows the gap to be. A gap of zero can be measured and is allowed.
 * Errors: `not-positive`, `negative-gap`, `no-such-shim`, `gap-outside-window`. Source: common practice.
 */
export function shimFor(valve: ValveGap, range: ShimRange, window?: Window): Result<ShimChoice, ShimError> {
  const bad = notPositive({ shim: valve.shim, wanted: valve.wanted, step: range.step });
  if (bad) return fail(bad);
  if (!(valve.gap >= 0)) return fail({ code: 'negative-gap', given: valve.gap });
  const ideal = steady(millimetres(valve.shim + valve.gap - valve.wanted));
  const shim = steady(millimetres(range.least + Math.round((ideal - range.least) / range.step) * range.step));
  if (!(shim >= range.least && shim <= range.most)) return fail({ code: 'no-such-shim', ideal, range });
  const choice = { ideal, shim, gap: gapWith(valve, shim), working: workingOf(valve, ideal) };
  if (window && sideOf(choice.gap, window) !== 'within') return fail({ code: 'gap-outside-window', choice, window });
  return ok(choice);
}

const workingOf = (valve: ValveGap, ideal: Millimetres): Working => ({
  formula: 'shim',
  inputs: [
    { name: 'old', value: valve.shim, unit: 'mm' },
    { name: 'measured', value: valve.gap, unit: 'mm' },
    { name: 'wanted', value: valve.wanted, unit: 'mm' },
  ],
  result: { name: 'new', value: ideal, unit: 'mm' },
});

/** The gap of a valve, in mm, with another shim in it. */
export const gapWith = (valve: ValveGap, shim: Millimetres): Millimetres =>
  steady(millimetres(valve.gap + valve.shim - shim));
