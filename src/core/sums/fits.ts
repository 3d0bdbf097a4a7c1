import type { Window } from '../fastening/quantity';
import { type GasketGrade, gasketGrade, gradeWorking } from '../measuring/gasket-grade';
import { type ShimRange, shimFor, type ValveGap } from '../measuring/shim';
import { swapShims } from '../measuring/shim-swap';
import { list, type Reply, reply, text } from '../phrasing/reply';
import type { Answer, NamedReading, ReadingsRule, RuleName } from './rule';
import { baseValue, lengthIn, pairsOf, workedBy } from './worked';

/** Two readings of each piston's height give the grade of gasket; the highest average decides. */
export function gradeSum(rule: RuleName, grades: readonly GasketGrade[]): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['length'], count: 'pairs' },
    workOut: (here) => gradeOf(rule, grades, pairsOf(here)),
  };
}

type Pairs = readonly (readonly [NamedReading, NamedReading])[];

function gradeOf(rule: RuleName, grades: readonly GasketGrade[], pairs: Pairs): Answer {
  const pistons = pairs.map(([a, b], cylinder) => ({
    cylinder,
    readings: [baseValue(a, 'length'), baseValue(b, 'length')] as const,
  }));
  const found = gasketGrade(pistons, grades);
  if (!found.ok) return [gradeRefused(found.error)];
  const { grade, decidedBy } = found.value;
  const [a, b] = pairs[decidedBy] ?? [];
  if (!a || !b) return [reply('sum-not-possible', {})];
  return [
    reply('sum-grade', { grade: text(grade.grade), value: lengthIn(grade.thickness, 'mm'), name: text(a.say) }),
    workedBy(rule, gradeWorking(baseValue(a, 'length'), baseValue(b, 'length')), a.unit),
  ];
}

function gradeRefused(error: Extract<ReturnType<typeof gasketGrade>, { readonly ok: false }>['error']): Reply {
  switch (error.code) {
    case 'no-readings':
      return reply('sum-not-possible', {});
    case 'on-a-border':
      return reply('sum-grade-border', {
        value: lengthIn(error.height, 'mm'),
        names: list(error.could.map(({ grade }) => grade)),
      });
    case 'outside-grades':
      return reply('sum-grade-none', { value: lengthIn(error.height, 'mm') });
  }
}

/** The shim in each valve, then its gap: the size to fit, out of those that came out where one will do. */
export function shimSum(
  rule: RuleName,
  wanted: ValveGap['wanted'],
  range: ShimRange,
  window: Window | null,
): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['length'], count: 'pairs' },
    workOut: (here) => {
      const pairs = pairsOf(here);
      const valves = pairs.map(([shim, gap]) => ({
        shim: baseValue(shim, 'length'),
        gap: baseValue(gap, 'length'),
        wanted,
      }));
      const swaps =
        window && valves.length > 1
          ? swapShims(
              valves,
              valves.map(({ shim }) => shim),
              window,
            )
          : [];
      return valves.flatMap((valve, i): Answer => {
        const name = text(pairs[i]?.[1].say ?? '');
        const found = shimFor(valve, range, window ?? undefined);
        if (!found.ok) return [reply('sum-shim-none', { name })];
        const from = swaps[i] === undefined || swaps[i] === i ? undefined : pairs[swaps[i]];
        const { shim, gap, working } = found.value;
        return [
          reply('sum-shim', { name, value: lengthIn(shim, 'mm'), gap: lengthIn(gap, 'mm') }),
          ...(from ? [reply('sum-shim-from', { name: text(from[0].say) })] : []),
          workedBy(rule, working),
        ];
      });
    },
  };
}
