import type { RejectReason } from '../../core/ports';
import type { Result } from '../../core/result';
import type { ArmedGrammar, Sense } from './armed-grammar';
import { commandWords, type Decoder, type HeardWord, type Hypothesis } from './decoder';
import { FILLER_WORDS, isFiller } from './filler';
import { EAR_FRAME } from './front-end';
import { type Evidence, judge } from './rejection';
import { FILLER } from './thresholds';
import type { Utterance } from './utterance';

/** The ear's last word on an utterance. */
export type Outcome =
  | { readonly heard: true; readonly words: string; readonly score: number }
  | { readonly heard: false; readonly words: string; readonly score: number; readonly why: RejectReason };

/** The words of an unfinished utterance; `extendable` says whether a legal sentence goes on from them. */
export type Partial = { readonly words: string; readonly sense: Sense; readonly extendable: boolean };

const NOTHING_YET: Partial = { words: '', sense: { kind: 'nothing', why: 'no-path' }, extendable: true };

const PHONE_LOOP = `#JSGF V1.0; grammar loop; public <loop> = (${FILLER_WORDS.join(' | ')})+;`;

/** One grammar's worth of listening: decodes utterances and decides what each was. */
export class Recognition {
  readonly #decoder: Decoder;
  readonly grammar: ArmedGrammar;
  #partial: Partial = NOTHING_YET;

  constructor(decoder: Decoder, grammar: ArmedGrammar) {
    this.#decoder = decoder;
    this.grammar = grammar;
  }

  /** Puts the grammar into the engine; on failure the one before stays in force. */
  arm(): Result<void, string> {
    return this.#decoder.setGrammar(this.grammar.jsgf(FILLER.weight));
  }

  begin(): void {
    this.#partial = NOTHING_YET;
    this.#decoder.begin();
  }

  feed(samples: Float32Array): void {
    this.#decoder.feed(samples);
  }

  /** The words so far, none while the filler leads, and what they would mean if they were all. May be taken back. */
  partial(): Partial {
    const found = this.#decoder.partial();
    const words = isFiller(found) ? '' : found;
    if (words !== this.#partial.words) {
      this.#partial = { words, sense: this.grammar.senseOf(words), extendable: this.grammar.extendable(words) };
    }
    return this.#partial;
  }

  /** Ends an utterance that nobody will answer. */
  abandon(): void {
    this.#decoder.end();
  }

  finish(utterance: Utterance): Outcome {
    const hypothesis = this.#decoder.end();
    const refused = (words: string, why: RejectReason): Outcome => ({ heard: false, words, score: 0, why });
    if (hypothesis.words.length === 0) return refused('', 'no-path');
    const words = commandWords(hypothesis);
    if (words === null) return refused('', 'filler');
    const sense = this.grammar.senseOf(words);
    if (sense.kind === 'nothing') return refused(words, sense.why);
    const verdict = judge(this.#evidence(hypothesis, words, sense, utterance));
    return verdict.accepted
      ? { heard: true, words, score: verdict.score }
      : { heard: false, words, score: verdict.score, why: verdict.why };
  }

  #evidence(
    hypothesis: Hypothesis,
    words: string,
    { manner }: Extract<Sense, { kind: 'command' }>,
    utterance: Utterance,
  ): Evidence {
    const spoken = hypothesis.words;
    const frames = total(spoken, ({ frames }) => frames);
    const phones = total(spoken, ({ word }) => this.#decoder.phonesIn(word));
    return {
      manner,
      wordCount: spoken.length,
      cost: total(spoken, ({ costPerFrame, frames }) => costPerFrame * frames) / Math.max(1, frames),
      worstWord: Math.max(...spoken.map(({ costPerFrame }) => costPerFrame)),
      ...this.#secondLook(words, utterance),
      framesPerPhone: frames / Math.max(1, phones),
      longestWord: Math.max(...spoken.map(({ frames }) => frames)),
      snrDb: utterance.snrDb,
    };
  }

  /** Decodes the buffered sound again: with the filler made stronger, and with nothing but a phone loop. */
  #secondLook(words: string, utterance: Utterance): { readonly agrees: boolean; readonly overLoop: number } {
    const samples = utterance.samples();
    this.#decoder.setGrammar(this.grammar.jsgf(FILLER.second));
    const second = this.#decoder.decodeWhole(samples);
    this.#decoder.setGrammar(PHONE_LOOP);
    const loop = this.#decoder.decodeWhole(samples);
    this.arm();
    return {
      agrees: commandWords(second) === words,
      overLoop: (loop.score - second.score) / Math.max(1, samples.length / EAR_FRAME),
    };
  }
}

function total(words: readonly HeardWord[], measure: (word: HeardWord) => number): number {
  return words.reduce((sum, word) => sum + measure(word), 0);
}
