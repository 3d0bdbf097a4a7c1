import { describe, expect, test } from 'vitest';
import { languages, readTongue } from '../../../src/cli/tongue-files';
import type { Command, RuleName } from '../../../src/core/job/command';
import type { Job } from '../../../src/core/job/job';
import { offersOf } from '../../../src/core/job/offers';
import { stepIn } from '../../../src/core/job/plan';
import type { SlotDomain } from '../../../src/core/language/grammar';
import { type TapBlank, type Tappable, tappableNow } from '../../../src/core/view/tappable';
import { nextBlank, sentence } from '../../../src/ui/bench/tap/filled-sentence';
import { checkedText } from '../job/checked-text';
import { atFirstPass, passes, setAt, shipped, soFar, Workbench } from '../job/workbench';
import { ASKED } from './asked';

/** Places of a job beside the questions: a hold point, a pass set, worked and turned, a reading, a break. */
const PLACES: Readonly<Record<string, () => Workbench>> = {
  ...ASKED,
  'hold point': () => worked(new Workbench(shipped('practice-plate')), 'done'),
  setting: atFirstPass,
  bolts: () => worked(atFirstPass(), setAt(30)),
  turning: () => {
    const w = atFirstPass();
    passes(w, 3);
    return worked(w, setAt(90), 'all-marked', soFar(45));
  },
  'a reading': () => new Workbench(checkedText('thou-and-psi').procedure),
  'loose ends': () => worked(new Workbench(shipped('tarnbeck-head-slice')), 'done', 'done', 'done'),
  break: () => worked(atFirstPass(), 'hold-on'),
};

function worked(w: Workbench, ...commands: readonly (Command | RuleName)[]): Workbench {
  w.all(...commands);
  return w;
}

/** A number that lies in a domain, as it would be keyed in, with the words of the first unit offered. */
function keyed(domain: SlotDomain | undefined, blank: TapBlank): string {
  if (blank.kind === 'choice') return blank.choices[0] ?? '';
  const unit = blank.units[0]?.words ?? '';
  switch (domain?.kind) {
    case 'integers':
      return String(domain.values[0]);
    case 'reading':
      return `${Math.ceil(domain.least * 10 ** domain.decimals) / 10 ** domain.decimals} ${unit}`.trim();
    default:
      throw new Error('a number where none is wanted');
  }
}

function filled(one: Tappable, job: Job): string {
  const slots = Object.values(offersOf(job).find(({ rule }) => rule === one.rule)?.slots ?? {});
  const domains = slots.filter(({ kind }) => kind === 'integers' || kind === 'reading');
  const words: string[] = [];
  for (let blank = nextBlank(one.parts, words); blank; blank = nextBlank(one.parts, words))
    words.push(keyed(blank.kind === 'number' ? domains.shift() : undefined, blank));
  return sentence(one.parts, words, '?');
}

describe.each(languages().map((code) => ({ code, tongue: readTongue(code) })))(
  'what can be tapped, in $code',
  ({ tongue }) => {
    test.each(Object.keys(PLACES))('is understood as that command once it is filled in: %s', (place) => {
      const job = PLACES[place]?.().job;
      if (!job) return expect.unreachable();
      const live = tongue.liveGrammar(offersOf(job), 'now');
      const all = tappableNow(job, tongue);
      expect(all.length).toBeGreaterThan(3);
      for (const one of all) {
        const words = filled(one, job);
        expect(tongue.interpret(live, words), words).toMatchObject({ kind: 'command', rule: one.rule });
      }
    });

    test('is every answer of a hold point, the right one in no place of its own, and none is shown or told', () => {
      const w = PLACES['hold point']?.();
      if (!w) return expect.unreachable();
      const answer = tappableNow(w.job, tongue).find(({ rule }) => rule === 'answer');
      const blank = answer && nextBlank(answer.parts, []);
      const given = stepIn(w.job.plan, 'corner').step.question?.answers.flatMap(({ say }) => say) ?? [];
      expect(blank).toEqual({ kind: 'choice', choices: given.toSorted() });
      expect(tongue.shown(w.job).get('answer')).toMatch(/ …$/);
      expect(given.filter((words) => tongue.shown(w.job).get('answer')?.includes(words))).toEqual([]);
    });
  },
);

describe('a number to be keyed in', () => {
  const english = readTongue('en');
  const blankOf = (w: Workbench, rule: string): TapBlank | undefined => {
    const one = tappableNow(w.job, english).find((each) => each.rule === rule);
    return one && nextBlank(one.parts, []);
  };
  const unitsOf = (blank: TapBlank | undefined) =>
    blank?.kind === 'number' ? blank.units.map(({ symbol }) => symbol) : undefined;

  test('has the document’s own unit first, and none that is only heard to be asked about', () => {
    expect(unitsOf(blankOf(atFirstPass(), 'set-at'))).toEqual(['N·m', 'lbf·ft', 'lbf·in']);
    const pounds = worked(new Workbench(checkedText('torque-floor').procedure), 'have-time');
    expect(unitsOf(blankOf(pounds, 'set-at'))).toEqual(['lbf·ft', 'N·m', 'lbf·in']);
  });

  test('has no unit chosen beforehand where the unit must be named', () => {
    expect(blankOf(atFirstPass(), 'adapter-on')).toMatchObject({ isUnitNeeded: true });
    expect(blankOf(atFirstPass(), 'set-at')).toMatchObject({ isUnitNeeded: false });
  });

  test('shows degrees as degrees', () => {
    const w = PLACES.turning?.();
    expect(w && blankOf(w, 'so-far')).toMatchObject({ kind: 'number', decimals: 0, symbol: '°', units: [] });
  });
});
