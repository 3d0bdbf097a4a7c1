/** A figure that must be above zero and is not; `name` is the letter it has in its formula. */
export type NotPositive = { readonly code: 'not-positive'; readonly name: string; readonly given: number };

/** The first of the named figures that is zero, negative, infinite or not a number; undefined when all are sound. */
export function notPositive(figures: Readonly<Record<string, number>>): NotPositive | undefined {
  const bad = Object.entries(figures).find(([, given]) => !(given > 0 && Number.isFinite(given)));
  return bad && { code: 'not-positive', name: bad[0], given: bad[1] };
}
