import { assertNever } from '../result';
import type { LiveGrammar, Phrase } from './grammar';
import { isNothing, oneOf, optional, seq, VOID } from './phrase';
import { vocabulary } from './vocabulary';

/**
 * A live grammar without the sentences that need a word the recogniser cannot pronounce, and those words. One strange
 * word in a document would otherwise make the recogniser refuse the whole grammar, "stop" included.
 */
export function withKnownWords(
  live: LiveGrammar,
  isKnown: (word: string) => boolean,
): { readonly live: LiveGrammar; readonly unknown: readonly string[] } {
  const phrases = [...live.commands.map((command) => command.phrase), ...Object.values(live.parts)];
  const unknown = new Set(phrases.flatMap(vocabulary).filter((word) => !isKnown(word)));
  if (unknown.size === 0) return { live, unknown: [] };
  const kept = new Map<string, Phrase>();
  const keptPart = (name: string): Phrase => {
    const known = kept.get(name);
    if (known) return known;
    // Rules do not come back to themselves, so this ends.
    const part = without(live.parts[name] ?? VOID, unknown, keptPart);
    kept.set(name, part);
    return part;
  };
  const parts = Object.fromEntries(Object.keys(live.parts).map((name) => [name, keptPart(name)]));
  const commands = live.commands
    .map((command) => ({ ...command, phrase: without(command.phrase, unknown, keptPart) }))
    .filter((command) => !isNothing(command.phrase));
  return { live: { ...live, commands, parts }, unknown: [...unknown] };
}

function without(phrase: Phrase, unknown: ReadonlySet<string>, part: (name: string) => Phrase): Phrase {
  switch (phrase.kind) {
    case 'word':
      return unknown.has(phrase.text) ? VOID : phrase;
    case 'seq':
      return seq(phrase.parts.map((inside) => without(inside, unknown, part)));
    case 'oneOf': {
      const parts = phrase.parts.map((inside) => without(inside, unknown, part));
      return phrase.weights && !parts.some(isNothing) ? { ...phrase, parts } : oneOf(parts);
    }
    case 'optional':
      return optional(without(phrase.part, unknown, part));
    case 'repeat': {
      const inside = without(phrase.part, unknown, part);
      if (isNothing(inside)) return phrase.least === 0 ? { kind: 'null' } : VOID;
      return { ...phrase, part: inside };
    }
    case 'tagged': {
      const inside = without(phrase.part, unknown, part);
      return isNothing(inside) ? VOID : { ...phrase, part: inside };
    }
    case 'rule':
      return isNothing(part(phrase.name)) ? VOID : phrase;
    case 'null':
    case 'void':
      return phrase;
    default:
      return assertNever(phrase);
  }
}
