/** Park and Miller, "Random number generators: good ones are hard to find" (1988): small, seeded, enough here. */
export function chance(seed: number): {
  readonly below: (n: number) => number;
  readonly of: <T>(all: readonly T[]) => T;
} {
  let state = (seed % 2_147_483_646) + 1;
  const below = (n: number): number => {
    state = (state * 48_271) % 2_147_483_647;
    return state % n;
  };
  const of = <T>(all: readonly T[]): T => {
    const one = all[below(all.length)];
    if (one === undefined) throw new Error('nothing to choose from');
    return one;
  };
  return { below, of };
}
