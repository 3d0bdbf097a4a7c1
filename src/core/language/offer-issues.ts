import { type Mend, mend } from '../mend';
import { assertNever } from '../result';
import { type Offer, type Phrase, type RuleBook, SLOT_NAMES, type SlotDomain } from './grammar';
import { rulesIn, tagsIn } from './jsgf/references';
import { UNIT_RULE } from './slots';
import { nameTag } from './tags';
import { plainWords } from './words';

const SLOTS: ReadonlySet<string> = new Set(SLOT_NAMES);

/** Offers that do not fit the grammar file. `rule` and `slot` say where; all are bugs of the caller or of a document. */
export type OfferIssue =
  | { readonly code: 'unknown-command'; readonly rule: string; readonly mend: Mend }
  | { readonly code: 'offered-twice'; readonly rule: string; readonly mend: Mend }
  | {
      readonly code: 'slot-not-in-rule' | 'slot-not-filled';
      readonly rule: string;
      readonly slot: string;
      readonly mend: Mend;
    }
  | {
      readonly code: 'domain-out-of-order';
      readonly rule: string;
      readonly slot: string;
      readonly given: string;
      readonly mend: Mend;
    }
  | {
      readonly code: 'unknown-name' | 'not-sayable';
      readonly rule: string;
      readonly slot: string;
      readonly given: string;
      readonly mend: Mend;
    };

export function offerIssues(book: RuleBook, offers: readonly Offer[]): readonly OfferIssue[] {
  const rules = offers.map((offer) => offer.rule);
  const repeated = rules.filter((rule, index) => rules.indexOf(rule) < index);
  const twice = repeated.map((rule) => ({
    code: 'offered-twice' as const,
    rule,
    mend: mend('offer-once'),
  }));
  return [...twice, ...offers.flatMap((offer) => issuesOf(book, offer))];
}

function issuesOf(book: RuleBook, { rule, slots }: Offer): readonly OfferIssue[] {
  const phrase = book.publicRules.includes(rule) ? book.rules.get(rule) : undefined;
  if (!phrase) return [{ code: 'unknown-command', rule, mend: mend('add-command') }];
  const used = rulesIn(phrase);
  const unfilled = used.filter((name) => SLOTS.has(name) && !Object.hasOwn(slots, name));
  return [
    ...unfilled.map((slot) => ({ code: 'slot-not-filled' as const, rule, slot, mend: mend('give-domain') })),
    ...Object.entries(slots).flatMap(([slot, domain]) =>
      used.includes(slot)
        ? domainIssues(book, rule, slot, domain)
        : [
            {
              code: 'slot-not-in-rule' as const,
              rule,
              slot,
              mend: mend('slot-out'),
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
          mend: mend('whole-numbers'),
        }));
    case 'reading': {
      return [domain, ...(domain.also ?? [])].flatMap(({ least, most, units }): readonly OfferIssue[] => {
        const isOrdered = least >= 0 && least <= most && Number.isFinite(most);
        const given = `${least}–${most}`;
        return isOrdered
          ? unknownNames(book, rule, slot, UNIT_RULE, units)
          : [
              {
                code: 'domain-out-of-order',
                rule,
                slot,
                given,
                mend: mend('range-up'),
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
            mend: mend('sayable'),
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
    .map((given) => ({ code: 'unknown-name', rule, slot, given, mend: mend('tag-words', `<${namedIn}> {=${given}}`) }));
}

const namesIn = (phrase: Phrase | undefined, book: RuleBook): readonly string[] =>
  phrase ? [...tagsIn(phrase), ...rulesIn(phrase).flatMap((name) => namesIn(book.rules.get(name), book))] : [];
