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

/** One phrase for many sequences: what they begin with alike is said once, and the rest is left open after it. */
export function sharingStarts(sequences: readonly (readonly Phrase[])[]): Phrase {
  const groups = new Map<string, { readonly first: Phrase; readonly rests: (readonly Phrase[])[] }>();
  for (const [first, ...rest] of sequences) {
    if (!first || isNothing(first)) continue;
    const key = JSON.stringify(first);
    const group = groups.get(key) ?? { first, rests: [] };
    group.rests.push(rest);
    groups.set(key, group);
  }
  return oneOf(
    [...groups.values()].map(({ first, rests }) => {
      const longer = rests.filter((rest) => rest.length > 0);
      if (longer.length === 0) return first;
      const after = sharingStarts(longer);
      return seq([first, longer.length < rests.length ? optional(after) : after]);
    }),
  );
}
