/** Work in pieces: after each it gives the share of the whole that is done, from 0 to 1 and never less than before; the result at the end. */
export type Pieces<T> = Generator<number, T, void>;

/** All of it at once. */
export function atOnce<T>(work: Pieces<T>): T {
  for (;;) {
    const step = work.next();
    if (step.done) return step.value;
  }
}

/** One after the other, each a piece of its own. */
export function* eachOf<T, U>(all: readonly T[], make: (one: T, index: number) => U): Pieces<U[]> {
  const made: U[] = [];
  for (const [index, one] of all.entries()) {
    made.push(make(one, index));
    yield (index + 1) / all.length;
  }
  return made;
}
