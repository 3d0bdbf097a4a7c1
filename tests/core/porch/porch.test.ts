import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { command, MANNERS, type RuleName, SHOWING } from '../../../src/core/job/command';
import { integers } from '../../../src/core/job/offers/domains';
import { interpret } from '../../../src/core/language/interpret';
import { answerAtPorch } from '../../../src/core/porch/answer';
import { porchOffers, porchTaught } from '../../../src/core/porch/offers';
import type { Porch } from '../../../src/core/porch/porch';
import { everyLanguage } from '../../grammars/language';

const LANGUAGES = (await everyLanguage()).map((language) => [language.code, language] as const);

const PLATE = { number: 1, id: 'plate', title: 'Plate' };
const HEAD = { number: 2, id: 'head', title: 'Head' };
const NEW_ONE = { number: 1, id: 'new', title: 'Head', closed: false };
const CLOSED = { number: 2, id: 'closed', title: 'Plate', closed: true };

const EMPTY: Porch = { procedures: [], jobs: [], last: null, asked: null };
const FULL: Porch = { procedures: [PLATE, HEAD], jobs: [NEW_ONE, CLOSED], last: NEW_ONE, asked: null };

const line = (rule: RuleName, value: number) => command(rule, { line: { kind: 'integer', value } });
const rulesOf = (porch: Porch) => porchOffers(porch).map(({ rule }) => rule);
const codes = (porch: Porch, c: RuleName | ReturnType<typeof command>) =>
  answerAtPorch(porch, typeof c === 'string' ? command(c) : c).replies.map(({ code }) => code);

describe('what can be said where no job is open', () => {
  test('is little where there is nothing to begin and nothing to carry on', () => {
    expect(rulesOf(EMPTY)).not.toEqual(expect.arrayContaining(['carry-on', 'begin-procedure', 'open-job', 'confirm']));
    expect(rulesOf(EMPTY)).toEqual(expect.arrayContaining(['stop', 'say-again', 'tell-words', ...SHOWING]));
  });

  test('are the numbers of the lists, and the job worked on last', () => {
    const offers = porchOffers(FULL);
    expect(offers.find(({ rule }) => rule === 'begin-procedure')?.slots).toEqual({ line: integers([1, 2]) });
    expect(offers.find(({ rule }) => rule === 'open-job')?.slots).toEqual({ line: integers([1, 2]) });
    expect(rulesOf(FULL)).toEqual(expect.arrayContaining(['carry-on', 'tell-brief', 'show-around']));
  });

  test('are the two answers once something was asked, and the number once more', () => {
    const asked = { ...FULL, asked: { kind: 'begin' as const, procedure: PLATE } };
    expect(rulesOf(asked)).toEqual(expect.arrayContaining(['confirm', 'cancel', 'begin-procedure', 'stop']));
    expect(rulesOf(asked)).not.toContain('show-record');
    expect(rulesOf(asked)).not.toContain('show-around');
  });

  test('is nothing that works on a job', () => {
    const acts = rulesOf({ ...FULL, asked: { kind: 'open', job: NEW_ONE } })
      .concat(rulesOf(FULL))
      .filter((rule) => !['harmless', 'stop'].includes(MANNERS[rule as RuleName]));
    expect([...new Set(acts)].sort()).toEqual(
      ['begin-procedure', 'cancel', 'carry-on', 'confirm', 'ears-off', 'ears-on', 'open-job', 'show-around'].sort(),
    );
  });

  test.each(LANGUAGES)('is taught in a few sentences that are understood (%s)', (_, { tongue }) => {
    for (const porch of [EMPTY, FULL, { ...FULL, asked: { kind: 'open' as const, job: NEW_ONE } }]) {
      const live = tongue.liveGrammar(porchOffers(porch), 'porch');
      const taught = porchTaught(tongue.examples(live));
      expect(taught.length).toBeGreaterThan(1);
      expect(taught.length).toBeLessThanOrEqual(5);
      for (const words of taught) expect(interpret(live, words).kind).toBe('command');
    }
  });
});

describe('what is answered', () => {
  test('a procedure by its number is asked back and nothing is done', () => {
    const answer = answerAtPorch(FULL, line('begin-procedure', 2));
    expect(answer).toMatchObject({ act: null, asked: { kind: 'begin', procedure: HEAD } });
    expect(answer.replies.map(({ code }) => code)).toEqual(['confirm-begin']);
  });

  test('a job by its number is asked back, and so is the last one', () => {
    const asked = { act: null, asked: { kind: 'open', job: NEW_ONE } };
    expect(answerAtPorch(FULL, line('open-job', 1))).toMatchObject(asked);
    expect(answerAtPorch(FULL, command('carry-on'))).toMatchObject(asked);
  });

  test('a closed job is only read, so nothing is asked', () => {
    expect(answerAtPorch(FULL, line('open-job', 2))).toMatchObject({ act: { do: 'read', job: 'closed' }, asked: null });
  });

  test('agreed to, it is done once', () => {
    const asked = { ...FULL, asked: { kind: 'begin' as const, procedure: HEAD } };
    expect(answerAtPorch(asked, command('confirm'))).toMatchObject({
      act: { do: 'begin', procedure: 'head' },
      asked: null,
    });
    expect(answerAtPorch(FULL, command('confirm'))).toMatchObject({ act: null, asked: null });
  });

  test('forgotten, it is not done, and "stop" forgets it too', () => {
    const asked = { ...FULL, asked: { kind: 'open' as const, job: NEW_ONE } };
    expect(answerAtPorch(asked, command('cancel'))).toMatchObject({ act: null, asked: null });
    expect(answerAtPorch(asked, command('stop'))).toMatchObject({ act: { do: 'hush' }, asked: null });
  });

  test.each<[RuleName, string]>([
    ['show-bench', 'no-job-open'],
    ['show-card', 'no-job-open'],
    ['show-record', 'show-record'],
    ['show-jobs', 'show-jobs'],
    ['show-procedures', 'show-procedures'],
    ['show-setup', 'show-setup'],
    ['slower', 'speech-slower'],
    ['ears-off', 'ears-are-off'],
    ['done', 'no-job-open'],
  ])('"%s" with %s', (rule, code) => {
    expect(codes(FULL, rule)).toEqual([code]);
  });

  test('no record is shown where there is no job', () => {
    expect(codes(EMPTY, 'show-record')).toEqual(['no-job-open']);
    expect(codes(EMPTY, 'tell-brief')).toEqual(['no-job-open']);
  });
});

test('whatever is said in whatever order, a job is begun or opened only by agreeing right after its own read-back', () => {
  const said = fc.array(
    fc.oneof(
      fc.constantFrom(...(Object.keys(MANNERS) as RuleName[])).map((rule) => command(rule)),
      fc
        .tuple(fc.constantFrom<RuleName>('begin-procedure', 'open-job'), fc.integer({ min: 0, max: 3 }))
        .map(([rule, n]) => line(rule, n)),
      fc.constant(command('confirm')),
    ),
    { minLength: 2, maxLength: 12 },
  );
  let begun = 0;
  fc.assert(
    fc.property(said, (commands) => {
      let porch = FULL;
      for (const c of commands) {
        const { act, asked } = answerAtPorch(porch, c);
        if (act?.do === 'begin' || act?.do === 'open') {
          begun += 1;
          expect(c.rule).toBe('confirm');
          const wanted = porch.asked?.kind === 'begin' ? porch.asked.procedure.id : porch.asked?.job.id;
          expect(act.do === 'begin' ? act.procedure : act.job).toBe(wanted);
        }
        porch = { ...porch, asked };
      }
    }),
    { numRuns: 3000, seed: 7 },
  );
  expect(begun).toBeGreaterThan(100);
});
