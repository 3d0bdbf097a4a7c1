import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { placesOf } from '../../../src/cli/authoring/places';
import { command, commandOf } from '../../../src/core/job/command';
import { decide } from '../../../src/core/job/decide/decide';
import { offersOf } from '../../../src/core/job/offers';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { phraseAll } from '../../../src/core/phrasing/phrase';
import { ESTIMATES } from '../../../src/core/sums/estimates';
import { english, wellFormed } from '../../grammars/en/english';
import { englishBook } from '../phrasing/english';
import { atFirstPass, passes, shipped, Workbench } from './workbench';

const book = englishBook();

/** What is answered to words, heard by the grammar of the moment; nothing may be written for it. */
function ask(w: Workbench, words: string): { readonly spoken: string; readonly shown: string } {
  const meaning = interpret(wellFormed(liveGrammar(english, offersOf(w.job), 'now')), words);
  const c = meaning.kind === 'command' ? commandOf(meaning.rule, meaning.slots) : undefined;
  if (!c) throw new Error(`"${words}" is ${meaning.kind} here`);
  const decision = decide(w.job, c, w.now());
  expect(decision).toMatchObject({ verdict: 'told', entries: [] });
  return phraseAll(book, decision.replies);
}

const atStart = () => new Workbench(shipped('practice-plate'));

describe('proof load by class and grade', () => {
  // ISO 898-1 and SAE J429 as printed; fine pitches from memory, and derived.
  test.each([
    ['m six class eight point eight', 11.6, 'kN'],
    ['m eight class ten point nine', 30.4, 'kN'],
    ['m ten class ten point nine', 48.1, 'kN'],
    ['m ten by one point two five class ten point nine', 50.8, 'kN'],
    ['m twelve class twelve point nine', 81.8, 'kN'],
    ['m fourteen class eight point eight', 66.7, 'kN'],
    ['three eighths coarse grade five', 6600, 'lbf'],
    ['seven sixteenths coarse grade eight', 12800, 'lbf'],
    ['half inch coarse grade five', 12100, 'lbf'],
  ])('%s: %d %s', (bolt, printed, unit) => {
    const { shown } = ask(atStart(), `what is the proof load of ${bolt}`);
    const load = new RegExp(`load is ([\\d.]+) ${unit}`).exec(shown)?.[1];
    // Printed loads take the area to three figures: half a percent; and ours are given to a tenth of a kilonewton.
    expect(Math.abs(Number(load) - printed)).toBeLessThanOrEqual(0.005 * printed + (unit === 'kN' ? 0.05 : 5));
  });
});

describe('the torque for a share of it, K from 0.1 to 0.3', () => {
  // 1/2-13 grade 5 at 81.2 % of proof is F 9791 lbf, and K 0.2 gives 81.6 lbf·ft (a supplier's table): half of it and
  // half as much again at the ends. 3/4 of 33.7 kN on M10 by hand: 25.3 kN x 10 mm x 0.1 and x 0.3.
  test.each([
    ['half inch coarse grade five at eighty one percent', '41 lbf·ft', '122 lbf·ft'],
    ['m ten class eight point eight', '25 N·m', '76 N·m'],
  ])('%s: %s to %s', (bolt, least, most) => {
    const { shown, spoken } = ask(atStart(), `estimate the torque for ${bolt}`);
    expect(shown).toContain(`Waxed, ${least}. Dry, ${most}.`);
    expect(spoken).toContain('A rough sum, no target');
    expect(spoken).toContain("The maker's figure comes first");
    expect(shown).toContain('T = K · D · F / 1000');
    expect(shown).toContain('textbook short form; K is a range, not a constant');
    expect(shown).toContain('ISO 898-1; SAE J429');
  });
});

test('the tension of a torque, and how much of proof that is', () => {
  // 40 N·m on M10: 40 / (0.3 x 0.010) = 13.3 kN and 40 / (0.1 x 0.010) = 40 kN, of 48.1 kN 28 % and 83 %.
  const { shown } = ask(atStart(), 'what tension comes of forty newton metres on m ten class ten point nine');
  expect(shown).toContain('40 N·m on dry threads. 13.3 kN. On waxed ones, 40.0 kN.');
  expect(shown).toContain('Of its proof load, 28 %. At most 83 %.');
  expect(ask(atStart(), 'how hard does forty newton metres pull on m ten').shown).not.toContain('proof');
});

test('of the fasteners of a pass, where the document tells their thread', () => {
  const w = atFirstPass();
  // 30 N·m on M10x1.25: 10 kN and 30 kN of 50.8 kN.
  expect(ask(w, 'what tension does that give').shown).toContain('Of its proof load, 20 %. At most 59 %.');
  passes(w, 3);
  // 1.25 mm x 90 / 360 = 0.3125 mm; three quarters and ten elevenths of it are the bolt's. Derived.
  const { shown } = ask(w, 'how much does that stretch it');
  expect(shown).toContain('90° stretches it. 0.23 mm at least. 0.28 mm at most, short of yield only.');
  expect(shown).toContain('P · angle / 360 · r / (1 + r), P 1.25 mm, angle 90 °, r 3');
});

test('a thread or grade nobody knows is no sum', () => {
  expect(ESTIMATES.proof({ thread: 'M11', grade: 'class 8.8' })).toMatchObject([{ code: 'sum-not-possible' }]);
  expect(ESTIMATES.proof({ thread: 'M10', grade: null })).toMatchObject([{ code: 'sum-not-possible' }]);
  expect(ESTIMATES.proof({ thread: 'M10', grade: 'grade 99' })).toMatchObject([{ code: 'sum-not-possible' }]);
});

describe('a computed torque has no path into a pass', () => {
  test.each(['practice-plate', 'tarnbeck-head-slice'])('in no place of %s does asking write anything', (name) => {
    let asked = 0;
    for (const place of placesOf(shipped(name)))
      for (const rule of ['tell-estimate', 'tell-proof', 'tell-tension', 'tell-pull', 'tell-stretch'] as const) {
        if (!place.offers.some((o) => o.rule === rule)) continue;
        const c = command(rule, {
          thread: { kind: 'option', id: 'M10' },
          grade: { kind: 'option', id: 'class 8.8' },
          setting: { kind: 'reading', value: 40, unit: 'N·m' },
        });
        expect(decide(place.job, c, place.now)).toMatchObject({ verdict: 'told', entries: [] });
        asked += 1;
      }
    expect(asked).toBeGreaterThan(10);
  });

  test('and nothing that sets, builds or judges a pass imports the sums', () => {
    const sources = readdirSync('src/core', { recursive: true, encoding: 'utf8' }).filter((file) =>
      file.endsWith('.ts'),
    );
    const importing = sources.filter((file) =>
      /from '[^']*(?:sums\/estimates|fastening\/(?:short-torque|long-torque|strength|turn-preload))'/.test(
        readFileSync(`src/core/${file}`, 'utf8'),
      ),
    );
    expect(importing.sort()).toEqual(['procedure/build/build-procedure.ts', 'sums/bolts.ts', 'sums/estimates.ts']);
  });
});
