import type { RejectReason } from '../../core/ports';
import type { Result } from '../../core/result';
import type { ArmedGrammar, Sense } from './armed-grammar';
import { commandWords, type Decoder, type Hypothesis } from './decoder';
import { isFiller } from './filler';
import { EAR_FRAME } from './front-end';
import type { SearchGraph } from './fsg';
import { LoneStop } from './lone-stop';
import { type Evidence, judge } from './rejection';
import { leadOf } from './runner-up';
import type { Tuning } from './tuning';
import type { Utterance } from './utterance';

/** The ear's last word on an utterance. */
export type Outcome =
  | { readonly heard: true; readonly words: string; readonly score: number }
  | { readonly heard: false; readonly words: string; readonly score: number; readonly why: RejectReason };

/** The words of an unfinished utterance; `extendable` says whether a legal sentence goes on from them. */
export type PartialWords = { readonly words: string; readonly sense: Sense; readonly extendable: boolean };

type Command = Extract<Sense, { readonly kind: 'command' }>;

/** What a verdict was made of, for whoever measures the ear. */
export type Observer = (words: string, evidence: Evidence) => void;

const NOTHING_YET: PartialWords = { words: '', sense: { kind: 'nothing', why: 'no-path' }, extendable: true };

/** One grammar's worth of listening: decodes utterances and decides what each was. */
export class Recognition {
  readonly grammar: ArmedGrammar;
  readonly #decoder: Decoder;
  readonly #search: SearchGraph;
  readonly #tuning: Tuning;
  readonly #observe: Observer;
  readonly #loneStop: LoneStop | null;
  #partial: PartialWords = NOTHING_YET;
  /** Whether the engine searches this grammar; a verdict leaves another search behind. */
  #isInForce = false;

  constructor(decoder: Decoder, grammar: ArmedGrammar, decoys: readonly string[], tuning: Tuning, observe: Observer) {
    this.grammar = grammar;
    this.#decoder = decoder;
    this.#search = { commands: grammar.graph, decoys, filler: tuning.filler };
    this.#tuning = tuning;
    this.#observe = observe;
    const stop = [...(grammar.graph.states[0]?.next.keys() ?? [])].find((word) => this.#isStop(word));
    this.#loneStop = stop === undefined ? null : new LoneStop(decoder, stop, tuning);
  }

  /** Puts the grammar into the engine; on failure the one before stays in force. */
  arm(): Result<void, string> {
    const armed = this.#decoder.search(this.#search);
    this.#isInForce = armed.ok;
    return armed;
  }

  begin(): void {
    // Not at the end of the verdict: whoever spoke waits for that, and mostly another grammar follows it.
    if (!this.#isInForce) this.arm();
    this.#partial = NOTHING_YET;
    this.#decoder.begin();
  }

  feed(samples: Float32Array): void {
    this.#decoder.feed(samples);
  }

  /** The words so far, none while the filler leads, and what they would mean if they were all. May be taken back. */
  partial(): PartialWords {
    const found = this.#decoder.partial();
    const words = isFiller(found) ? '' : found;
    if (words !== this.#partial.words) {
      const extendable = this.grammar.extendable(words.split(' '));
      this.#partial = { words, sense: this.grammar.senseOf(words), extendable };
    }
    return this.#partial;
  }

  /** Ends an utterance that nobody will answer. */
  abandon(): void {
    this.#decoder.end();
  }

  /**
   * Judges the whole utterance afresh: decoded at once, so that the cepstral mean is its own and not a running guess,
   * and without the quiet around it. With `stopOnly`, while our own voice may be in the sound, nothing but a stop counts.
   */
  finish(utterance: Utterance, stopOnly: boolean): Outcome {
    this.#decoder.end();
    this.#isInForce = false;
    if (utterance.removedDb > this.#tuning.veto.mostRemovedDb) return refused('', 'noise');
    const sound = utterance.trimmed();
    const hypothesis = this.#decoder.decodeWhole(sound);
    const loopScore = this.#loopScore(sound);
    const judged = this.#judge(hypothesis, loopScore, sound, utterance);
    const stop = judged.heard ? null : this.#loneStop?.find(sound, loopScore, utterance);
    const outcome: Outcome = stop ? { heard: true, ...stop } : judged;
    if (stopOnly && outcome.heard && !this.#isStop(outcome.words)) return refused(outcome.words, 'own-voice');
    return outcome;
  }

  #judge(hypothesis: Hypothesis, loopScore: number, sound: Float32Array, utterance: Utterance): Outcome {
    if (hypothesis.words.length === 0) return refused('', 'no-path');
    const words = commandWords(hypothesis);
    if (words === null) return refused('', 'filler');
    const sense = this.grammar.senseOf(words);
    if (sense.kind === 'nothing') return refused(words, sense.why);
    const overLoop = (loopScore - hypothesis.score) / Math.max(1, sound.length / EAR_FRAME);
    const evidence = this.#evidence(hypothesis, sense, overLoop, utterance);
    this.#observe(words, evidence);
    const verdict = judge(evidence, this.#tuning);
    if (verdict.accepted && this.#isTooClose(words, verdict.score, evidence, hypothesis, sound))
      return { heard: false, words, score: 0.5, why: 'ambiguous' };
    return verdict.accepted
      ? { heard: true, words, score: verdict.score }
      : { heard: false, words, score: verdict.score, why: verdict.why };
  }

  /**
   * Whether another command fits nearly as well: then it is better to ask than to guess. The worse the words fit, the
   * further ahead they must be. What is all but certain is not compared, since whoever spoke is waiting; in noise nothing is
   * certain.
   */
  #isTooClose(
    words: string,
    score: number,
    { manner, removedDb }: Evidence,
    hypothesis: Hypothesis,
    sound: Float32Array,
  ): boolean {
    const { leastLead, leadBelow, leadInNoise } = this.#tuning;
    const inQuiet = leastLead[manner] * Math.min(1, (1 - score) / (1 - leadBelow));
    const isNoisy = removedDb > leadInNoise.fromDb && leastLead[manner] > 0;
    const least = isNoisy ? Math.max(leadInNoise.always, leadInNoise.times * inQuiet) : inQuiet;
    return least > 0 && leadOf(words, hypothesis, sound, this.#decoder, this.grammar) < least;
  }

  #isStop(words: string): boolean {
    const sense = this.grammar.senseOf(words);
    return sense.kind === 'command' && sense.manner === 'stop';
  }

  #evidence({ words }: Hypothesis, { manner, hasValue }: Command, overLoop: number, utterance: Utterance): Evidence {
    const frames = total(words, ({ frames }) => frames);
    const voices = words.map(({ startFrame, frames }) => utterance.voiceIn(startFrame, frames));
    const phones = total(words, ({ word }) => this.#decoder.phonesIn(word));
    return {
      manner,
      wordCount: words.length,
      hasValue,
      cost: total(words, ({ costPerFrame, frames }) => costPerFrame * frames) / Math.max(1, frames),
      overLoop,
      voicedFrames: utterance.voicedFrames,
      framesPerPhone: utterance.voicedFrames / Math.max(1, phones),
      snrDb: utterance.snrDb,
      removedDb: utterance.removedDb,
      voice: utterance.voice,
      leastWordVoice: Math.min(...voices.map(({ mean }) => mean)),
      covered: total(voices, ({ voicedFrames }) => voicedFrames) / Math.max(1, utterance.voicedFrames),
    };
  }

  /** How well the sound fits a loop of bare phones: the yardstick for words. */
  #loopScore(sound: Float32Array): number {
    this.#decoder.search({ commands: null, decoys: [], filler: this.#tuning.loop });
    return this.#decoder.decodeWhole(sound).score;
  }
}

const refused = (words: string, why: RejectReason): Outcome => ({ heard: false, words, score: 0, why });

function total<T>(parts: readonly T[], measure: (part: T) => number): number {
  return parts.reduce((sum, part) => sum + measure(part), 0);
}
