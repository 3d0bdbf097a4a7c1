import type { LiveGrammar, Manner } from '../../core/language/grammar';
import { interpret } from '../../core/language/interpret';
import { type WordGraph, wordGraph } from '../../core/language/word-graph';
import type { RejectReason } from '../../core/ports';

/** What some words are worth to the ear: how dearly they must be heard, or why they are nothing. */
export type Sense =
  | {
      readonly kind: 'command';
      readonly manner: Manner;
      /** Whether it holds a reading, which people speak with pauses; and whether it holds any number, name or choice at all. */
      readonly number: boolean;
      readonly hasValue: boolean;
    }
  | { readonly kind: 'nothing'; readonly why: RejectReason };

/** A live grammar in the ear's own terms: where words lead, and what whole sentences are worth. */
export class ArmedGrammar {
  readonly graph: WordGraph;
  /** Whether readings can be said here, which people speak with pauses. */
  readonly hasReadings: boolean;
  readonly #live: LiveGrammar;
  readonly #decoys: ReadonlySet<string>;

  constructor(live: LiveGrammar, decoys: readonly string[]) {
    this.#live = live;
    this.#decoys = new Set(decoys);
    this.graph = wordGraph(live);
    this.hasReadings = live.commands.some(({ slots }) => Object.values(slots).some(({ kind }) => kind === 'reading'));
  }

  get revision(): string {
    return this.#live.revision;
  }

  /** Whether some legal sentence begins with these words and goes on. */
  extendable(words: readonly string[]): boolean {
    let at: number | undefined = 0;
    for (const word of words) at = at === undefined ? at : this.graph.states[at]?.next.get(word);
    return at !== undefined && (this.graph.states[at]?.next.size ?? 0) > 0;
  }

  /** Whether two sentences come to the same command with the same values. */
  sameMeaning(one: string, other: string): boolean {
    return JSON.stringify(interpret(this.#live, one)) === JSON.stringify(interpret(this.#live, other));
  }

  senseOf(words: string): Sense {
    const meaning = interpret(this.#live, words);
    switch (meaning.kind) {
      case 'command': {
        const values = Object.values(meaning.slots);
        const number = values.some(({ kind }) => kind === 'reading');
        return { kind: 'command', manner: meaning.manner, number, hasValue: values.length > 0 };
      }
      // The app can say why not ("there is no bolt forty"), but must be as sure as of a real one.
      case 'almost':
        return { kind: 'command', manner: 'progress', number: true, hasValue: true };
      case 'ambiguous':
        return { kind: 'nothing', why: 'ambiguous' };
      case 'nothing':
        return { kind: 'nothing', why: this.#decoys.has(words) ? 'decoy' : 'not-a-command' };
    }
  }
}
