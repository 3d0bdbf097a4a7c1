import { Listeners } from '../core/listeners';
import { type Breath, PLAIN_BREATH } from '../core/phrasing/breath';
import type { Clock, Earcon, SpeechRequest, Voice, VoiceEvent } from '../core/ports';
import { Beeps } from './beeps';
import type { Mouth, Piece, Stop, VoiceFailure } from './mouth';
import { pauseBefore } from './pause';
import { halves, LISTENING_GAP_MS, LONGEST_STRETCH_MS, pieces } from './pieces';
import { asked, begun, finished, hushed, type Queue, SILENT_QUEUE, type Turn } from './queue';
import { SoundGate } from './sound-gate';

/** The longest a person who began to speak keeps us waiting: a recogniser that never answers must not strike us dumb. */
export const LONGEST_HOLD_MS = 4000;

/** The request being said: what is left of it, and the piece at hand, which is first made, then sounded. */
type Talk = {
  readonly request: SpeechRequest;
  rest: readonly string[];
  started: boolean;
  stage: 'waiting' | 'making' | 'sounding';
  made: Piece | null;
  stop: Stop | null;
};

/** A voice over any mouth: takes turns, keeps each stretch under four seconds and leaves gaps to listen in. */
export class Talker implements Voice {
  readonly #mouth: Mouth;
  readonly #clock: Pick<Clock, 'mono'>;
  readonly #listeners = new Listeners<VoiceEvent>();
  readonly #gate: SoundGate;
  readonly #beeps: Beeps;
  #queue: Queue = SILENT_QUEUE;
  #talk: Talk | null = null;
  #stretchMs = 0;
  #heldUntil = Number.NEGATIVE_INFINITY;
  #wake: ReturnType<typeof setTimeout> | undefined;
  #quiet = true;
  readonly on = this.#listeners.add;

  constructor(
    mouth: Mouth,
    clock: Pick<Clock, 'mono'>,
    private readonly breath: Breath = PLAIN_BREATH,
  ) {
    this.#mouth = mouth;
    this.#clock = clock;
    this.#gate = new SoundGate(clock, (event) => {
      this.#listeners.tell(event);
      if (event.type === 'sound-off') this.#advance();
    });
    this.#beeps = new Beeps(mouth, this.#gate);
    mouth.on((event) => this.#listeners.tell(event));
  }

  readonly prepare = (texts: readonly string[]): void => {
    this.#mouth.prepare(texts.flatMap((text) => pieces(text, this.#mouth.rate(), this.breath)));
  };

  readonly say = (request: SpeechRequest): void => {
    this.#quiet = false;
    this.#take(asked(this.#queue, request));
    this.#advance();
  };

  readonly play = (earcon: Earcon): void => {
    this.#quiet = false;
    this.#rested();
    this.#beeps.play(earcon, (failure) => this.#listeners.tell({ type: 'failed', ...failure }));
  };

  readonly hush = (): void => {
    this.#beeps.hush();
    this.#take(hushed(this.#queue));
    this.#advance();
  };

  /** Asked again while it lasts it lasts no longer: a radio in the corner speaks without end. */
  readonly hold = (): void => {
    const now = this.#clock.mono();
    if (now >= this.#heldUntil) this.#heldUntil = now + LONGEST_HOLD_MS;
  };

  readonly resume = (): void => {
    this.#heldUntil = Number.NEGATIVE_INFINITY;
    this.#advance();
  };

  readonly close = (): void => {
    this.hush();
    clearTimeout(this.#wake);
    this.#gate.close();
    this.#listeners.clear();
    this.#mouth.close();
  };

  // Everyone is told after the state has changed: a listener may well ask for more speech, or for silence.

  #take({ queue, cut }: Turn): void {
    const talk = this.#talk;
    this.#queue = queue;
    if (talk !== null && talk.request !== queue.saying) {
      this.#talk = null;
      talk.stop?.();
      if (talk.stage === 'sounding') this.#gate.ended(this.#mouth.tailMs());
    }
    for (const { id } of cut) this.#listeners.tell({ type: 'cut', id });
  }

  /** Does the next thing there is to do, or waits for it. Harmless to call at any time. */
  #advance(): void {
    clearTimeout(this.#wake);
    if (this.#talk === null) this.#turn();
    const talk = this.#talk;
    if (talk === null || talk.stage !== 'waiting') return;
    if (talk.made === null) {
      this.#make(talk);
      return;
    }
    const pauseMs = this.#pauseBefore(talk, talk.made);
    if (pauseMs > 0) this.#wake = setTimeout(() => this.#advance(), pauseMs);
    else this.#sound(talk, talk.made);
  }

  #turn(): void {
    this.#queue = begun(this.#queue);
    const request = this.#queue.saying;
    if (request !== null) {
      const rest = pieces(request.text, this.#mouth.rate(), this.breath);
      this.#talk = { request, rest, started: false, stage: 'waiting', made: null, stop: null };
    } else if (!this.#quiet && !this.#gate.sounding) {
      this.#quiet = true;
      this.#listeners.tell({ type: 'quiet' });
    }
  }

  #make(talk: Talk): void {
    const [text, ...rest] = talk.rest;
    if (text === undefined) {
      this.#finish(talk);
      return;
    }
    talk.stage = 'making';
    void this.#mouth.make(text).then((made) => {
      if (this.#talk !== talk) return;
      talk.stage = 'waiting';
      const smaller = made.ok && made.value.ms > LONGEST_STRETCH_MS ? halves(text, this.breath) : null;
      talk.rest = smaller === null ? rest : [...smaller, ...rest];
      if (!made.ok) this.#fail(talk, made.error);
      else if (smaller === null) talk.made = made.value;
      this.#advance();
    });
  }

  #pauseBefore(talk: Talk, piece: Piece): number {
    this.#rested();
    return pauseBefore({
      priority: talk.request.priority,
      first: !talk.started,
      pieceMs: piece.ms,
      stretchMs: this.#stretchMs,
      silentMs: this.#gate.silentMs(),
      heldMs: this.#heldUntil - this.#clock.mono(),
    });
  }

  /** Where the ear has had its gap a new stretch begins. Asked before anything sounds, since an earcon hides the gap. */
  #rested(): void {
    if (this.#gate.silentMs() >= LISTENING_GAP_MS) this.#stretchMs = 0;
  }

  #sound(talk: Talk, piece: Piece): void {
    talk.made = null;
    talk.stage = 'sounding';
    this.#stretchMs += piece.ms;
    this.#gate.began();
    this.#start(talk);
    if (this.#talk !== talk) return;
    talk.stop = piece.sound((outcome) => {
      if (this.#talk !== talk) return;
      talk.stop = null;
      talk.stage = 'waiting';
      this.#gate.ended(this.#mouth.tailMs());
      if (!outcome.ok) this.#fail(talk, outcome.error);
      this.#advance();
    });
    const [next] = talk.rest;
    // Rendered while this piece sounds; the mouth remembers it.
    if (next !== undefined) void this.#mouth.make(next);
  }

  #start(talk: Talk): void {
    if (talk.started) return;
    talk.started = true;
    this.#listeners.tell({ type: 'started', id: talk.request.id });
  }

  #finish(talk: Talk): void {
    this.#queue = finished(this.#queue);
    this.#talk = null;
    this.#start(talk);
    this.#listeners.tell({ type: 'finished', id: talk.request.id });
    this.#advance();
  }

  /** What could not be said is over: its words are still on the screen. */
  #fail(talk: Talk, failure: VoiceFailure): void {
    this.#queue = finished(this.#queue);
    this.#talk = null;
    this.#listeners.tell({ type: 'failed', ...failure });
    this.#listeners.tell({ type: 'cut', id: talk.request.id });
  }
}
