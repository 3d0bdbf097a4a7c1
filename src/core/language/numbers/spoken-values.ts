import { assertNever } from '../../result';
import type { Phrase } from '../grammar';
import { readTag } from '../tags';
import { type Lookup, layoutsOf, type Size } from './layouts';

/**
 * Every number from 0 to `most` that a phrase can say, rising, without repeats. Nothing said counts as 0, so that an
 * optional part of a sum is one more value. `decimals` bounds the digits after a point.
 */
export function spokenValues(phrase: Phrase, size: Size, rule: Lookup): readonly number[] {
  return [...valuesOf(phrase, size, rule)].filter((value) => value <= size.most).sort((a, b) => a - b);
}

/** The number of digits that all values of a phrase have, or undefined where they differ. Looks at whole values below 1000. */
export function digitsOf(phrase: Phrase, rule: Lookup): number | undefined {
  const widths = new Set(spokenValues(phrase, { most: 999, decimals: 0 }, rule).map((value) => String(value).length));
  const [width, ...others] = widths;
  return others.length === 0 ? width : undefined;
}

type Values = ReadonlySet<number>;
const NOTHING_SAID: Values = new Set([0]);

function valuesOf(phrase: Phrase, size: Size, rule: Lookup): Values {
  switch (phrase.kind) {
    case 'word':
    case 'null':
      return NOTHING_SAID;
    case 'void':
      return new Set();
    case 'rule':
      return valuesOf(rule(phrase.name), size, rule);
    case 'oneOf':
      return new Set(phrase.parts.flatMap((part) => [...valuesOf(part, size, rule)]));
    case 'optional':
      return new Set([0, ...valuesOf(phrase.part, size, rule)]);
    case 'seq':
      return sums(
        phrase.parts.map((part) => valuesOf(part, size, rule)),
        size.most,
      );
    case 'repeat':
      return valuesOf(phrase.part, size, rule);
    case 'tagged':
      return taggedValues(phrase.part, phrase.tag, size, rule);
    default:
      return assertNever(phrase);
  }
}

function taggedValues(part: Phrase, text: string, size: Size, rule: Lookup): Values {
  const scaled = (by: number): Values => {
    const inside = valuesOf(part, { ...size, most: size.most / by }, rule);
    return new Set([...inside].map((value) => value * by));
  };
  const tag = readTag(text);
  switch (tag?.kind) {
    case 'number':
      return new Set([tag.value]);
    case 'times':
      return scaled(tag.by);
    case 'over':
      return scaled(1 / tag.by);
    case 'sum':
      return valuesOf(part, size, rule);
    case 'join':
      return joinedValues(part, size, rule);
    case 'point':
    case 'name':
    case 'slot':
    case undefined:
      return NOTHING_SAID;
    default:
      return assertNever(tag);
  }
}

function joinedValues(part: Phrase, size: Size, rule: Lookup): Values {
  const layouts = layoutsOf(part, size, (inner) => digitsOf(inner, rule), rule);
  const values = layouts.map((places) => {
    const valued = places.filter((place) => place.factor > 0);
    const inside = valued.map(({ phrase, factor }) =>
      [...valuesOf(phrase, { ...size, most: size.most / factor }, rule)].map((value) => value * factor),
    );
    return sums(inside, size.most);
  });
  return new Set(values.flatMap((set) => [...set]));
}

/** All sums with one value from each, up to `most`. */
function sums(all: readonly Iterable<number>[], most: number): Values {
  return all.reduce<Values>((totals, values) => {
    const next = new Set<number>();
    for (const total of totals) for (const value of values) if (total + value <= most) next.add(total + value);
    return next;
  }, NOTHING_SAID);
}
