import type { Tappable } from '../../../core/view/tappable';

type Part = Tappable['parts'][number];
export type Blank = Exclude<Part, string>;

const blanksOf = (parts: readonly Part[]): readonly Blank[] => parts.filter((part) => typeof part !== 'string');

/** The next place to fill in, after as many as have been; undefined where the sentence is complete. */
export const nextBlank = (parts: readonly Part[], filled: readonly string[]): Blank | undefined =>
  blanksOf(parts)[filled.length];

/** Whether nothing comes after this blank: what is put into it completes the sentence. */
export const isLast = (parts: readonly Part[], filled: readonly string[]): boolean =>
  filled.length + 1 >= blanksOf(parts).length;

/** The sentence with what has been put in so far, in order; `gap` stands where something is missing. */
export function sentence(parts: readonly Part[], filled: readonly string[], gap: string): string {
  const left = [...filled];
  return parts.map((part) => (typeof part === 'string' ? part : (left.shift() ?? gap))).join(' ');
}
