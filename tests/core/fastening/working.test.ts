import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { GRADES } from '../../../src/core/fastening/grade';
import { assemblyTorque, preloadAtYield } from '../../../src/core/fastening/long-torque';
import {
  degrees,
  kilopascals,
  litres,
  megapascals,
  millimetres,
  newtonMetres,
  newtons,
  percent,
  squareMillimetres,
} from '../../../src/core/fastening/quantity';
import { tensionFrom, torqueAfterChange, torqueFor } from '../../../src/core/fastening/short-torque';
import { ISO_898_1, proofLoad } from '../../../src/core/fastening/strength';
import { type StretchRule, stretchVerdict } from '../../../src/core/fastening/stretch';
import { metricThread } from '../../../src/core/fastening/thread';
import { newtonsPerMillimetre, turnEffect, turnStretch } from '../../../src/core/fastening/turn-preload';
import { FORMULAS, formulaOf, sourceOf, type Working } from '../../../src/core/fastening/working';
import { type Adapter, settingWith, torqueWith } from '../../../src/core/fastening/wrench-setting';
import { COMPRESSION_RULES, compressionVerdict } from '../../../src/core/measuring/compression';
import { drainAndRefill, topUp } from '../../../src/core/measuring/coolant-mix';
import { COOLANT_TABLES, freezingWorking } from '../../../src/core/measuring/coolant-table';
import { gradeWorking } from '../../../src/core/measuring/gasket-grade';
import { leakage, USUAL_LEAK_BANDS } from '../../../src/core/measuring/leak-down';
import { marginAbove, marginBelow } from '../../../src/core/measuring/margin';
import { shimFor } from '../../../src/core/measuring/shim';
import { TERMS, termsIn } from '../../../src/core/phrasing/terms';
import { fail, ok, type Result } from '../../../src/core/result';

const mm = millimetres;
const must = <T>(result: Result<T, unknown>): T => {
  if (!result.ok) throw new Error('refused');
  return result.value;
};
const m10 = must(metricThread(mm(10), mm(1.25)));
const [class88] = ISO_898_1;
const [rule, , spreadRule, averageRule] = COMPRESSION_RULES;
const [coolants] = COOLANT_TABLES;
if (!class88 || !rule || !spreadRule || !averageRule || !coolants) throw new Error('a table is empty');
const crowfoot: Adapter = { kind: 'offset', length: mm(60), angle: degrees(40) };
const friction = { thread: 0.13, bearing: 0.11 };
const window: StretchRule = { name: 'w', source: 's', window: { least: 0, most: 1 }, ifUnder: 'hold', ifOver: 'hold' };
const shares = { present: percent(30), wanted: percent(45), concentrate: percent(96) };
const shims = { least: mm(2), most: mm(4), step: mm(0.05) };
const readings = new Map([
  [1, kilopascals(1200)],
  [2, kilopascals(1030)],
]);

const freezing = (share: ReturnType<typeof percent>): Result<Working, string> => {
  const working = freezingWorking(coolants, share);
  return working ? ok(working) : fail('outside the table');
};

/** One working of every formula, from figures with nothing round about them. */
const WORKINGS: readonly Working[] = [
  must(settingWith(newtonMetres(43), mm(310), crowfoot)).working,
  must(torqueWith(newtonMetres(43), mm(310), crowfoot)).working,
  ...must(torqueFor(newtons(31_600), mm(10), { least: 0.13, most: 0.21 })).workings,
  ...must(tensionFrom(newtonMetres(43), mm(10), { least: 0.13, most: 0.21 })).workings,
  must(torqueAfterChange(newtonMetres(43), 0.21, 0.13)).working,
  must(assemblyTorque(newtons(31_600), m10, { outer: mm(14.6), hole: mm(11) }, friction)).working,
  must(preloadAtYield(m10, megapascals(640), 0.13)).working,
  must(proofLoad(squareMillimetres(61.2), class88)).working,
  must(turnEffect(mm(1.25), degrees(95), newtonsPerMillimetre(139_000), newtonsPerMillimetre(410_000))).working,
  stretchVerdict(mm(63.52), mm(63.93), window).working,
  must(leakage(kilopascals(552), kilopascals(497))).working,
  must(compressionVerdict(readings, rule)).working,
  must(drainAndRefill(litres(8.7), shares)).working,
  must(compressionVerdict(readings, spreadRule)).working,
  must(compressionVerdict(readings, averageRule)).working,
  marginBelow(0.05, 0.03, 'mm').working,
  marginAbove(122, 131, 'N·m').working,
  gradeWorking(mm(0.79), mm(0.84)),
  must(turnStretch(mm(1.75), degrees(95), 3.7)).working,
  must(topUp(litres(10.5), litres(4.3), shares)).working,
  must(freezing(percent(43))),
  must(shimFor({ shim: mm(2.95), gap: mm(0.47), wanted: mm(0.25) }, shims)).working,
];

/** The formula as shown, in the spelling of an independent expression reader; clauses after a comma come first. */
const readable = (shown: string): readonly string[] =>
  shown
    .replaceAll(/[{}]/g, '')
    .replaceAll('·', '*')
    .replaceAll('−', '-')
    .replaceAll('√', 'sqrt')
    .replaceAll('²', '^2')
    .replaceAll('π', 'pi')
    .replaceAll('cos a', 'cos(a deg)')
    .split(', ')
    .toReversed();

describe('the formula on the screen, worked out by mathjs from the figures on the screen, gives the result shown', () => {
  test.each(WORKINGS.map((working) => [working.formula, formulaOf(working), working] as const))(
    '%s: %s',
    (_, shown, working) => {
      const scope = new Map<string, unknown>(working.inputs.map(({ name, value }) => [name, value]));
      for (const clause of readable(shown)) evaluate(clause, scope);
      expect(Number(scope.get(working.result.name)) / working.result.value).toBeCloseTo(1, 9);
      expect(sourceOf(working)).not.toBe('');
    },
  );

  test('every word in it and in its source has a text in each language, and there are no others', () => {
    const bands = [USUAL_LEAK_BANDS, ...COMPRESSION_RULES, ...COOLANT_TABLES].map(({ source }) => source);
    const shown = Object.values(FORMULAS).flatMap(({ formula, source }) => [formula, source]);
    const named = new Set([...bands, ...shown].flatMap(termsIn));
    const strengths = GRADES.map((grade) => grade.split(' ')[0] ?? '');
    expect([...named, ...new Set(strengths)].toSorted()).toEqual([...TERMS].toSorted());
  });

  test('every formula there is has been worked', () => {
    expect(new Set(WORKINGS.map((working) => working.formula))).toEqual(new Set(Object.keys(FORMULAS)));
  });
});
