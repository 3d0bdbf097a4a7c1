import { type Millimetres, millimetres, type Window } from './quantity';
import { sideOf, steady } from './steady';
import type { Working } from './working';

/** What a document says to do with a fastener whose stretch is off. `hold` is for a document that says nothing. */
export type StretchAction = 'replace' | 'slacken-and-retighten' | 'tighten-further' | 'hold';

/** A stretch window and its two remedies: they differ between makers, so they come from the document. Bounds in mm. */
export type StretchRule = {
  readonly name: string;
  readonly source: string;
  readonly window: Window;
  readonly ifUnder: StretchAction;
  readonly ifOver: StretchAction;
};

export type StretchVerdict = {
  readonly stretch: Millimetres;
  readonly verdict: 'under' | 'within' | 'over';
  /** What the rule says to do; null when the stretch is within. */
  readonly action: StretchAction | null;
  readonly rule: StretchRule;
  readonly working: Working;
};

/** Stretch is the length tight less the length slack, both in mm, measured on the same fastener. Both bounds are within. */
export function stretchVerdict(zero: Millimetres, tight: Millimetres, rule: StretchRule): StretchVerdict {
  const stretch = steady(millimetres(tight - zero));
  const verdict = sideOf(stretch, rule.window);
  return {
    stretch,
    verdict,
    action: verdict === 'within' ? null : verdict === 'under' ? rule.ifUnder : rule.ifOver,
    rule,
    working: {
      formula: 'stretch',
      inputs: [
        { name: 'tight', value: tight, unit: 'mm' },
        { name: 'zero', value: zero, unit: 'mm' },
      ],
      result: { name: 'stretch', value: stretch, unit: 'mm' },
    },
  };
}
