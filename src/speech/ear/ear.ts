import type { LiveGrammar } from '../../core/language/grammar';
import type { RecogniserEvent } from '../../core/ports';
import { type ArmedGrammar, armedFor, type EarLanguage, stopsOnly } from './armed-grammar';
import { Decoder } from './decoder';
import { Denoiser } from './denoiser';
import { EarlyAnswer, waitFrames } from './early-answer';
import { EAR_FRAME, EAR_HZ, type EarFrame, FrontEnd } from './front-end';
import { type Level, LevelMeter } from './level-meter';
import type { Lexicon, Mute } from './messages';
import { Recognition } from './recognition';
import { SpeechGate } from './speech-gate';
import { ENGINE, FEATURES, GATE, TIMING, WET } from './thresholds';
import { mixed, Utterance } from './utterance';

/** What differs between a browser worker and Node. */
export type EarHost = {
  /** The folder that holds the model folders: absolute, with a trailing slash. */
  readonly modelBase: string;
  readonly denoiserWasm: () => Promise<ArrayBuffer>;
  readonly language: EarLanguage;
  readonly decoys: readonly string[];
};

type Listening = { readonly utterance: Utterance; readonly early: EarlyAnswer; partial: string };

/**
 * The whole ear: blocks of sound in, recogniser events out. It has no clock, thread or device of its own, so the
 * worker and the command line run the same code on the same samples to the same answers.
 */
export class Ear {
  readonly #host: EarHost;
  readonly #gate = new SpeechGate(GATE);
  #decoder: Decoder | null = null;
  #denoiser: Denoiser | null = null;
  #frontEnd: FrontEnd | null = null;
  #meter = new LevelMeter();
  #sampleRate = EAR_HZ;
  #recognition: Recognition | null = null;
  #live: LiveGrammar | null = null;
  #pending: ArmedGrammar | null = null;
  #mute: Mute | 'open' = 'open';
  #deafUntil = 0;
  #frame = 0;
  #preRoll: EarFrame[] = [];
  #listening: Listening | null = null;

  constructor(host: EarHost) {
    this.#host = host;
  }

  /** Loads model and denoiser; `msToLoad` is left 0, since the ear has no clock. */
  async load(lexicon: Lexicon): Promise<readonly RecogniserEvent[]> {
    const loaded = await Decoder.load(this.#host.modelBase, ENGINE, FEATURES);
    if (!loaded.ok) return [{ type: 'failed', ...loaded.error }];
    const refused = loaded.value.addWords(lexicon);
    if (refused.length > 0) return [{ type: 'failed', code: 'model-broken', detail: `lexicon: ${refused.join(', ')}` }];
    try {
      this.#denoiser = await Denoiser.create(await this.#host.denoiserWasm());
    } catch (error) {
      return [{ type: 'failed', code: 'model-missing', detail: `denoiser: ${String(error)}` }];
    }
    this.#decoder = loaded.value;
    return [{ type: 'ready', msToLoad: 0 }, ...this.#armPending()];
  }

  /** A microphone has opened: everything learned about the last one is forgotten, and its first half second thrown away. */
  async listen(sampleRate: number): Promise<void> {
    if (!this.#denoiser || !this.#decoder) return;
    this.#abandon();
    this.#denoiser.reset();
    this.#frontEnd = new FrontEnd(this.#denoiser, sampleRate);
    this.#meter = new LevelMeter();
    this.#sampleRate = sampleRate;
    this.#frame = 0;
    this.#deafUntil = TIMING.opening;
    await this.#decoder.reset();
  }

  arm(live: LiveGrammar): readonly RecogniserEvent[] {
    this.#live = live;
    return this.armWith(this.#armed(live));
  }

  /** Arms a grammar that is not the product's: the benchmark's door. */
  armWith(grammar: ArmedGrammar): readonly RecogniserEvent[] {
    this.#pending = grammar;
    return this.#listening ? [] : this.#armPending();
  }

  mute(mute: Mute): readonly RecogniserEvent[] {
    this.#mute = mute;
    this.#abandon();
    return this.#rearm();
  }

  /** Deaf for a short tail more: rooms ring. */
  unmute(): readonly RecogniserEvent[] {
    if (this.#mute === 'open') return [];
    this.#mute = 'open';
    this.#deafUntil = this.#frame + TIMING.afterMute;
    this.#abandon();
    return this.#rearm();
  }

  push(block: Float32Array): readonly RecogniserEvent[] {
    return (this.#frontEnd?.push(block) ?? []).flatMap((frame) => this.#hear(frame));
  }

  #hear(frame: EarFrame): readonly RecogniserEvent[] {
    const level = this.#meter.push(frame.raw);
    const meter: RecogniserEvent[] = this.#frame % TIMING.levelEvery === 0 ? [{ type: 'level', ...level }] : [];
    const events = this.#deaf() ? [] : this.#attend(frame, level);
    this.#frame += 1;
    return [...meter, ...events];
  }

  #deaf(): boolean {
    return this.#mute === 'deaf' || this.#frame < this.#deafUntil || !this.#recognition;
  }

  #attend(frame: EarFrame, level: Level): readonly RecogniserEvent[] {
    const recognition = this.#recognition;
    const listening = this.#listening;
    if (!recognition) return [];
    if (!listening) {
      if (this.#gate.push(frame.voice, level, TIMING.waitOpen) === 'opened') this.#open(frame, level);
      else this.#preRoll = [...this.#preRoll.slice(1 - TIMING.preRoll), frame];
      return [];
    }
    const { utterance, early } = listening;
    this.#take(frame, level, utterance);
    const partial = recognition.partial();
    const edge = this.#gate.push(frame.voice, level, waitFrames(partial, recognition.grammar.numbers));
    const done =
      edge === 'closed' ||
      utterance.frames >= TIMING.longest ||
      early.mayAnswer(utterance.frames, this.#gate.silentFrames, partial);
    return done ? this.#close(utterance) : this.#partial(listening, partial.words);
  }

  #open(frame: EarFrame, level: Level): void {
    const utterance = new Utterance(this.#frame - this.#preRoll.length);
    this.#listening = { utterance, early: new EarlyAnswer(), partial: '' };
    this.#recognition?.begin();
    for (const earlier of [...this.#preRoll, frame]) this.#take(earlier, level, utterance);
    this.#preRoll = [];
  }

  #take(frame: EarFrame, level: Level, utterance: Utterance): void {
    const samples = mixed(frame, WET);
    utterance.push(samples, level);
    this.#recognition?.feed(samples);
  }

  #partial(listening: Listening, words: string): readonly RecogniserEvent[] {
    if (listening.partial === words || listening.utterance.frames % TIMING.partialEvery !== 0) return [];
    listening.partial = words;
    return [{ type: 'partial', revision: this.#recognition?.grammar.revision ?? '', words }];
  }

  #close(utterance: Utterance): readonly RecogniserEvent[] {
    const recognition = this.#recognition;
    this.#listening = null;
    this.#gate.reset();
    if (!recognition) return [];
    const outcome = recognition.finish(utterance);
    const { revision } = recognition.grammar;
    const span = { startFrame: this.#native(utterance.startFrame), endFrame: this.#native(utterance.endFrame) };
    const { words, score } = outcome;
    const event: RecogniserEvent = outcome.heard
      ? { type: 'heard', revision, words, score, ...span }
      : { type: 'rejected', revision, words, score, why: outcome.why, ...span };
    return [event, ...this.#armPending()];
  }

  /** Drops what is being said without a word: the voice has begun to speak, or the microphone changed. */
  #abandon(): void {
    if (this.#listening) this.#recognition?.abandon();
    this.#listening = null;
    this.#preRoll = [];
    this.#gate.reset();
  }

  #armed(live: LiveGrammar): ArmedGrammar {
    const audible = this.#mute === 'stop-only' ? stopsOnly(live) : live;
    return armedFor(audible, this.#host.language, this.#host.decoys);
  }

  #rearm(): readonly RecogniserEvent[] {
    return this.#live ? this.armWith(this.#armed(this.#live)) : [];
  }

  #armPending(): readonly RecogniserEvent[] {
    if (!this.#decoder || !this.#pending) return [];
    const next = new Recognition(this.#decoder, this.#pending);
    this.#pending = null;
    const armed = next.arm();
    if (!armed.ok) return [{ type: 'failed', code: 'grammar-refused', detail: armed.error }];
    this.#recognition = next;
    return [{ type: 'armed', revision: next.grammar.revision }];
  }

  #native(frame: number): number {
    return Math.round((frame * EAR_FRAME * this.#sampleRate) / EAR_HZ);
  }
}
