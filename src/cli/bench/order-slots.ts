import type { Recording } from './corpus';

/** Words of an order that fill no slot. */
const CARRIERS = new Set("brew can i get have want me give i'd like make may a an with and".split(' '));

/** The slot values in the words of an order, as sorted "slot=value" lines; a word that fits nothing stands as itself. */
export function orderSlots(words: string, values: ReadonlyMap<string, string>): readonly string[] {
  const longestFirst = [...values.keys()].sort((a, b) => b.length - a.length);
  const found: string[] = [];
  let rest = ` ${words} `;
  for (const value of longestFirst) {
    while (rest.includes(` ${value} `)) {
      found.push(`${values.get(value)}=${value}`);
      rest = rest.replace(` ${value} `, ' | ');
    }
  }
  const strange = rest.split(/[ |]+/).filter((word) => word !== '' && !CARRIERS.has(word));
  return [...found, ...strange].sort();
}

/** Every value that some order has, with its slot. */
export function slotValuesOf(orders: readonly Recording[]): ReadonlyMap<string, string> {
  return new Map(
    orders.flatMap(({ slots = {} }) => Object.entries(slots).map(([slot, value]) => [value, slot] as const)),
  );
}
