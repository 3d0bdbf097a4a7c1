import type { Millimetres, Window } from '../fastening/quantity';
import { type FastenerEvidence, type ReuseRule, reuseVerdict } from '../fastening/reuse-rule';
import { stretchVerdict } from '../fastening/stretch';
import { turnStretch } from '../fastening/turn-preload';
import type { Working } from '../fastening/working';
import { marginAbove, marginBelow } from '../measuring/margin';
import { quantity, reply, text } from '../phrasing/reply';
import type { NamedReading, ReadingsRule, RuleName } from './rule';
import { baseValue, lengthIn, pairsOf, verdictOf, workedBy } from './worked';

/** Length slack, then length tight, of one bolt after the other; `window` is the stretch allowed, in mm. */
export function stretchSum(rule: RuleName, window: Window, remedy: { under: string; over: string }): ReadingsRule {
  const judge = { name: rule.say, source: rule.whose, window, ifUnder: 'hold', ifOver: 'hold' } as const;
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['length'], count: 'pairs' },
    workOut: (here) =>
      pairsOf(here).flatMap(([slack, tight]) => {
        const found = stretchVerdict(baseValue(slack, 'length'), baseValue(tight, 'length'), judge);
        const { verdict } = found;
        return [
          reply('sum-stretch', { name: text(tight.say), value: lengthIn(found.stretch, tight.unit) }),
          verdictOf(rule, verdict === 'within' ? [] : [tight.say]),
          ...(verdict === 'within' ? [] : [reply('sum-remedy', { text: text(remedy[verdict]) })]),
          workedBy(rule, found.working, tight.unit),
        ];
      }),
  };
}

/** Which used bolts may go back in: by length, by the torque the last turn took, or by two diameters each. */
export function reuseSum(rule: RuleName, judge: Exclude<ReuseRule, { kind: 'never' | 'straightedge' }>): ReadingsRule {
  const isPairs = judge.kind === 'thread-difference';
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: [judge.kind === 'final-torque' ? 'torque' : 'length'], count: isPairs ? 'pairs' : 'any' },
    workOut: (here) => {
      const each = isPairs ? pairsOf(here) : here.map((one) => [one, one] as const);
      const judged = each.map((pair) => ({ pair, margin: marginOf(judge, pair) }));
      const [first, ...rest] = judged;
      if (!first) return [reply('sum-not-possible', {})];
      const nearest = rest.reduce((a, b) => (b.margin.left < a.margin.left ? b : a), first);
      const bad = judged.filter(({ pair }) => reuseVerdict(judge, evidenceOf(judge, pair)).kind === 'replace');
      return [
        verdictOf(
          rule,
          bad.map(({ pair }) => pair[0].say),
        ),
        ...(bad.length > 0 ? [reply('sum-replace', {})] : []),
        workedBy(rule, nearest.margin.working, nearest.pair[0].unit),
      ];
    },
  };
}

type Judge = Parameters<typeof reuseSum>[1];
type Pair = readonly [NamedReading, NamedReading];

function evidenceOf(judge: Judge, [a, b]: Pair): FastenerEvidence {
  switch (judge.kind) {
    case 'length':
      return { length: baseValue(a, 'length') };
    case 'thread-difference':
      return { threadDiameters: [baseValue(a, 'length'), baseValue(b, 'length')] };
    case 'final-torque':
      return { finalTorque: baseValue(a, 'torque') };
  }
}

function marginOf(judge: Judge, [a, b]: Pair): { readonly left: number; readonly working: Working } {
  if (judge.kind === 'final-torque') {
    const { over, working } = marginAbove(judge.over, baseValue(a, 'torque'), 'N·m');
    return { left: over, working };
  }
  const found = baseValue(a, 'length');
  const other = judge.kind === 'length' ? 0 : baseValue(b, 'length');
  return marginBelow(judge.most, Math.abs(found - other), 'mm');
}

/**
 * How much longer a bolt is for an angle, in the elastic range. `pitch` in mm; `jointToBolt`, above 0, is the stiffness of
 * what is clamped over that of the bolt. Formula and source: `turnStretch`.
 */
export function turnSum(rule: RuleName, pitch: Millimetres, jointToBolt: number): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['angle'], count: 'any' },
    workOut: (here) =>
      here.flatMap((reading) => {
        const found = turnStretch(pitch, baseValue(reading, 'angle'), jointToBolt);
        if (!found.ok) return [reply('sum-not-possible', {})];
        return [
          reply('sum-turn', { degrees: quantity(reading), value: lengthIn(found.value.stretch, 'mm') }),
          workedBy(rule, found.value.working, reading.unit),
        ];
      }),
  };
}
