import { assertNever } from '../result';
import type { Phrase } from './grammar';
import { type Piece, readTag, summed, tagged } from './tags';

/** One way of saying a phrase and what it comes to, made from the grammar itself and not by reading the words. */
export type Sentence = {
  readonly words: readonly string[];
  readonly pieces: readonly Piece[];
  readonly slots: Readonly<Record<string, readonly Piece[]>>;
};

type Lookup = (name: string) => Phrase;

/** Repetitions are said at most this often. */
const ROUNDS = 2;

/** How many sentences a phrase has, different derivations of the same words counted each. */
export function sentenceCount(phrase: Phrase, rule: Lookup): number {
  switch (phrase.kind) {
    case 'word':
    case 'null':
      return 1;
    case 'void':
      return 0;
    case 'seq':
      return phrase.parts.reduce((count, part) => count * sentenceCount(part, rule), 1);
    case 'oneOf':
      return phrase.parts.reduce((count, part) => count + sentenceCount(part, rule), 0);
    case 'optional':
      return 1 + sentenceCount(phrase.part, rule);
    case 'repeat':
      return rounds(phrase.least).reduce((count, round) => count + sentenceCount(phrase.part, rule) ** round, 0);
    case 'tagged':
      return sentenceCount(phrase.part, rule);
    case 'rule':
      return sentenceCount(rule(phrase.name), rule);
    default:
      return assertNever(phrase);
  }
}

/**
 * The sentence with a number from 0 to `sentenceCount` - 1. Number 0 takes the first alternative everywhere and
 * leaves out what is optional; the first part of a sequence changes fastest.
 */
export function sentenceAt(phrase: Phrase, index: number, rule: Lookup): Sentence {
  switch (phrase.kind) {
    case 'word':
      return { ...SILENCE, words: [phrase.text] };
    case 'null':
    case 'void':
      return SILENCE;
    case 'seq':
      return inTurn(phrase.parts, index, rule);
    case 'oneOf':
      return fromChoices(phrase.parts, index, rule);
    case 'optional':
      return fromChoices([{ kind: 'null' }, phrase.part], index, rule);
    case 'repeat':
      return fromChoices(
        rounds(phrase.least).map((round) => ({ kind: 'seq', parts: Array.from({ length: round }, () => phrase.part) })),
        index,
        rule,
      );
    case 'tagged': {
      const inside = sentenceAt(phrase.part, index, rule);
      const tag = readTag(phrase.tag);
      if (tag?.kind === 'slot') return { words: inside.words, pieces: [], slots: { [tag.name]: inside.pieces } };
      return tag ? { ...inside, pieces: tagged(tag, inside.pieces) } : inside;
    }
    case 'rule': {
      const inside = sentenceAt(rule(phrase.name), index, rule);
      return { ...inside, pieces: summed(inside.pieces) };
    }
    default:
      return assertNever(phrase);
  }
}

const SILENCE: Sentence = { words: [], pieces: [], slots: {} };

const rounds = (least: 0 | 1): readonly number[] =>
  Array.from({ length: ROUNDS - least + 1 }, (_, round) => round + least);

function inTurn(parts: readonly Phrase[], index: number, rule: Lookup): Sentence {
  let left = index;
  let all = SILENCE;
  for (const part of parts) {
    const count = sentenceCount(part, rule);
    const next = sentenceAt(part, left % count, rule);
    left = Math.floor(left / count);
    all = {
      words: [...all.words, ...next.words],
      pieces: [...all.pieces, ...next.pieces],
      slots: { ...all.slots, ...next.slots },
    };
  }
  return all;
}

function fromChoices(choices: readonly Phrase[], index: number, rule: Lookup): Sentence {
  let left = index;
  for (const choice of choices) {
    const count = sentenceCount(choice, rule);
    if (left < count) return sentenceAt(choice, left, rule);
    left -= count;
  }
  return SILENCE;
}
