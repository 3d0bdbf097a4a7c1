import type { LiveGrammar } from '../../core/language/grammar';
import type { RecogniserEvent } from '../../core/ports';
import type { After } from '../../store/log-writer';
import type { MicrophoneCheck, NoiseCheck } from '../../ui/setup/listening-setup';
import { loudness, TOO_LOUD_DB } from '../ear-screen';
import type { SharedEar } from '../sound/shared-ear';

const MICROPHONE_MS = 10_000;
const NOISE_MS = 5000;
/** Loading the ear may come on top. */
const PATIENCE_MS = 20_000;
/** Louder than this a voice is heard only close to the microphone. */
const LOUD_DB = -42;
/** A level that never rises so far above its floor, in dB, is nobody speaking. */
const SPEECH_DB = 6;

type CheckParts = {
  readonly ear: SharedEar;
  readonly after: After;
  /** A few harmless words to try. */
  readonly grammar: () => LiveGrammar;
  readonly changed: () => void;
};

/** The two checks of Setup: does the microphone give words, and does the place leave room for them. */
export class SoundChecks {
  microphone: MicrophoneCheck = { state: 'unchecked' };
  noise: NoiseCheck = { state: 'unchecked' };
  #end: (() => void) | null = null;

  constructor(private readonly parts: CheckParts) {}

  checkMicrophone(): void {
    let isUnclear = false;
    let isSpoken = false;
    this.microphone = { state: 'checking', level: 0 };
    const over = this.#listen((event) => {
      if (event.type === 'heard') finish({ state: 'heard', words: event.words });
      else if (event.type === 'rejected') isUnclear = true;
      else if (event.type === 'failed') finish(failed(event.code));
      else if (event.type === 'level') {
        isSpoken ||= event.db > event.floorDb + SPEECH_DB;
        this.microphone = { state: 'checking', level: loudness(event.db) };
        this.parts.changed();
      }
    });
    const finish = (found: MicrophoneCheck): void => {
      cancel();
      over();
      this.microphone = found;
      this.parts.changed();
    };
    const cancel = this.parts.after(MICROPHONE_MS, () =>
      finish({ state: isUnclear || isSpoken ? 'unclear' : 'silent' }),
    );
  }

  checkNoise(): void {
    const heard: number[] = [];
    let cancel = this.parts.after(PATIENCE_MS, () => finish());
    this.noise = { state: 'measuring', level: 0 };
    const over = this.#listen((event) => {
      if (event.type === 'failed') this.microphone = failed(event.code);
      if (event.type === 'failed') finish();
      if (event.type !== 'level') return;
      if (heard.length === 0) {
        cancel();
        cancel = this.parts.after(NOISE_MS, () => finish());
      }
      heard.push(event.db);
      this.noise = { state: 'measuring', level: loudness(event.db) };
      this.parts.changed();
    });
    const finish = (): void => {
      cancel();
      over();
      this.noise = verdict(heard);
      this.parts.changed();
    };
  }

  /** One check at a time has the ear. */
  #listen(listener: (event: RecogniserEvent) => void): () => void {
    this.#end?.();
    let isOver = false;
    const giveBack = this.parts.ear.borrow(this.parts.grammar(), (event) => {
      if (!isOver) listener(event);
    });
    const end = (): void => {
      isOver = true;
      giveBack();
    };
    this.#end = end;
    return end;
  }
}

const failed = (code: string): MicrophoneCheck => ({ state: code === 'microphone-refused' ? 'refused' : 'silent' });

/** The level that is reached half the time, against what a voice can rise above. */
function verdict(heard: readonly number[]): NoiseCheck {
  const db = heard.toSorted((a, b) => a - b)[Math.floor(heard.length / 2)];
  if (db === undefined) return { state: 'unchecked' };
  return { state: db > TOO_LOUD_DB ? 'too-loud' : db > LOUD_DB ? 'loud' : 'quiet', db };
}
