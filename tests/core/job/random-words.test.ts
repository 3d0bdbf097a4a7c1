import fc from 'fast-check';
import { expect, test, vi } from 'vitest';
import { command } from '../../../src/core/job/command';
import { decide } from '../../../src/core/job/decide/decide';
import { evolve } from '../../../src/core/job/evolve';
import type { Job } from '../../../src/core/job/job';
import { offersOf } from '../../../src/core/job/offers';
import { placeOf } from '../../../src/core/job/place';
import { nodeOf } from '../../../src/core/job/plan';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { samples } from '../../../src/core/language/sample';
import { liveVocabulary } from '../../../src/core/language/vocabulary';
import { english, wellFormed } from '../../grammars/en/english';
import { SEED, tries } from '../../long';
import { atFirstPass, bolt, notSure, setAt, type Workbench } from './workbench';

vi.setConfig({ testTimeout: 7_200_000 });

const PASS = 'tighten.tighten-left.first.work';
const BENCHES: readonly Workbench[] = [
  [],
  [bolt(1), bolt(2)],
  [bolt(1), bolt(2), bolt(3), notSure(2)],
  [bolt(1), 'felt-soft' as const],
].map((commands) => {
  const w = atFirstPass();
  w.all(setAt(30), ...commands);
  return w;
});

const grammarOf = (job: Job) => wellFormed(liveGrammar(english, offersOf(job), 'now'));
const places = BENCHES.map((bench) => {
  const live = grammarOf(bench.job);
  return { bench, live, words: [...liveVocabulary(live), 'right', 'yes', 'okay', 'and', 'nine', 'forty'] };
});

/** Every sentence that may mark a fastener, written out by hand: nothing here is read from the grammar. */
const MARKING =
  /^(bolts? .+ (is |are )?done|done with bolt .+|that clicked|heard it click|done|that's done|that is done|this step is done)$/;

const bolts = (job: Job): ReadonlyMap<number, string> =>
  new Map([...(job.tightening.get('tighten-left')?.get('first')?.bolts ?? [])].map(([n, { kind }]) => [n, kind]));

let marked = 0;
let legal = 0;

/** What these words do in this place, held against the policy. */
function expectPolicy({ bench: { job }, live }: (typeof places)[number], words: string): void {
  const meaning = interpret(live, words);
  if (meaning.kind !== 'command') return;
  legal += 1;
  expect(live.commands.map(({ rule }) => rule)).toContain(meaning.rule);
  const now = { at: 1_700_000_100_000, mono: 100_000, session: 's1' };
  const { entries } = decide(job, command(meaning.rule as Parameters<typeof command>[0], meaning.slots), now);
  const after = entries.reduce((so, body, i) => evolve(so, { ...body, ...now, seq: 1000 + i, who: 'me' }), job);
  const [before, then] = [bolts(job), bolts(after)];
  const fresh = [...then].filter(([n, kind]) => kind === 'done' && before.get(n) !== 'done').map(([n]) => n);
  // To take back a doubt is to have again what had been reported before it.
  if (fresh.length === 0 || /^(no )?take that back$/.test(words)) return;
  marked += 1;
  expect([words, MARKING.test(words)]).toEqual([words, true]);
  // Several at once only when a range was named; and nothing that is held or in doubt is done by a word.
  if (!words.startsWith('bolts')) expect([words, fresh.length]).toEqual([words, 1]);
  for (const n of fresh) expect([words, n, before.get(n) ?? 'open']).toEqual([words, n, 'open']);
  expect(nodeOf(job.plan, placeOf(job))).toBe(PASS);
}

const place = fc.constantFrom(...places);

test('whatever words come, they are a legal command or nothing, and no bolt is done out of policy', () => {
  fc.assert(
    fc.property(
      place.chain((at) =>
        fc.tuple(fc.constant(at), fc.array(fc.constantFrom(...at.words), { minLength: 1, maxLength: 7 })),
      ),
      ([at, words]) => expectPolicy(at, words.join(' ')),
    ),
    { numRuns: tries(3_000, 100_000), seed: SEED },
  );
});

test('nor by what is nearly a command: a word too many, too few, doubled or changed', () => {
  const sentences = places.map((at) =>
    samples(at.live, at.live.commands.length * 3).map(({ words }) => words.split(' ')),
  );
  fc.assert(
    fc.property(fc.nat(places.length - 1), fc.nat(), fc.nat(), fc.nat(), fc.nat(4), (i, s, p, v, change) => {
      const at = places[i];
      const sentence = sentences[i]?.[s % (sentences[i]?.length ?? 1)];
      if (!at || !sentence) return;
      const where = p % sentence.length;
      const other = at.words[v % at.words.length] ?? '';
      const put = [
        [],
        [other],
        [sentence[where] ?? '', sentence[where] ?? ''],
        [other, sentence[where] ?? ''],
        [sentence[where] ?? ''],
      ];
      expectPolicy(at, [...sentence.slice(0, where), ...(put[change] ?? []), ...sentence.slice(where + 1)].join(' '));
    }),
    { numRuns: tries(3_000, 100_000), seed: SEED },
  );
  // Otherwise nothing has been tried.
  expect(legal).toBeGreaterThan(500);
  expect(marked).toBeGreaterThan(8);
});
