import type { FromVoiceWorker, ToVoiceWorker } from './flite/messages';
import type { VoiceFailure } from './mouth';

/** A running worker, as little of it as is needed here. */
export type WorkerHandle = { readonly post: (message: ToVoiceWorker) => void; readonly terminate: () => void };

export type Spawn = (hear: (message: FromVoiceWorker) => void, died: (detail: string) => void) => WorkerHandle;

export type KeeperEvent =
  | { readonly type: 'ready' }
  | { readonly type: 'answer'; readonly answer: Extract<FromVoiceWorker, { readonly id: number }> }
  /** The worker is gone. `forGood`: it failed too often in a row and gets a rest before the next try. */
  | { readonly type: 'lost'; readonly failure: VoiceFailure; readonly forGood: boolean };

/** A render takes a tenth of a second; a worker that misses this many beats in a row is hung or gone. */
const BEAT_MS = 1500;
const MISSED_BEATS = 2;
const RESTART_AFTER_MS: readonly number[] = [0, 250, 1000, 4000];
const REST_MS = 60_000;

/** Keeps one voice worker alive: loads it, listens for its pulse, and starts another, a few times, when it dies. */
export class WorkerKeeper {
  readonly #spawn: Spawn;
  readonly #url: string;
  readonly #tell: (event: KeeperEvent) => void;
  #worker: WorkerHandle | null = null;
  /** Has said something; until then its script may still be on the way, and silence means nothing. */
  #awake = false;
  #ready = false;
  #losses = 0;
  #missed = 0;
  #beat: ReturnType<typeof setInterval> | undefined;
  #restart: ReturnType<typeof setTimeout> | undefined;
  #resting: VoiceFailure | null = null;

  constructor(spawn: Spawn, url: string, tell: (event: KeeperEvent) => void) {
    this.#spawn = spawn;
    this.#url = url;
    this.#tell = tell;
  }

  get ready(): boolean {
    return this.#ready;
  }

  /** Why nothing can be rendered for now, if that is so. */
  get resting(): VoiceFailure | null {
    return this.#resting;
  }

  /** Starts the worker unless it runs, is about to, or rests. */
  start(): void {
    if (this.#worker !== null || this.#restart !== undefined) return;
    let current: WorkerHandle | null = null;
    const mine = (): boolean => current === null || current === this.#worker;
    const hear = (message: FromVoiceWorker): void => {
      if (mine()) this.#hear(message);
    };
    const died = (detail: string): void => {
      if (mine()) this.#lose({ code: 'voice-crashed', detail });
    };
    current = this.#spawn(hear, died);
    this.#worker = current;
    this.#awake = false;
    this.#missed = 0;
    this.#beat = setInterval(() => this.#listen(), BEAT_MS);
    current.post({ type: 'load', url: this.#url });
  }

  post(message: ToVoiceWorker): void {
    this.#worker?.post(message);
  }

  close(): void {
    this.#drop();
    clearTimeout(this.#restart);
  }

  #hear(message: FromVoiceWorker): void {
    this.#awake = true;
    this.#missed = 0;
    switch (message.type) {
      case 'pong':
        return;
      case 'ready':
        this.#ready = true;
        this.#tell({ type: 'ready' });
        return;
      case 'load-failed':
        this.#lose({ code: 'voice-missing', detail: `${message.code}: ${message.detail}` });
        return;
      case 'rendered':
      case 'failed':
        this.#losses = 0;
        this.#tell({ type: 'answer', answer: message });
        return;
    }
  }

  #listen(): void {
    if (this.#missed >= MISSED_BEATS) {
      this.#lose({ code: 'voice-silent', detail: `no answer for ${MISSED_BEATS * BEAT_MS} ms` });
      return;
    }
    if (this.#awake) this.#missed++;
    this.post({ type: 'ping' });
  }

  #lose(failure: VoiceFailure): void {
    this.#drop();
    const delayMs = RESTART_AFTER_MS[this.#losses];
    this.#losses++;
    if (delayMs === undefined) this.#resting = failure;
    this.#restart = setTimeout(() => this.#again(), delayMs ?? REST_MS);
    this.#tell({ type: 'lost', failure, forGood: delayMs === undefined });
  }

  /** After a rest nothing starts by itself: the next request may try. */
  #again(): void {
    this.#restart = undefined;
    if (this.#resting === null) {
      this.start();
      return;
    }
    this.#resting = null;
    this.#losses = 0;
  }

  #drop(): void {
    clearInterval(this.#beat);
    this.#worker?.terminate();
    this.#worker = null;
    this.#ready = false;
  }
}
