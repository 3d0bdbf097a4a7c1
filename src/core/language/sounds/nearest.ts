import type { PhoneDistance } from './phone-distance';
import type { Sound, SoundGraph } from './sound-graph';

/** The two sentences of two sound graphs that sound most alike, and how unlike they are. */
export type Nearest = { readonly distance: number; readonly a: string; readonly b: string };

/**
 * The least weighted edit distance between any sentence of one graph and any of another, up to `bound`; undefined
 * where all are farther apart. One unit is a phone with nothing in common. Best first search over pairs of states,
 * so graphs that begin unlike cost next to nothing.
 */
export function nearest(a: SoundGraph, b: SoundGraph, bound: number, phones: PhoneDistance): Nearest | undefined {
  const best = new Map<number, number>();
  const open = new Costs();
  open.add(0, { a: 0, b: 0, before: undefined, wordA: '', wordB: '' });
  for (let next = open.least(); next; next = open.least()) {
    const [cost, at] = next;
    if (a.ends.has(at.a) && b.ends.has(at.b)) return { distance: cost, ...sentences(at) };
    const key = at.a * b.steps.length + at.b;
    if ((best.get(key) ?? Number.POSITIVE_INFINITY) <= cost) continue;
    best.set(key, cost);
    const reach = (more: number, to: Omit<Pair, 'before'>): void => {
      if (cost + more <= bound) open.add(cost + more, { ...to, before: at });
    };
    const [stepsA = [], stepsB = []] = [a.steps[at.a], b.steps[at.b]];
    for (const step of stepsA) reach(gap(step.sound, phones), { a: step.to, b: at.b, wordA: step.word, wordB: '' });
    for (const step of stepsB) reach(gap(step.sound, phones), { a: at.a, b: step.to, wordA: '', wordB: step.word });
    for (const one of stepsA)
      for (const other of stepsB)
        reach(apart(one.sound, other.sound, phones), { a: one.to, b: other.to, wordA: one.word, wordB: other.word });
  }
  return undefined;
}

type Pair = {
  readonly a: number;
  readonly b: number;
  readonly wordA: string;
  readonly wordB: string;
  readonly before: Pair | undefined;
};

/** A slot left out is two or three weak phones left out: "two", "eight". */
const SLOT_GAP = 1.2;

const gap = (sound: Sound, phones: PhoneDistance): number =>
  sound.kind === 'slot' ? SLOT_GAP : phones.gap(sound.phone);

function apart(a: Sound, b: Sound, phones: PhoneDistance): number {
  if (a.kind === 'phone' && b.kind === 'phone') return phones.between(a.phone, b.phone);
  return a.kind === 'slot' && b.kind === 'slot' && a.name === b.name ? 0 : Number.POSITIVE_INFINITY;
}

function sentences(last: Pair): { readonly a: string; readonly b: string } {
  const a: string[] = [];
  const b: string[] = [];
  for (let at: Pair | undefined = last; at; at = at.before) {
    if (at.wordA !== '') a.unshift(at.wordA);
    if (at.wordB !== '') b.unshift(at.wordB);
  }
  return { a: a.join(' '), b: b.join(' ') };
}

/** A queue that gives the cheapest first: costs in twentieths, rounded down, a list for each. */
class Costs {
  private readonly lists: [number, Pair][][] = [];
  private at = 0;

  add(cost: number, pair: Pair): void {
    const index = Math.floor(cost * 20);
    const list = this.lists[index] ?? [];
    list.push([cost, pair]);
    this.lists[index] = list;
  }

  least(): readonly [number, Pair] | undefined {
    while (this.at < this.lists.length) {
      const found = this.lists[this.at]?.pop();
      if (found) return found;
      this.at += 1;
    }
    return undefined;
  }
}
