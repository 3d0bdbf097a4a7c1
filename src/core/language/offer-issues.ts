import { assertNever } from '../result';
import { type Offer, type Phrase, type RuleBook, SLOT_NAMES, type SlotDomain } from './grammar';
import { rulesIn, tagsIn } from './jsgf/references';
import { UNIT_RULE } from './slots';
import { nameTag } from './tags';
import { plainWords } from './words';

const SLOTS: ReadonlySet<string> = new Set(SLOT_NAMES);

/** Offers that do not fit the grammar file. `rule` and `slot` say where; all are bugs of the caller or of a document. */
export type OfferIssue =
  | { readonly code: 'unknown-command'; readonly rule: string; readonly mend: string }
  | { readonly code: 'offered-twice'; readonly rule: string; readonly mend: string }
  | {
      readonly code: 'slot-not-in-rule' | 'slot-not-filled';
      readonly rule: string;
      readonly slot: string;
      readonly mend: string;
    }
  | {
      readonly code: 'domain-out-of-order';
      readonly rule: string;
      readonly slot: string;
      readonly given: string;
      readonly mend: string;
    }
  | {
      readonly code: 'unknown-name' | 'not-sayable';
      readonly rule: string;
      readonly slot: string;
      readonly given: string;
      readonly mend: string;
    };

export function offerIssues(book: RuleBook, offers: readonly Offer[]): readonly OfferIssue[] {
  const rules = offers.map((offer) => offer.rule);
  const repeated = rules.filter((rule, index) => rules.indexOf(rule) < index);
  const twice = repeated.map((rule) => ({
    code: 'offered-twice' as const,
    rule,
    mend: 'Offer a rule once, with one domain for each slot.',
  }));
  return [...twice, ...offers.flatMap((offer) => issuesOf(book, offer))];
}

function issuesOf(book: RuleBook, { rule, slots }: Offer): readonly OfferIssue[] {
  const phrase = book.publicRules.includes(rule) ? book.rules.get(rule) : undefined;
  if (!phrase)
    return [{ code: 'unknown-command', rule, mend: 'Add a public rule of this name to the command grammar.' }];
  const used = rulesIn(phrase);
  const unfilled = used.filter((name) => SLOTS.has(name) && !Object.hasOwn(slots, name));
  return [
    ...unfilled.map((slot) => ({ code: 'slot-not-filled' as const, rule, slot, mend: 'Give the slot a domain.' })),
    ...Object.entries(slots).flatMap(([slot, domain]) =>
      used.includes(slot)
        ? domainIssues(book, rule, slot, domain)
        : [
            {
              code: 'slot-not-in-rule' as const,
              rule,
              slot,
              mend: 'Take the slot out of the offer, or use it in the rule.',
            },
          ],
    ),
  ];
}

function domainIssues(book: RuleBook, rule: string, slot: string, domain: SlotDomain): readonly OfferIssue[] {
  switch (domain.kind) {
    case 'integers':
      return domain.values
        .filter((value) => !Number.isSafeInteger(value) || value < 0)
        .map((value) => ({
          code: 'domain-out-of-order' as const,
          rule,
          slot,
          given: String(value),
          mend: 'Whole numbers from 0 up can be said.',
        }));
    case 'reading': {
      return [domain, ...(domain.also ?? [])].flatMap(({ least, most, units }): readonly OfferIssue[] => {
        const isOrdered = least >= 0 && least <= most && Number.isFinite(most);
        const given = `${least} to ${most}`;
        return isOrdered
          ? unknownNames(book, rule, slot, UNIT_RULE, units)
          : [
              {
                code: 'domain-out-of-order',
                rule,
                slot,
                given,
                mend: 'Give a range from 0 up, the smaller number first.',
              },
            ];
      });
    }
    case 'named':
      return unknownNames(book, rule, slot, slot, domain.ids);
    case 'options':
      return domain.options.flatMap(({ id, say }) =>
        say
          .filter((text) => plainWords(text).length === 0)
          .map((given) => ({
            code: 'not-sayable' as const,
            rule,
            slot,
            given: `${id}: "${given}"`,
            mend: 'Give the option words that can be said.',
          })),
      );
    default:
      return assertNever(domain);
  }
}

function unknownNames(
  book: RuleBook,
  rule: string,
  slot: string,
  namedIn: string,
  ids: readonly string[],
): readonly OfferIssue[] {
  const known = new Set(namesIn(book.rules.get(namedIn), book));
  return ids
    .filter((id) => !known.has(nameTag(id)))
    .map((given) => ({ code: 'unknown-name', rule, slot, given, mend: `Tag words of <${namedIn}> with {=${given}}.` }));
}

const namesIn = (phrase: Phrase | undefined, book: RuleBook): readonly string[] =>
  phrase ? [...tagsIn(phrase), ...rulesIn(phrase).flatMap((name) => namesIn(book.rules.get(name), book))] : [];
