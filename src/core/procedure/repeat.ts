import type { Repeat } from './document/words';
import type { Path, Report } from './issue';

/** The words that one turn of a `for:` puts in the place of `{side}` and its like. */
export type Turn = ReadonlyMap<string, string>;

/** An entry after `for:` has been worked out, with the place it was written at. */
export type Placed<T> = { readonly at: Path; readonly value: T };

/** How often a `for:` writes its entry. Cheap, so that a file that would fill the memory is refused before it does. */
export function turnCount(repeat: Repeat | undefined): number {
  const lists = repeat === undefined ? [] : Array.isArray(repeat) ? [repeat] : Object.values(repeat);
  return lists.length === 0 ? 1 : Math.max(...lists.map((words) => words.length));
}

/** More entries under one heading than any job has things. */
const MOST_ENTRIES = 500;

const ONCE: readonly Turn[] = [new Map()];
const PLACEHOLDER = /\{([a-z]+)\}/g;

/** The turns of a `for:` inside those of the block around it. */
export function turns(repeat: Repeat | undefined, outer: Turn, at: Path, report: Report): readonly Turn[] {
  if (repeat === undefined) return outer.size === 0 ? ONCE : [outer];
  const lists = Object.entries(Array.isArray(repeat) ? { side: repeat } : repeat);
  const [first, ...others] = lists;
  if (first === undefined || others.some(([, words]) => words.length !== first[1].length)) {
    const given = lists.map(([name, words]) => `${name}: ${words.length}`).join(', ');
    report.error('unequal-lists', at, given, {});
    return [];
  }
  return first[1].map(
    (_word, index) => new Map([...outer, ...lists.map(([name, words]) => [name, words[index] ?? ''] as const)]),
  );
}

/** Puts a turn's words into every text of an entry; the shape stays as it was, so the result has the same type. */
export function fill<T>(value: T, turn: Turn): T {
  // Only text inside is replaced by other text, which no type here tells apart.
  return fillAny(value, turn) as T;
}

function fillAny(value: unknown, turn: Turn): unknown {
  if (typeof value === 'string') return value.replace(PLACEHOLDER, (whole, name: string) => turn.get(name) ?? whole);
  if (Array.isArray(value)) return value.map((item) => fillAny(item, turn));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, fillAny(item, turn)]));
  return value;
}

/** Reports placeholders that no `for:` filled. */
export function reportUnfilled(value: unknown, at: Path, report: Report): void {
  if (typeof value === 'string') {
    const left = value.match(PLACEHOLDER)?.[0];
    if (left !== undefined) report.error('unknown-placeholder', at, left, { placeholder: left });
  } else if (Array.isArray(value)) {
    for (const [index, item] of value.entries()) reportUnfilled(item, [...at, index], report);
  } else if (typeof value === 'object' && value !== null) {
    for (const [key, item] of Object.entries(value)) {
      // Only the ids of whole entries are filled; the ids of answers, readings and records inside them are not.
      reportUnfilled(key, [...at, key], report);
      reportUnfilled(item, [...at, key], report);
    }
  }
}

type Repeated = { readonly for?: Repeat | undefined };

/** Works out the `for:` of a map's entries; ids that come out twice are reported. */
export function expandEntries<T extends Repeated>(
  entries: Readonly<Record<string, T>> | undefined,
  at: Path,
  report: Report,
): ReadonlyMap<string, Placed<T>> {
  const expanded = new Map<string, Placed<T>>();
  const count = Object.values(entries ?? {}).reduce((sum, entry) => sum + turnCount(entry.for), 0);
  if (count > MOST_ENTRIES) {
    report.error('too-many.entries', at, String(count), { most: MOST_ENTRIES });
    return expanded;
  }
  for (const [key, entry] of Object.entries(entries ?? {})) {
    const here = [...at, key];
    for (const turn of turns(entry.for, new Map(), [...here, 'for'], report)) {
      const id = fill(key, turn);
      if (!checkId(id, here, report)) continue;
      if (expanded.has(id)) reportTwice(id, entry.for !== undefined, here, report);
      const value = fill({ ...entry, for: undefined }, turn);
      reportUnfilled(value, here, report);
      expanded.set(id, { at: here, value });
    }
  }
  return expanded;
}

export function reportTwice(id: string, repeated: boolean, at: Path, report: Report): void {
  if (!repeated) report.error('duplicate-id', at, id, { id });
  else report.error('repeat-not-in-id', at, id, { id });
}

/** Ids hold no dots and no names that objects already carry; they key plain objects and state nodes further on. */
export function checkId(id: string, at: Path, report: Report): boolean {
  const usable = /^[a-z][a-z0-9-]{0,63}$/.test(id) && !(id in {}) && id !== 'prototype';
  if (!usable) report.error('bad-id.entry', at, id, { id });
  return usable;
}
