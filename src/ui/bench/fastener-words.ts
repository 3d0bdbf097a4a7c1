import type { FastenerMark, PatternDrawing } from '../../core/view/bench-view';
import type { PlainKey } from '../words/words';

/** The marks in the order they matter, each with the word for it. */
export const MARK_WORDS: readonly (readonly [FastenerMark, PlainKey])[] = [
  ['next', 'mark-next'],
  ['unknown', 'mark-unknown'],
  ['held', 'mark-held'],
  ['partial', 'mark-partial'],
  ['open', 'mark-open'],
  ['done', 'mark-done'],
  ['idle', 'mark-idle'],
];

/** The drawing for somebody who cannot see it: which fasteners are in which state, worst news first. */
export function marksInWords(
  drawing: PatternDrawing,
): readonly { readonly word: PlainKey; readonly numbers: readonly number[] }[] {
  return MARK_WORDS.map(([mark, word]) => ({
    word,
    numbers: drawing.fasteners
      .filter((f) => f.mark === mark)
      .map((f) => f.number)
      .sort((a, b) => a - b),
  })).filter((group) => group.numbers.length > 0);
}

type Drawn = PatternDrawing['fasteners'][number];

/** Where the work is: where the view says so, else the one that is next. */
export const hereIn = ({ fasteners }: PatternDrawing): Drawn | undefined =>
  fasteners.find((f) => f.here) ?? fasteners.find((f) => f.mark === 'next');

/** The fastener to do after this one in the pass. */
export function afterHere(drawing: PatternDrawing): Drawn | undefined {
  const turn = hereIn(drawing)?.turn ?? Number.POSITIVE_INFINITY;
  return drawing.fasteners
    .filter((f) => f.turn !== null && f.turn > turn && f.mark === 'open')
    .sort((a, b) => (a.turn ?? 0) - (b.turn ?? 0))[0];
}
