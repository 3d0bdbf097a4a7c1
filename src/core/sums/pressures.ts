import type { Kilopascals, Percent } from '../fastening/quantity';
import { percent } from '../fastening/quantity';
import { type CompressionRule, compressionVerdict } from '../measuring/compression';
import { leakage } from '../measuring/leak-down';
import { marginBelow } from '../measuring/margin';
import { neighboursAmong } from '../measuring/neighbours';
import { list, quantity, type Reply, reply, text } from '../phrasing/reply';
import type { NamedReading, ReadingsRule, RuleName } from './rule';
import { baseValue, figure, verdictOf, workedBy } from './worked';

/** Readings of each bank from one end to the other, by id: neighbours are by place, never by number. */
export type Banks = readonly (readonly string[])[];

/** Compression of all cylinders by one named rule. */
export function compressionSum(rule: RuleName, judge: CompressionRule, banks: Banks): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: ['pressure'], count: 'any' },
    workOut: (here) => {
      const found = compressionVerdict(new Map(here.map((r, i) => [i, baseValue(r, 'pressure')])), judge);
      if (!found.ok) return [reply('sum-not-possible', {})];
      const { low, lowest, share, working } = found.value;
      const least = here[lowest];
      const names = low.flatMap((i) => here[i]?.say ?? []);
      return [
        ...(least
          ? [reply('sum-compression', { name: text(least.say), value: quantity(least), share: figure(share, '%', 0) })]
          : []),
        verdictOf(rule, names),
        ...gasketBetween(
          here,
          low.flatMap((i) => here[i]?.id ?? []),
          banks,
        ),
        workedBy(rule, working, here[0]?.unit),
      ];
    },
  };
}

/**
 * Leak-down by one named rule: percentages as the tester shows them, or the pressure held, where what is fed, in kPa, is
 * known. At `below`, in %, and above it a cylinder leaks too much.
 */
export function leakSum(rule: RuleName, below: Percent, fed: Kilopascals | null, banks: Banks): ReadingsRule {
  return {
    ...rule,
    kind: 'readings',
    needs: { dimensions: [fed === null ? 'ratio' : 'pressure'], count: 'any' },
    workOut: (here) => {
      const leaks = here.map((reading) => ({ reading, ...leakOf(reading, fed, below) }));
      const [first, ...rest] = leaks;
      if (!first || leaks.some(({ leak }) => !(leak >= 0))) return [reply('sum-not-possible', {})];
      const worst = rest.reduce((a, b) => (b.leak > a.leak ? b : a), first);
      const bad = leaks.filter(({ leak }) => leak >= below).map(({ reading }) => reading);
      return [
        reply('sum-leak', { name: text(worst.reading.say), value: figure(worst.leak, '%', 0) }),
        verdictOf(
          rule,
          bad.map(({ say }) => say),
        ),
        ...gasketBetween(
          here,
          bad.map(({ id }) => id),
          banks,
        ),
        reply('sum-air-spins', {}),
        workedBy(rule, worst.working, here[0]?.unit),
      ];
    },
  };
}

function leakOf(reading: NamedReading, fed: Kilopascals | null, below: Percent) {
  if (fed === null) return { leak: percent(reading.value), working: marginBelow(below, reading.value, '%').working };
  const found = leakage(fed, baseValue(reading, 'pressure'));
  return found.ok
    ? found.value
    : { leak: percent(Number.NaN), working: marginBelow(below, reading.value, '%').working };
}

/** Two bad ones side by side point at the gasket between them. */
function gasketBetween(here: readonly NamedReading[], bad: readonly string[], banks: Banks): readonly Reply[] {
  const ids = here.map(({ id }) => id);
  const pairs = neighboursAmong(
    bad.map((id) => ids.indexOf(id)),
    banks.map((bank) => bank.map((id) => ids.indexOf(id))),
  );
  return pairs.map((pair) => reply('sum-neighbours', { names: list(pair.flatMap((i) => here[i]?.say ?? [])) }));
}
