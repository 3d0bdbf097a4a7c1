import { assertNever } from '../../result';
import type { Phrase } from '../grammar';
import { readTag } from '../tags';

/** Looks up a rule; a rule that is not there can never be said. */
export type Lookup = (name: string) => Phrase;

/** One part of a number said digit by digit, and what its value counts for: 100, 1, 0.01; 0 for words without a value. */
export type Place = { readonly phrase: Phrase; readonly factor: number };

export type Size = { readonly most: number; readonly decimals: number };

/** The number of digits a part always has, or undefined where its values differ in length. */
type WidthOf = (phrase: Phrase) => number | undefined;

/**
 * The ways a joined phrase can be laid out in digits for numbers up to `most`: "one six five" is one of three digits,
 * "one sixty five" is one digit and a part two digits wide. Longer numbers than `most` has digits, and more digits
 * after the point than `decimals`, are left out.
 */
export function layoutsOf(
  phrase: Phrase,
  { most, decimals }: Size,
  widthOf: WidthOf,
  rule: Lookup,
): readonly (readonly Place[])[] {
  const digits = String(Math.floor(most)).length;
  return expanded(phrase, digits + decimals + 1).flatMap((parts) => {
    const point = parts.findIndex((part) => isPoint(part, rule));
    const whole = wholePlaces(point === -1 ? parts : parts.slice(0, point), digits, widthOf);
    const fraction = fractionPlaces(point === -1 ? [] : parts.slice(point), decimals, widthOf);
    return whole && fraction ? [[...whole, ...fraction]] : [];
  });
}

/** The first part may be of any width: "one hundred" point "five". The rest must each have one. */
function wholePlaces(parts: readonly Phrase[], digits: number, widthOf: WidthOf): readonly Place[] | undefined {
  const places: Place[] = [];
  let behind = 0;
  for (const [index, phrase] of [...parts.entries()].reverse()) {
    places.unshift({ phrase, factor: phrase.kind === 'word' ? 0 : 10 ** behind });
    const width = index === 0 ? 0 : widthIn(phrase, widthOf);
    if (width === undefined) return undefined;
    behind += width;
  }
  return behind < digits ? places : undefined;
}

function fractionPlaces(parts: readonly Phrase[], decimals: number, widthOf: WidthOf): readonly Place[] | undefined {
  const [point, ...fraction] = parts;
  if (!point) return [];
  const places: Place[] = [{ phrase: point, factor: 0 }];
  let digits = 0;
  for (const phrase of fraction) {
    const width = widthIn(phrase, widthOf);
    if (width === undefined) return undefined;
    digits += width;
    // A division: 1 / 100 is nearer to 0.01 than 10 ** -2 need be.
    places.push({ phrase, factor: phrase.kind === 'word' ? 0 : 1 / 10 ** digits });
  }
  return digits >= 1 && digits <= decimals ? places : undefined;
}

const widthIn = (phrase: Phrase, widthOf: WidthOf): number | undefined =>
  phrase.kind === 'word' ? 0 : widthOf(phrase);

function isPoint(phrase: Phrase, rule: Lookup): boolean {
  if (phrase.kind === 'rule') return isPoint(rule(phrase.name), rule);
  if (phrase.kind === 'oneOf') return phrase.parts.every((part) => isPoint(part, rule));
  return phrase.kind === 'tagged' && readTag(phrase.tag)?.kind === 'point';
}

/** All sequences of single parts, no longer than `longest`. */
function expanded(phrase: Phrase, longest: number): readonly (readonly Phrase[])[] {
  switch (phrase.kind) {
    case 'seq':
      return phrase.parts.reduce<readonly (readonly Phrase[])[]>(
        (heads, part) => crossed(heads, expanded(part, longest), longest),
        [[]],
      );
    case 'optional':
      return [[], ...expanded(phrase.part, longest)];
    case 'repeat': {
      const once = expanded(phrase.part, longest).filter((parts) => parts.length > 0);
      const all: (readonly Phrase[])[] = phrase.least === 0 ? [[]] : [];
      for (let round = [...once]; round.length > 0; round = crossed(round, once, longest)) all.push(...round);
      return all;
    }
    case 'oneOf':
      return phrase.parts.every(isSingle) ? [[phrase]] : phrase.parts.flatMap((part) => expanded(part, longest));
    case 'null':
      return [[]];
    case 'void':
      return [];
    case 'word':
    case 'rule':
    case 'tagged':
      return [[phrase]];
    default:
      return assertNever(phrase);
  }
}

function crossed(
  heads: readonly (readonly Phrase[])[],
  tails: readonly (readonly Phrase[])[],
  longest: number,
): (readonly Phrase[])[] {
  return heads.flatMap((head) => tails.map((tail) => [...head, ...tail])).filter((parts) => parts.length <= longest);
}

/** Says one number at most, so that it keeps its place in a sum or a layout as it is. */
export function isSingle(phrase: Phrase): boolean {
  switch (phrase.kind) {
    case 'rule':
    case 'word':
    case 'tagged':
      return true;
    case 'oneOf':
      return phrase.parts.every(isSingle);
    case 'seq':
    case 'optional':
    case 'repeat':
    case 'null':
    case 'void':
      return false;
    default:
      return assertNever(phrase);
  }
}
