import { readFileSync } from 'node:fs';
import { GRADES } from '../../../src/core/fastening/grade';
import { THREAD_NAMES } from '../../../src/core/fastening/thread-names';
import type { Meaning, Offer, RuleBook, SlotDomain } from '../../../src/core/language/grammar';
import { interpret } from '../../../src/core/language/interpret';
import { liveGrammar } from '../../../src/core/language/live-grammar';
import { ruleBook } from '../../../src/core/language/rule-book';
import type { Result } from '../../../src/core/result';

const folder = `${import.meta.dirname}/../../../grammars/en`;

export const grammarText = (file: string): { readonly file: string; readonly text: string } => ({
  file: `grammars/en/${file}`,
  text: readFileSync(`${folder}/${file}`, 'utf8'),
});

/** The value, or a test failure that shows the issues. */
export function wellFormed<T>(result: Result<T, unknown>): T {
  if (!result.ok) throw new Error(JSON.stringify(result.error, null, 1));
  return result.value;
}

export const english: RuleBook = wellFormed(ruleBook([grammarText('commands.jsgf'), grammarText('numbers.jsgf')]));

export const upTo = (most: number): SlotDomain => ({
  kind: 'integers',
  values: Array.from({ length: most }, (_, index) => index + 1),
});

export const readingOf = (
  least: number,
  most: number,
  decimals = 0,
  units: readonly string[] = [],
  unitNeeded = false,
): SlotDomain => ({ kind: 'reading', least, most, decimals, units, unitNeeded });

export const oneOfThese = (...texts: readonly string[]): SlotDomain => ({
  kind: 'options',
  options: texts.map((text) => ({ id: text.replaceAll(' ', '-'), say: [text] })),
});

/** What a ten-bolt head with a few loose ends would put in each slot. */
const DOMAINS: Readonly<Record<string, SlotDomain>> = {
  answer: oneOfThese('towards the front', 'towards the rear'),
  bolt: upTo(10),
  clock: upTo(12),
  cold: readingOf(1, 70, 0, ['degC']),
  degrees: { kind: 'integers', values: Array.from({ length: 72 }, (_, index) => 5 * index + 5) },
  end: oneOfThese('coolant hose', 'cam sensor plug', 'cylinder 2 rag'),
  from: upTo(10),
  gauged: { kind: 'reading', least: 60, most: 200, decimals: 0, units: ['psi'], unitNeeded: true, opens: true },
  grade: { kind: 'named', ids: GRADES },
  item: oneOfThese('coolant hose', 'cam sensor plug'),
  length: readingOf(0.25, 12, 2, ['in', 'mm'], true),
  part: oneOfThese('thermostat', 'head gasket'),
  person: oneOfThese('robin'),
  place: upTo(6),
  reading: readingOf(60, 200, 0, ['psi']),
  room: readingOf(0.1, 99, 1, ['L'], true),
  reason: { kind: 'named', ids: ['not-fitted-here', 'waiting-for-a-part'] },
  setting: readingOf(1, 999, 1, ['N·m', 'lbf·ft']),
  share: readingOf(1, 100, 0, ['%'], true),
  thread: { kind: 'named', ids: THREAD_NAMES },
  to: upTo(10),
  unit: { kind: 'named', ids: ['N·m', 'lbf·ft'] },
};

/** An offer of a command of the English grammar with everyday domains in its slots. */
export function offerOf(rule: string, domains: Readonly<Record<string, SlotDomain>> = DOMAINS): Offer {
  const text = JSON.stringify(english.rules.get(rule));
  const slots = Object.entries(domains).filter(([slot]) => text?.includes(`{"kind":"rule","name":"${slot}"}`));
  return { rule, manner: 'progress', slots: Object.fromEntries(slots) };
}

/** Every command of English live at once: more than any state offers, so the hardest case for telling them apart. */
export const everything = wellFormed(
  liveGrammar(
    english,
    english.publicRules.map((rule) => offerOf(rule)),
    'everything',
  ),
);

export const hear = (words: string): Meaning => interpret(everything, words);
