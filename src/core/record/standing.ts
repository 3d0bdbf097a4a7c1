import { type Entry, isTalk } from '../job/entry';

/** What stands in the log: talk is left out, and so is whatever was taken back. In the order of the log. */
export function standing(entries: readonly Entry[]): readonly Entry[] {
  const undone = new Set(entries.flatMap((e) => (e.kind === 'undone' ? [e.target] : [])));
  return entries.filter((e) => !isTalk(e) && !undone.has(e.seq));
}

/** How an entry came about: the command heard last before it. */
export type Means = 'voice' | 'touch' | 'typed';

/** For every entry the means of the last command before it; nothing before the first command. */
export function meansOf(entries: readonly Entry[]): ReadonlyMap<number, Means> {
  const means = new Map<number, Means>();
  let last: Means | null = null;
  for (const entry of entries) {
    if (entry.kind === 'heard') last = entry.by;
    else if (last !== null) means.set(entry.seq, last);
  }
  return means;
}
