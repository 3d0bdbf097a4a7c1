import { assertNever } from '../../result';
import type { Phrase } from '../grammar';
import { isNothing, oneOf, optional, seq, sharingStarts, VOID } from '../phrase';
import { readTag, type Tag } from '../tags';
import { isSingle, type Lookup, layoutsOf, type Place } from './layouts';
import { has, isEmpty, keyOf, largest, type NumberSet, remaining, setOf, spread, wholes } from './number-set';
import { digitsOf, spokenValues } from './spoken-values';

/**
 * The part of a number phrase that says the numbers of a set, with its tags, as one phrase without references.
 *
 * Numbers that go on alike share their tails ("one | two" before "sixty five"), as in the smallest automaton of the
 * set: the recogniser's graph stays small where a list of all numbers would not. Of a wide set with decimals only the
 * whole part is held to the set, and any fraction may follow; the reader of the words must hold the rest.
 */
export function restricted(phrase: Phrase, set: NumberSet, rule: Lookup): Phrase {
  return new Restriction(rule, set.decimals, set.decimals > 0 && spread(set) >= WIDE).within(phrase, set);
}

/** A set this wide has too many different ends for exact fractions to be worth their size. */
const WIDE = 10;

class Restriction {
  private readonly widths = new Map<Phrase, number | undefined>();
  private readonly known = new Map<Phrase, Map<number, readonly number[]>>();

  constructor(
    private readonly rule: Lookup,
    private readonly decimals: number,
    private readonly isLoose: boolean,
  ) {}

  within(phrase: Phrase, set: NumberSet): Phrase {
    if (isEmpty(set)) return VOID;
    switch (phrase.kind) {
      case 'word':
      case 'null':
        return has(set, 0) ? phrase : VOID;
      case 'void':
        return VOID;
      case 'rule': {
        const inside = this.within(this.rule(phrase.name), set);
        return isNothing(inside) || isSingle(inside) ? inside : { kind: 'tagged', part: inside, tag: 'sum' };
      }
      case 'oneOf':
        return oneOf(phrase.parts.map((part) => this.within(part, set)));
      case 'optional': {
        const inside = this.within(phrase.part, set);
        return has(set, 0) ? optional(inside) : inside;
      }
      case 'seq':
        return this.sum(
          phrase.parts.map((part) => ({ phrase: part, factor: 1 })),
          set,
        );
      case 'repeat':
        // Outside a join a repeated number has no bounded sum; the grammar tests see to it that there is none.
        return this.within(phrase.part, set);
      case 'tagged': {
        const tag = readTag(phrase.tag);
        return tag ? this.tagged(phrase.part, phrase.tag, tag, set) : VOID;
      }
      default:
        return assertNever(phrase);
    }
  }

  private tagged(part: Phrase, text: string, tag: Tag, set: NumberSet): Phrase {
    const again = (inside: Phrase): Phrase => (isNothing(inside) ? VOID : { kind: 'tagged', part: inside, tag: text });
    switch (tag.kind) {
      case 'number':
        return has(set, tag.value) ? { kind: 'tagged', part, tag: text } : VOID;
      case 'times':
        return again(this.scaled(part, tag.by, set));
      case 'over':
        return again(this.scaled(part, 1 / tag.by, set));
      case 'sum':
        return again(this.within(part, set));
      case 'join':
        return again(this.joined(part, set));
      case 'point':
      case 'name':
      case 'slot':
        return has(set, 0) ? { kind: 'tagged', part, tag: text } : VOID;
      default:
        return assertNever(tag);
    }
  }

  private joined(part: Phrase, set: NumberSet): Phrase {
    const size = { most: largest(set), decimals: this.decimals };
    const layouts = layoutsOf(part, size, (inner) => this.widthOf(inner), this.rule);
    if (!this.isLoose) return oneOf(layouts.map((places) => this.sum(places, set)));
    const whole = wholes(set);
    return sharingStarts(
      layouts.map((places) => {
        const point = places.findIndex((place) => place.factor < 1 && place.phrase.kind !== 'word');
        const [before, after] = point === -1 ? [places, []] : [places.slice(0, point), places.slice(point)];
        return [this.sum(before, whole), ...after.map((place) => place.phrase)];
      }),
    );
  }

  /** The values of a part, times a factor, that lie in a set. Values inside may be off the grid: half of one. */
  private scaled(part: Phrase, factor: number, set: NumberSet): Phrase {
    if (factor === 1) return this.within(part, set);
    const fitting = this.values(part, largest(set) / factor).filter((value) => has(set, value * factor));
    return this.within(part, setOf(fitting, this.decimals));
  }

  private sum(places: readonly Place[], set: NumberSet): Phrase {
    const [first, ...rest] = places;
    if (!first) return has(set, 0) ? { kind: 'null' } : VOID;
    if (first.factor === 0) return seq([first.phrase, this.sum(rest, set)]);
    if (rest.length === 0) return this.scaled(first.phrase, first.factor, set);
    return oneOf(
      this.shared(first, rest, set).map(({ values, left }) =>
        seq([this.within(first.phrase, setOf(values, this.decimals)), this.sum(rest, left)]),
      ),
    );
  }

  /** The values of the first part, put together where the same is left to say after them. */
  private shared(first: Place, rest: readonly Place[], set: NumberSet) {
    const most = largest(set);
    const top = rest.reduce((sum, place) => sum + this.largestOf(place, most), 0);
    const groups = new Map<string, { readonly values: number[]; readonly left: NumberSet }>();
    for (const value of this.values(first.phrase, most / first.factor)) {
      const left = remaining(set, value * first.factor, 0, top);
      const key = keyOf(left);
      const group = groups.get(key);
      if (group) group.values.push(value);
      else if (!isEmpty(left)) groups.set(key, { values: [value], left });
    }
    return [...groups.values()];
  }

  private largestOf({ phrase, factor }: Place, most: number): number {
    if (factor === 0) return 0;
    return (this.values(phrase, most / factor).at(-1) ?? 0) * factor;
  }

  private values(phrase: Phrase, most: number): readonly number[] {
    const known = this.known.get(phrase)?.get(most);
    if (known) return known;
    const values = spokenValues(phrase, { most, decimals: this.decimals }, this.rule);
    this.known.set(phrase, new Map([...(this.known.get(phrase) ?? []), [most, values]]));
    return values;
  }

  private widthOf(phrase: Phrase): number | undefined {
    if (!this.widths.has(phrase)) this.widths.set(phrase, digitsOf(phrase, this.rule));
    return this.widths.get(phrase);
  }
}
