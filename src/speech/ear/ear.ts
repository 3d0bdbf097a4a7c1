import type { LiveGrammar } from '../../core/language/grammar';
import { withKnownWords } from '../../core/language/known-words';
import type { RecogniserEvent } from '../../core/ports';
import { fail, type Result } from '../../core/result';
import type { Lesson, LineHeard } from '../../core/voice-profile/reading-aloud';
import type { HearingAid } from '../../core/voice-profile/voice-profile';
import type { ModelFile } from './adapting/acoustics';
import { adaptedMeans } from './adapting/aided';
import { Reading } from './adapting/reading';
import { ArmedGrammar } from './armed-grammar';
import { Decoder } from './decoder';
import { Denoiser } from './denoiser';
import { EarlyAnswer, waitFrames } from './early-answer';
import { EAR_FRAME, EAR_HZ, type EarFrame, FrontEnd } from './front-end';
import { type Level, LevelMeter } from './level-meter';
import type { EarLanguage, Mute } from './messages';
import { type Observer, Recognition } from './recognition';
import { SpeechGate } from './speech-gate';
import { aidedTuning, TUNING, type Tuning } from './tuning';
import { mixed, Utterance } from './utterance';

/** What differs between a browser worker and Node. */
export type EarHost = {
  /** The folder that holds the model folders: absolute, with a trailing slash. */
  readonly modelBase: string;
  readonly denoiserWasm: () => Promise<ArrayBuffer>;
  /** A file of a model folder, from its address; fails as the host's own reading does. */
  readonly modelFile: (address: string) => Promise<Uint8Array>;
};

type Listening = { readonly utterance: Utterance; readonly early: EarlyAnswer; partial: string };

/**
 * The whole ear: blocks of sound in, recogniser events out. It has no clock, thread or device of its own, so the
 * worker and the command line run the same code on the same samples to the same answers.
 */
export class Ear {
  readonly #host: EarHost;
  #tuning: Tuning;
  readonly #observe: Observer;
  readonly #gate: SpeechGate;
  #decoder: Decoder | null = null;
  #denoiser: Denoiser | null = null;
  #frontEnd: FrontEnd | null = null;
  #meter = new LevelMeter();
  #sampleRate = EAR_HZ;
  #recognition: Recognition | null = null;
  #pending: LiveGrammar | null = null;
  /** Words that were reported as beyond pronouncing: once is enough. */
  readonly #unpronounced = new Set<string>();
  #mute: Mute | 'open' = 'open';
  #deafUntil = 0;
  #frame = 0;
  #preRoll: EarFrame[] = [];
  #listening: Listening | null = null;
  #keepsSound = false;
  #folder = '';
  #stray: readonly string[] = [];
  #isAided = false;
  #reading: Reading | null = null;

  constructor(host: EarHost, tuning: Tuning = TUNING, observe: Observer = () => undefined) {
    this.#host = host;
    this.#tuning = tuning;
    this.#observe = observe;
    this.#gate = new SpeechGate(tuning.gate);
  }

  /** Loads model and denoiser; `msToLoad` is left 0, since the ear has no clock. A profile that cannot be used is left aside. */
  async load(
    { model, lexicon, stray }: EarLanguage,
    aid: HearingAid | null = null,
  ): Promise<readonly RecogniserEvent[]> {
    this.#folder = model.folder;
    const adapted = aid && (await adaptedMeans(aid, model.folder, this.#file));
    this.#isAided = adapted !== null;
    if (adapted) this.#tuning = aidedTuning(this.#tuning);
    const loaded = await Decoder.load(this.#host.modelBase, model, this.#tuning.engine, this.#tuning.features, adapted);
    if (!loaded.ok) return [{ type: 'failed', ...loaded.error }];
    const refused = loaded.value.addWords(lexicon);
    if (refused.length > 0) return [{ type: 'failed', code: 'model-broken', detail: `lexicon: ${refused.join(', ')}` }];
    try {
      this.#denoiser = await Denoiser.create(await this.#host.denoiserWasm());
    } catch (error) {
      return [{ type: 'failed', code: 'model-missing', detail: `denoiser: ${String(error)}` }];
    }
    this.#decoder = loaded.value;
    this.#reading = new Reading(loaded.value, { folder: model.folder, file: this.#file }, this.#tuning);
    this.#stray = stray.filter((word) => loaded.value.knows(word));
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
    this.#deafUntil = this.#tuning.timing.opening;
    await this.#decoder.reset();
  }

  /** Takes effect at once, or at the end of the utterance being heard. */
  arm(live: LiveGrammar): readonly RecogniserEvent[] {
    this.#pending = live;
    return this.#listening || this.#reading?.isOn ? [] : this.#armPending();
  }

  /** `stop-only` still listens with the whole grammar, so that other words are not bent into a stop. */
  mute(mute: Mute): readonly RecogniserEvent[] {
    this.#mute = mute;
    this.#abandon();
    return this.#armPending();
  }

  /** Deaf for a short tail more: rooms ring. */
  unmute(): readonly RecogniserEvent[] {
    if (this.#mute === 'open') return [];
    this.#mute = 'open';
    this.#deafUntil = this.#frame + this.#tuning.timing.afterMute;
    this.#abandon();
    this.#gate.ignoreSpeaker(this.#tuning.timing.ignoreAtMost);
    return this.#armPending();
  }

  /** From now on answers carry the sound they were made from, or no longer do. */
  keepSound(keep: boolean): void {
    this.#keepsSound = keep;
  }

  /** Whether it listens with a person's profile. */
  get isAided(): boolean {
    return this.#isAided;
  }

  /** From now on a line is waited for instead of a command, and `tell` hears what became of it. */
  async read(words: readonly string[], tell: (line: LineHeard) => void): Promise<Result<void, string>> {
    const begun = await this.#reading?.read(words, tell);
    if (begun?.ok) this.#abandon();
    return begun ?? fail('the ear is not there yet');
  }

  /** What the lines have taught so far; null while none was waited for, or too few were good. */
  learn(): Lesson | null {
    return this.#reading?.learn() ?? null;
  }

  /** Back to commands. */
  endReading(): readonly RecogniserEvent[] {
    this.#reading?.end();
    this.#recognition?.arm();
    return this.#armPending();
  }

  push(block: Float32Array): readonly RecogniserEvent[] {
    return (this.#frontEnd?.push(block) ?? []).flatMap((frame) => this.#hear(frame));
  }

  #hear(frame: EarFrame): readonly RecogniserEvent[] {
    const level = this.#meter.push(frame.raw);
    const meter: RecogniserEvent[] =
      this.#frame % this.#tuning.timing.levelEvery === 0 ? [{ type: 'level', ...level }] : [];
    const events = this.#deaf() ? [] : this.#attend(frame, level);
    this.#frame += 1;
    return [...meter, ...events];
  }

  #deaf(): boolean {
    const isIdle = !this.#recognition && !this.#reading?.isOn;
    return this.#mute === 'deaf' || this.#frame < this.#deafUntil || isIdle;
  }

  #attend(frame: EarFrame, level: Level): readonly RecogniserEvent[] {
    const recognition = this.#recognition;
    const listening = this.#listening;
    if (this.#reading?.isOn) this.#reading.push(frame, level);
    if (!recognition || this.#reading?.isOn) return [];
    if (!listening) {
      if (this.#gate.push(frame, level, this.#tuning.timing.waitOpen) === 'opened') this.#open(frame, level);
      else this.#preRoll = [...this.#preRoll.slice(1 - this.#tuning.timing.preRoll), frame];
      return [];
    }
    const { utterance, early } = listening;
    this.#take(frame, level, utterance);
    const partial = recognition.partial();
    const edge = this.#gate.push(
      frame,
      level,
      waitFrames(partial, recognition.grammar.hasReadings, this.#tuning.timing),
    );
    const done =
      edge === 'closed' ||
      utterance.frames >= this.#tuning.timing.longest ||
      early.mayAnswer(utterance.frames, this.#gate.silentFrames, partial);
    return done ? this.#close(utterance) : this.#partial(listening, partial.words);
  }

  readonly #file: ModelFile = (name) => this.#host.modelFile(`${this.#host.modelBase}${this.#folder}/${name}`);

  #open(frame: EarFrame, level: Level): void {
    const utterance = new Utterance(this.#frame - this.#preRoll.length, this.#tuning.trim);
    this.#listening = { utterance, early: new EarlyAnswer(this.#tuning.timing), partial: '' };
    this.#recognition?.begin();
    for (const earlier of [...this.#preRoll, frame]) this.#take(earlier, level, utterance);
    this.#preRoll = [];
  }

  #take(frame: EarFrame, level: Level, utterance: Utterance): void {
    const samples = mixed(frame, this.#tuning.wet);
    utterance.push(frame, samples, level);
    this.#recognition?.feed(samples);
  }

  #partial(listening: Listening, words: string): readonly RecogniserEvent[] {
    if (listening.partial === words || listening.utterance.frames % this.#tuning.timing.partialEvery !== 0) return [];
    listening.partial = words;
    return [{ type: 'partial', revision: this.#recognition?.grammar.revision ?? '', words }];
  }

  #close(utterance: Utterance): readonly RecogniserEvent[] {
    const recognition = this.#recognition;
    this.#listening = null;
    this.#gate.reset();
    if (!recognition) return [];
    const outcome = recognition.finish(utterance, this.#mute === 'stop-only');
    const { revision } = recognition.grammar;
    const span = { startFrame: this.#native(utterance.startFrame), endFrame: this.#native(utterance.endFrame) };
    const { words, score } = outcome;
    const sound = this.#keepsSound ? { sound: utterance.trimmed() } : {};
    const event: RecogniserEvent = outcome.heard
      ? { type: 'heard', revision, words, score, ...span, ...sound }
      : { type: 'rejected', revision, words, score, why: outcome.why, ...span, ...sound };
    return [event, ...this.#armPending()];
  }

  /** Drops what is being said without a word: the voice has begun to speak, or the microphone changed. */
  #abandon(): void {
    if (this.#listening) this.#recognition?.abandon();
    this.#listening = null;
    this.#preRoll = [];
    this.#gate.reset();
  }

  #armPending(): readonly RecogniserEvent[] {
    const decoder = this.#decoder;
    if (!decoder || !this.#pending) return [];
    const { live, unknown } = withKnownWords(this.#pending, (word) => decoder.knows(word));
    this.#pending = null;
    const grammar = new ArmedGrammar(live, this.#stray);
    const next = new Recognition(decoder, grammar, this.#stray, this.#tuning, this.#observe);
    const armed = next.arm();
    if (!armed.ok) return [{ type: 'failed', code: 'grammar-refused', detail: armed.error }];
    this.#recognition = next;
    return [...this.#complaints(unknown), { type: 'armed', revision: grammar.revision }];
  }

  #complaints(unknown: readonly string[]): readonly RecogniserEvent[] {
    const fresh = unknown.filter((word) => !this.#unpronounced.has(word));
    for (const word of fresh) this.#unpronounced.add(word);
    const detail = `sentences with these words cannot be heard, for want of a pronunciation: ${fresh.join(', ')}`;
    return fresh.length > 0 ? [{ type: 'failed', code: 'grammar-refused', detail }] : [];
  }

  #native(frame: number): number {
    return Math.round((frame * EAR_FRAME * this.#sampleRate) / EAR_HZ);
  }
}
