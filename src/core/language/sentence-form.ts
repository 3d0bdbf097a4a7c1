import { assertNever } from '../result';
import type { LiveCommand, LiveGrammar, Phrase, SlotDomain } from './grammar';
import { all } from './jsgf/references';
import { VOID } from './phrase';
import { sentenceAt } from './sentences';
import { readTag } from './tags';

/** A place in a sentence that is filled by hand: with a number and perhaps its unit, or with one of a few things. */
export type Blank =
  | {
      readonly kind: 'number';
      readonly slot: string;
      /** Digits behind the point, at most. */
      readonly decimals: number;
      /** The units that make sense, the one that is meant without a word first, each with its words. */
      readonly units: readonly Choice[];
      readonly isUnitNeeded: boolean;
    }
  | { readonly kind: 'choice'; readonly slot: string; readonly choices: readonly Choice[] };

type Choice = { readonly id: string; readonly words: string };

/** A sentence to be filled in, in order. One without a blank is complete as it stands. */
export type SentenceForm = readonly (string | Blank)[];

/** The first way of saying a command, without what is optional, its slots left open. */
export function sentenceForm(live: LiveGrammar, command: LiveCommand): SentenceForm {
  return joined(partsOf(command.phrase, live, command.slots));
}

function partsOf(phrase: Phrase, live: LiveGrammar, slots: LiveCommand['slots']): SentenceForm {
  switch (phrase.kind) {
    case 'word':
      return [phrase.text];
    case 'seq':
      return phrase.parts.flatMap((part) => partsOf(part, live, slots));
    case 'oneOf':
      return partsOf(phrase.parts[0] ?? VOID, live, slots);
    case 'repeat':
      return phrase.least === 0 ? [] : partsOf(phrase.part, live, slots);
    case 'tagged': {
      const tag = readTag(phrase.tag);
      const domain = tag?.kind === 'slot' ? slots[tag.name] : undefined;
      return tag?.kind === 'slot' && domain
        ? [blankOf(tag.name, domain, phrase.part, live)]
        : partsOf(phrase.part, live, slots);
    }
    case 'rule':
      return partsOf(live.parts[phrase.name] ?? VOID, live, slots);
    case 'optional':
    case 'null':
    case 'void':
      return [];
    default:
      return assertNever(phrase);
  }
}

function blankOf(slot: string, domain: SlotDomain, filled: Phrase, live: LiveGrammar): Blank {
  switch (domain.kind) {
    case 'integers':
      return { kind: 'number', slot, decimals: 0, units: [], isUnitNeeded: false };
    case 'reading': {
      const scales = [domain, ...(domain.also ?? [])];
      const named = namedIn(filled, live);
      const units = scales.flatMap((scale) => scale.units).flatMap((id) => named.find((one) => one.id === id) ?? []);
      const decimals = Math.max(...scales.map((scale) => scale.decimals));
      return { kind: 'number', slot, decimals, units, isUnitNeeded: domain.unitNeeded };
    }
    case 'named':
      return { kind: 'choice', slot, choices: namedIn(filled, live) };
    case 'options':
      return { kind: 'choice', slot, choices: domain.options.map(({ id, say }) => ({ id, words: say[0] ?? id })) };
    default:
      return assertNever(domain);
  }
}

/** What a phrase names, each once, in its first words. */
function namedIn(phrase: Phrase, live: LiveGrammar): readonly Choice[] {
  const whole = phrase.kind === 'rule' ? (live.parts[phrase.name] ?? VOID) : phrase;
  const found = new Map<string, Choice>();
  for (const part of all(whole)) {
    const tag = part.kind === 'tagged' ? readTag(part.tag) : undefined;
    if (tag?.kind !== 'name' || found.has(tag.id)) continue;
    const { words } = sentenceAt(part, 0, (name) => live.parts[name] ?? VOID);
    found.set(tag.id, { id: tag.id, words: words.join(' ') });
  }
  return [...found.values()];
}

function joined(parts: SentenceForm): SentenceForm {
  const whole: (string | Blank)[] = [];
  for (const part of parts) {
    const last = whole.at(-1);
    if (typeof part === 'string' && typeof last === 'string') whole[whole.length - 1] = `${last} ${part}`;
    else whole.push(part);
  }
  return whole;
}
