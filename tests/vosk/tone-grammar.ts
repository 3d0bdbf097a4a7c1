import type { LiveGrammar, Manner, SlotDomain } from '../../src/core/language/grammar';
import { liveGrammar } from '../../src/core/language/live-grammar';
import { english, upTo, wellFormed } from '../grammars/en/english';

type Rule = readonly [rule: string, manner: Manner, slots?: Readonly<Record<string, SlotDomain>>];

const grammarOf = (revision: string, rules: readonly Rule[]): LiveGrammar =>
  wellFormed(
    liveGrammar(
      english,
      rules.map(([rule, manner, slots = {}]) => ({ rule, manner, slots })),
      revision,
    ),
  );

/** Between steps: the step may be told, asked about and ended. */
export const AT_STEP = grammarOf('at-step', [
  ['stop', 'stop'],
  ['tell-next', 'harmless'],
  ['tell-torque', 'harmless'],
  ['say-again', 'harmless'],
  ['done', 'progress'],
]);

/** At a pattern of nine bolts: "done" alone means nothing here. */
export const AT_BOLTS = grammarOf('at-bolts', [
  ['stop', 'stop'],
  ['tell-next', 'harmless'],
  ['bolt-done', 'progress', { bolt: upTo(9) }],
]);
