import { assertNever } from '../result';
import type { Phrase } from './grammar';

/** Building phrases without the parts that can never be said, so that what is left can always be finished. */

export const VOID: Phrase = { kind: 'void' };
export const isNothing = (phrase: Phrase): boolean => phrase.kind === 'void';

export const word = (text: string): Phrase => ({ kind: 'word', text });

export function seq(parts: readonly Phrase[]): Phrase {
  if (parts.some(isNothing)) return VOID;
  const said = parts.filter((part) => part.kind !== 'null');
  const [only] = said;
  if (!only) return { kind: 'null' };
  return said.length === 1 ? only : { kind: 'seq', parts: said };
}

export function oneOf(parts: readonly Phrase[]): Phrase {
  const open = parts.filter((part) => !isNothing(part));
  const [only] = open;
  if (!only) return VOID;
  return open.length === 1 ? only : { kind: 'oneOf', parts: open };
}

export function optional(part: Phrase): Phrase {
  return isNothing(part) || part.kind === 'null' ? { kind: 'null' } : { kind: 'optional', part };
}

/** The same phrase with other parts inside; what has no parts stays as it is. */
export function withParts(phrase: Phrase, change: (part: Phrase) => Phrase): Phrase {
  switch (phrase.kind) {
    case 'seq':
    case 'oneOf':
      return { ...phrase, parts: phrase.parts.map((part) => change(part)) };
    case 'optional':
    case 'repeat':
    case 'tagged':
      return { ...phrase, part: change(phrase.part) };
    case 'word':
    case 'rule':
    case 'null':
    case 'void':
      return phrase;
    default:
      return assertNever(phrase);
  }
}

/** One phrase for many sequences: what they begin with alike is said once, and the rest is left open after it. */
export const sharingStarts = (sequences: readonly Sequence[]): Phrase => sharing(sequences, 'start');

/** The same for what they end with alike. */
export const sharingEnds = (sequences: readonly Sequence[]): Phrase => sharing(sequences, 'end');

type Sequence = readonly Phrase[];

function sharing(sequences: readonly Sequence[], side: 'start' | 'end'): Phrase {
  const groups = new Map<string, { readonly shared: Phrase; readonly rests: Sequence[] }>();
  for (const sequence of sequences) {
    const shared = sequence.at(side === 'start' ? 0 : -1);
    if (!shared || isNothing(shared)) continue;
    const key = JSON.stringify(shared);
    const group = groups.get(key) ?? { shared, rests: [] };
    group.rests.push(side === 'start' ? sequence.slice(1) : sequence.slice(0, -1));
    groups.set(key, group);
  }
  return oneOf(
    [...groups.values()].map(({ shared, rests }) => {
      const longer = rests.filter((rest) => rest.length > 0);
      if (longer.length === 0) return shared;
      const others = sharing(longer, side);
      const rest = longer.length < rests.length ? optional(others) : others;
      return seq(side === 'start' ? [shared, rest] : [rest, shared]);
    }),
  );
}
