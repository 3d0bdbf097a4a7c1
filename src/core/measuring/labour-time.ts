/** A stretch of time in milliseconds on one clock. */
export type Stretch = { readonly from: number; readonly to: number };

/**
 * Time worked, in ms: the stretches of work less every pause in them. Pauses may overlap one another and the ends of
 * work; no moment is counted or taken off twice. A stretch that ends before it starts counts as nothing.
 */
export function netTime(work: readonly Stretch[], pauses: readonly Stretch[]): number {
  const rest = merged(pauses);
  return merged(work).reduce((sum, one) => sum + length(one) - rest.reduce((off, p) => off + overlap(one, p), 0), 0);
}

const length = (one: Stretch): number => one.to - one.from;

const overlap = (a: Stretch, b: Stretch): number => Math.max(0, Math.min(a.to, b.to) - Math.max(a.from, b.from));

/** The same moments as stretches that do not touch one another, in order. */
function merged(stretches: readonly Stretch[]): readonly Stretch[] {
  const out: Stretch[] = [];
  for (const one of stretches.filter((s) => s.to > s.from).toSorted((a, b) => a.from - b.from)) {
    const last = out.at(-1);
    if (last && one.from <= last.to) out[out.length - 1] = { from: last.from, to: Math.max(last.to, one.to) };
    else out.push(one);
  }
  return out;
}
