import { assertNever } from '../result';
import type { Phrase } from './grammar';
import { type Piece, readTag, summed, tagged } from './tags';

/** One way in which words from some place on fit a phrase: where it ends and what it comes to. */
export type Found = {
  readonly end: number;
  readonly pieces: readonly Piece[];
  readonly slots: Readonly<Record<string, readonly Piece[]>>;
};

/** What stands for a slot: the phrase of its live domain, or any number. */
export type SlotView = (slot: string, live: Phrase) => Phrase;

/**
 * Finds every way in which the words fit a phrase, memoised by rule and place. `wantsMore` tells afterwards whether
 * some way used up all words and could have gone on: phrases have no parts that cannot be finished.
 */
export class Matcher {
  wantsMore = false;
  private readonly known = new Map<string, readonly Found[]>();

  constructor(
    private readonly parts: Readonly<Record<string, Phrase>>,
    private readonly words: readonly string[],
    private readonly view: SlotView,
  ) {}

  match(phrase: Phrase, at: number): readonly Found[] {
    switch (phrase.kind) {
      case 'word':
        if (at === this.words.length) this.wantsMore = true;
        return this.words[at] === phrase.text ? [{ ...EMPTY, end: at + 1 }] : [];
      case 'seq':
        return phrase.parts.reduce<readonly Found[]>(
          (heads, part) =>
            distinct(heads.flatMap((head) => this.match(part, head.end).map((tail) => after(head, tail)))),
          [{ ...EMPTY, end: at }],
        );
      case 'oneOf':
        return distinct(phrase.parts.flatMap((part) => this.match(part, at)));
      case 'optional':
        return distinct([{ ...EMPTY, end: at }, ...this.match(phrase.part, at)]);
      case 'repeat':
        return this.repeated(phrase.part, phrase.least, at);
      case 'tagged':
        return this.tagged(phrase.part, phrase.tag, at);
      case 'rule':
        return this.rule(phrase.name, at);
      case 'null':
        return [{ ...EMPTY, end: at }];
      case 'void':
        return [];
      default:
        return assertNever(phrase);
    }
  }

  private repeated(part: Phrase, least: 0 | 1, at: number): readonly Found[] {
    const all: Found[] = least === 0 ? [{ ...EMPTY, end: at }] : [];
    let round = this.match(part, at);
    while (round.length > 0) {
      all.push(...round);
      // A round that takes no word would go on for ever.
      round = distinct(
        round.flatMap((head) =>
          this.match(part, head.end)
            .filter((tail) => tail.end > head.end)
            .map((tail) => after(head, tail)),
        ),
      );
    }
    return distinct(all);
  }

  private tagged(part: Phrase, text: string, at: number): readonly Found[] {
    const tag = readTag(text);
    if (tag?.kind === 'slot') {
      const found = this.match(this.view(tag.name, part), at);
      return found.map(({ end, pieces }) => ({ end, pieces: [], slots: { [tag.name]: pieces } }));
    }
    return this.match(part, at).map((found) => (tag ? { ...found, pieces: tagged(tag, found.pieces) } : found));
  }

  private rule(name: string, at: number): readonly Found[] {
    const key = `${at} ${name}`;
    const known = this.known.get(key);
    if (known) return known;
    const target = this.parts[name];
    const found = target ? distinct(this.match(target, at).map((one) => ({ ...one, pieces: summed(one.pieces) }))) : [];
    this.known.set(key, found);
    return found;
  }
}

const EMPTY = { pieces: [], slots: {} } as const;

const after = (head: Found, tail: Found): Found => ({
  end: tail.end,
  pieces: [...head.pieces, ...tail.pieces],
  slots: { ...head.slots, ...tail.slots },
});

function distinct(all: readonly Found[]): readonly Found[] {
  if (all.length < 2) return all;
  return [...new Map(all.map((found) => [JSON.stringify(found), found])).values()];
}
