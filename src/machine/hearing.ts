import { isUnitName } from '../core/fastening/unit';
import { type Command, command, commandOf } from '../core/job/command';
import type { LiveGrammar, Meaning } from '../core/language/grammar';
import { digits, type Reply, reply, text } from '../core/phrasing/reply';
import type { RejectReason } from '../core/ports';
import { assertNever } from '../core/result';

/** What some words amount to: a command to be decided about, or nothing, with what to say to that. */
export type Hearing =
  | { readonly kind: 'command'; readonly command: Command }
  | { readonly kind: 'rejected'; readonly why: RejectReason | 'almost'; readonly replies: readonly Reply[] };

const rejected = (why: RejectReason | 'almost', ...replies: readonly Reply[]): Hearing => ({
  kind: 'rejected',
  why,
  replies,
});

const AGAIN = reply('say-again', {});

/** Words under the live grammar. Only exactly one command is one. */
export function hearing(meaning: Meaning): Hearing {
  switch (meaning.kind) {
    case 'command': {
      const known = commandOf(meaning.rule, meaning.slots);
      return known ? { kind: 'command', command: known } : rejected('not-a-command');
    }
    case 'almost':
      return rejected('almost', reply('almost', { given: figureOf(meaning.given) }));
    case 'ambiguous':
      return rejected('ambiguous', AGAIN);
    case 'nothing':
      return rejected('not-a-command', AGAIN);
    default:
      return assertNever(meaning);
  }
}

/** Words from under another revision mean nothing any more, except that "stop" always stops. */
export function staleHearing(
  live: LiveGrammar,
  words: string,
  interpret: (live: LiveGrammar, words: string) => Meaning,
): Hearing {
  const meaning = interpret(live, words);
  return meaning.kind === 'command' && meaning.rule === 'stop'
    ? { kind: 'command', command: command('stop') }
    : rejected('stale', AGAIN);
}

/** Rejections worth a word back: something like a command was said. Other speech and noise are left alone. */
const WORTH_ASKING: ReadonlySet<RejectReason> = new Set(['score', 'stale', 'not-a-command', 'ambiguous']);

/** What the ear itself turned away. */
export const turnedAway = (why: RejectReason): Hearing =>
  WORTH_ASKING.has(why) ? rejected(why, AGAIN) : rejected(why);

/** Figures are said back digit by digit, so that forty and fourteen differ by ear. */
function figureOf(given: string) {
  const [figures = '', unit] = given.split(/ (.*)/);
  const value = Number(figures);
  if (figures === '' || !Number.isFinite(value)) return text(given);
  if (unit === undefined) return digits(value);
  return isUnitName(unit) ? digits(value, unit) : text(given);
}
