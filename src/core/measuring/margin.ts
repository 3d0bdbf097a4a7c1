import type { UnitName } from '../fastening/quantity';
import { steady } from '../fastening/steady';
import type { Working } from '../fastening/working';

/** How far a figure stays below its limit, both in one unit; below zero where it does not. */
export function marginBelow(
  most: number,
  found: number,
  unit: UnitName,
): { readonly left: number; readonly working: Working } {
  const left = steady(most - found);
  return { left, working: workingOf('margin-below', { name: 'most', value: most, unit }, found, 'left', left) };
}

/** How far a figure stays above its least, both in one unit; below zero where it does not. */
export function marginAbove(
  least: number,
  found: number,
  unit: UnitName,
): { readonly over: number; readonly working: Working } {
  const over = steady(found - least);
  return { over, working: workingOf('margin-above', { name: 'least', value: least, unit }, found, 'over', over) };
}

const workingOf = (
  formula: 'margin-below' | 'margin-above',
  bound: Working['inputs'][number],
  found: number,
  name: string,
  value: number,
): Working => ({
  formula,
  inputs: [bound, { name: 'found', value: found, unit: bound.unit }],
  result: { name, value, unit: bound.unit },
});
