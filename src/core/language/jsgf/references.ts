import { assertNever } from '../../result';
import type { Phrase } from '../grammar';

/** The rules a phrase refers to, each once. */
export const rulesIn = (phrase: Phrase): readonly string[] => [
  ...new Set(all(phrase).flatMap((part) => (part.kind === 'rule' ? [part.name] : []))),
];

/** The tags in a phrase. */
export const tagsIn = (phrase: Phrase): readonly string[] =>
  all(phrase).flatMap((part) => (part.kind === 'tagged' ? [part.tag] : []));

/** A phrase and everything inside it, references not followed. */
export function all(phrase: Phrase): readonly Phrase[] {
  return [phrase, ...inside(phrase).flatMap(all)];
}

/** The rules that may come first, before any word: what makes a rule left-recursive. */
export function rulesAtStart(phrase: Phrase, rules: ReadonlyMap<string, Phrase>): readonly string[] {
  switch (phrase.kind) {
    case 'rule':
      return [phrase.name];
    case 'seq': {
      const firstSaid = phrase.parts.findIndex((part) => !canBeSilent(part, rules, new Set()));
      const reachable = firstSaid === -1 ? phrase.parts : phrase.parts.slice(0, firstSaid + 1);
      return reachable.flatMap((part) => rulesAtStart(part, rules));
    }
    case 'word':
    case 'null':
    case 'void':
    case 'oneOf':
    case 'optional':
    case 'repeat':
    case 'tagged':
      return inside(phrase).flatMap((part) => rulesAtStart(part, rules));
    default:
      return assertNever(phrase);
  }
}

function canBeSilent(phrase: Phrase, rules: ReadonlyMap<string, Phrase>, open: ReadonlySet<string>): boolean {
  switch (phrase.kind) {
    case 'null':
    case 'optional':
      return true;
    case 'word':
    case 'void':
      return false;
    case 'seq':
      return phrase.parts.every((part) => canBeSilent(part, rules, open));
    case 'oneOf':
      return phrase.parts.some((part) => canBeSilent(part, rules, open));
    case 'repeat':
      return phrase.least === 0 || canBeSilent(phrase.part, rules, open);
    case 'tagged':
      return canBeSilent(phrase.part, rules, open);
    case 'rule': {
      const target = open.has(phrase.name) ? undefined : rules.get(phrase.name);
      return target !== undefined && canBeSilent(target, rules, new Set([...open, phrase.name]));
    }
    default:
      return assertNever(phrase);
  }
}

function inside(phrase: Phrase): readonly Phrase[] {
  switch (phrase.kind) {
    case 'seq':
    case 'oneOf':
      return phrase.parts;
    case 'optional':
    case 'repeat':
    case 'tagged':
      return [phrase.part];
    case 'word':
    case 'rule':
    case 'null':
    case 'void':
      return [];
    default:
      return assertNever(phrase);
  }
}
