import { assertNever, fail, ok, type Result } from '../result';
import type { LiveCommand, LiveGrammar, Offer, Phrase, RuleBook, SlotDomain } from './grammar';
import { rulesIn } from './jsgf/references';
import { type OfferIssue, offerIssues } from './offer-issues';
import { isNothing, oneOf, optional, seq, VOID } from './phrase';
import { anyPhrase, NUMBER_RULE, slotPhrase } from './slots';
import { slotTag } from './tags';

/**
 * The grammar of what makes sense now: only the rules offered, their slots filled from the domains. A command whose
 * slot has nothing to say (no loose ends) is left out. The result is plain data and refers to nothing outside itself.
 */
export function liveGrammar(
  book: RuleBook,
  offers: readonly Offer[],
  revision: string,
): Result<LiveGrammar, readonly OfferIssue[]> {
  const issues = offerIssues(book, offers);
  if (issues.length > 0) return fail(issues);
  const parts = new Parts(book);
  const commands = offers.map((offer): LiveCommand => ({ ...offer, phrase: parts.command(offer) }));
  return ok({ revision, commands: commands.filter((command) => !isNothing(command.phrase)), parts: parts.all() });
}

/** Collects the rules that live commands need; a slot with another domain than the last of its name is a part of its own. */
class Parts {
  private readonly parts = new Map<string, Phrase>();
  private readonly slots = new Map<string, string>();

  /** The numbers come along always: typed figures are read with them. */
  constructor(private readonly book: RuleBook) {
    this.reach({ kind: 'rule', name: NUMBER_RULE });
  }

  all(): Readonly<Record<string, Phrase>> {
    return Object.fromEntries(this.parts);
  }

  command(offer: Offer): Phrase {
    for (const [slot, domain] of Object.entries(offer.slots)) this.reach(anyPhrase(slot, domain));
    return this.filled(this.book.rules.get(offer.rule) ?? VOID, offer.slots);
  }

  private filled(phrase: Phrase, slots: Offer['slots']): Phrase {
    switch (phrase.kind) {
      case 'seq':
        return seq(phrase.parts.map((part) => this.filled(part, slots)));
      case 'oneOf': {
        const filled = phrase.parts.map((part) => this.filled(part, slots));
        return phrase.weights && !filled.some(isNothing) ? { ...phrase, parts: filled } : oneOf(filled);
      }
      case 'optional':
        return optional(this.filled(phrase.part, slots));
      case 'repeat':
      case 'tagged': {
        const part = this.filled(phrase.part, slots);
        return isNothing(part) ? VOID : { ...phrase, part };
      }
      case 'rule': {
        const domain = slots[phrase.name];
        if (domain) return this.slot(phrase.name, domain);
        this.reach(phrase);
        return phrase;
      }
      case 'word':
      case 'null':
      case 'void':
        return phrase;
      default:
        return assertNever(phrase);
    }
  }

  private slot(slot: string, domain: SlotDomain): Phrase {
    const key = `${slot} ${JSON.stringify(domain)}`;
    let name = this.slots.get(key);
    if (name === undefined) {
      const phrase = slotPhrase(slot, domain, this.book);
      if (isNothing(phrase)) return VOID;
      name = this.freeName(slot);
      this.slots.set(key, name);
      this.parts.set(name, phrase);
    }
    return { kind: 'tagged', part: { kind: 'rule', name }, tag: slotTag(slot) };
  }

  /** A slot may be called like a rule of the book, as `unit` is; the part then takes a number too. */
  private freeName(slot: string): string {
    for (let count = 1; ; count += 1) {
      const name = `${slot}-${count}`;
      if (!this.parts.has(name) && !this.book.rules.has(name)) return name;
    }
  }

  private reach(phrase: Phrase): void {
    for (const name of rulesIn(phrase)) {
      const target = this.book.rules.get(name);
      if (!target || this.parts.has(name)) continue;
      this.parts.set(name, target);
      this.reach(target);
    }
  }
}
