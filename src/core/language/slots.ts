import { assertNever } from '../result';
import type { Phrase, RuleBook, SlotDomain, UnitScale } from './grammar';
import { setBetween, setOf } from './numbers/number-set';
import { restricted } from './numbers/restrict';
import { oneOf, optional, seq, VOID, word } from './phrase';
import { nameTag } from './tags';
import { figures, plainWords } from './words';

/** The rules of a language that slots are built from. Every language folder defines them. */
export const NUMBER_RULE = 'number';
export const UNIT_RULE = 'unit';

/** Phrases already built. A domain comes back at every turn of the job, and only a few are in play at a time. */
const built = new WeakMap<RuleBook, Map<string, Phrase>>();
const KEPT = 200;

/**
 * The phrase of a slot whose domain is known: only what makes sense now, in every way of saying it.
 * VOID where nothing does, e.g. no loose ends; the command then cannot be said.
 */
export function slotPhrase(slot: string, domain: SlotDomain, book: RuleBook): Phrase {
  const known = built.get(book) ?? new Map<string, Phrase>();
  built.set(book, known);
  const key = `${slot} ${JSON.stringify(domain)}`;
  const phrase = known.get(key) ?? build(slot, domain, book);
  if (known.size >= KEPT) known.clear();
  known.set(key, phrase);
  return phrase;
}

function build(slot: string, domain: SlotDomain, book: RuleBook): Phrase {
  const rule = (name: string): Phrase => book.rules.get(name) ?? VOID;
  switch (domain.kind) {
    case 'integers':
      return summed(restricted(rule(NUMBER_RULE), setOf(domain.values, 0), rule));
    case 'reading': {
      const on = ({ least, most, decimals, units }: UnitScale, isNeeded: boolean): Phrase => {
        const number = restricted(rule(NUMBER_RULE), setBetween(least, most, decimals), rule);
        const unit = named(rule(UNIT_RULE), units, rule);
        return seq([summed(number), isNeeded ? unit : optional(unit)]);
      };
      return oneOf([on(domain, domain.unitNeeded), ...(domain.also ?? []).map((scale) => on(scale, true))]);
    }
    case 'named':
      return named(rule(slot), domain.ids, rule);
    case 'options':
      return oneOf(
        domain.options.map(({ id, say }) => ({
          kind: 'tagged',
          part: oneOf(say.map((text) => textPhrase(text, rule))),
          tag: nameTag(id),
        })),
      );
    default:
      return assertNever(domain);
  }
}

/** The slot with any number or any name of its rule in it: the shape of a command whose value is out of place. */
export function anyPhrase(slot: string, domain: SlotDomain): Phrase {
  const number: Phrase = summed({ kind: 'rule', name: NUMBER_RULE });
  switch (domain.kind) {
    case 'integers':
      return number;
    case 'reading': {
      const unit: Phrase = { kind: 'rule', name: UNIT_RULE };
      return seq([number, domain.opens ? unit : optional(unit)]);
    }
    case 'named':
      return { kind: 'rule', name: slot };
    case 'options':
      return VOID;
    default:
      return assertNever(domain);
  }
}

/** Text of a document as a phrase. Figures in it can be said in any way the number grammar has. */
function textPhrase(text: string, rule: (name: string) => Phrase): Phrase {
  const parts = plainWords(text).map((token) => {
    const value = figures(token);
    if (value === undefined) return word(token);
    const decimals = token.split('.')[1]?.length ?? 0;
    return restricted(rule(NUMBER_RULE), setOf([value], decimals), rule);
  });
  return parts.length === 0 ? VOID : seq(parts);
}

const summed = (part: Phrase): Phrase => (part.kind === 'void' ? VOID : { kind: 'tagged', part, tag: 'sum' });

/** Those alternatives of a rule that name one of the ids. */
function named(phrase: Phrase, ids: readonly string[], rule: (name: string) => Phrase): Phrase {
  switch (phrase.kind) {
    case 'tagged':
      return ids.some((id) => nameTag(id) === phrase.tag) ? phrase : VOID;
    case 'oneOf':
      return oneOf(phrase.parts.map((part) => named(part, ids, rule)));
    case 'rule':
      return named(rule(phrase.name), ids, rule);
    case 'word':
    case 'seq':
    case 'optional':
    case 'repeat':
    case 'null':
    case 'void':
      return VOID;
    default:
      return assertNever(phrase);
  }
}
