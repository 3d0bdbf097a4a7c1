import { type Millimetres, millimetres } from '../fastening/quantity';
import { type Face, FLATNESS_LINES, type FlatnessLimit, flatnessVerdict } from '../measuring/flatness';
import { marginBelow } from '../measuring/margin';
import { removalVerdict } from '../measuring/metal-removed';
import { reply, text } from '../phrasing/reply';
import type { ReadingsRule, RuleName } from './rule';
import { baseValue, lengthIn, verdictOf, workedBy } from './worked';

/** Six readings of a face in the order of FLATNESS_LINES: long edges, ends, diagonals. */
export function flatnessSum(rule: RuleName, along: FlatnessLimit, across: FlatnessLimit, face: Face): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['length'], count: FLATNESS_LINES.length },
    workOut: (here) => {
      const gaps = FLATNESS_LINES.flatMap((line, i) => {
        const reading = here[i];
        return reading ? [[line, baseValue(reading, 'length')] as const] : [];
      });
      const found = flatnessVerdict(new Map(gaps), { name: rule.say, whose: rule.whose, along, across }, face);
      const worst = found.ok ? here[FLATNESS_LINES.indexOf(found.value.worst)] : undefined;
      if (!found.ok || !worst) return [reply('sum-not-possible', {})];
      const { gap, limit, within } = found.value;
      return [
        reply('sum-flatness', {
          name: text(worst.say),
          value: lengthIn(gap, worst.unit),
          limit: lengthIn(limit, worst.unit),
        }),
        verdictOf(rule, within ? [] : [worst.say]),
        workedBy(rule, marginBelow(limit, gap, 'mm').working, worst.unit),
      ];
    },
  };
}

/** Metal gone from the faces that share a budget: the readings here and those of other steps named. */
export function metalSum(rule: RuleName, most: Millimetres, others: readonly string[]): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['length'], count: 'any' },
    steps: others,
    workOut: (here, at) => {
      const all = [...here, ...others.flatMap((step) => at(step))];
      const cuts = all.map((reading) => ({ face: 'all', depth: baseValue(reading, 'length') }));
      const budget = { name: rule.say, whose: rule.whose, most, faces: ['all'] };
      const { removed, left, over } = removalVerdict(cuts, budget);
      const unit = here[0]?.unit ?? 'mm';
      const gone = { removed: lengthIn(removed, unit) };
      return [
        over > 0
          ? reply('sum-metal-over', { ...gone, over: lengthIn(over, unit) })
          : reply('sum-metal', { ...gone, left: lengthIn(left, unit) }),
        workedBy(rule, marginBelow(most, removed, 'mm').working, unit),
      ];
    },
  };
}

/** A limit that is the same along every line needs no face. */
export const NO_FACE: Face = { length: millimetres(0), width: millimetres(0) };
