/** The 95 % interval of a share, in per cent (Wilson's score interval, J. Am. Stat. Assoc. 22, 1927). */
export function wilson(hits: number, trials: number): readonly [number, number] {
  if (trials === 0) return [0, 100];
  const z = 1.959964;
  const share = hits / trials;
  const scale = 1 + z ** 2 / trials;
  const centre = (share + z ** 2 / (2 * trials)) / scale;
  const half = (z / scale) * Math.sqrt((share * (1 - share)) / trials + z ** 2 / (4 * trials ** 2));
  return [100 * Math.max(0, centre - half), 100 * Math.min(1, centre + half)];
}
