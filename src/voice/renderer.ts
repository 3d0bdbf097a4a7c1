import { fail, ok, type Result } from '../core/result';
import type { Rendering, Utterance } from './flite/flite';
import type { MouthEvent, VoiceFailure } from './mouth';
import { keyOf } from './rendering-cache';
import { type KeeperEvent, type Spawn, WorkerKeeper } from './worker-keeper';

/** A reply this late is no reply; in milliseconds. Long enough for a worker to be replaced. */
const PATIENCE_MS = 8000;
/** A text that brings the worker down twice is given up, or it would do so for ever. */
const MOST_ATTEMPTS = 2;

type Rendered = Result<Rendering, VoiceFailure>;

type Job = {
  readonly key: string;
  readonly utterance: Utterance;
  readonly promise: Promise<Rendered>;
  readonly settle: (rendered: Rendered) => void;
  wanted: 'now' | 'ahead';
  attempts: number;
};

/** Renders one utterance at a time in the worker, what is wanted now before what may be wanted next. */
export class Renderer {
  readonly #keeper: WorkerKeeper;
  readonly #tell: (event: MouthEvent) => void;
  readonly #jobs = new Map<string, Job>();
  #atWork: { readonly id: number; readonly job: Job } | null = null;
  #lastId = 0;

  constructor(spawn: Spawn, url: string, tell: (event: MouthEvent) => void) {
    this.#tell = tell;
    this.#keeper = new WorkerKeeper(spawn, url, (event) => this.#hear(event));
  }

  /** Loads the synthesiser without rendering anything. */
  start(): void {
    this.#keeper.start();
  }

  render(utterance: Utterance, wanted: 'now' | 'ahead'): Promise<Rendered> {
    const { resting } = this.#keeper;
    if (resting !== null) return Promise.resolve(fail(resting));
    const key = keyOf(utterance);
    const job = this.#jobs.get(key) ?? this.#add(key, utterance);
    if (wanted === 'now' && job.wanted === 'ahead') {
      job.wanted = 'now';
      this.#limitPatience(job);
    }
    this.#keeper.start();
    this.#next();
    return job.promise;
  }

  /** Forgets what was to be rendered ahead, except what the worker has in hand. */
  forgetAhead(): void {
    for (const job of [...this.#jobs.values()]) {
      if (job.wanted === 'ahead' && job !== this.#atWork?.job) {
        this.#settle(job, fail({ code: 'voice-silent', detail: 'no longer wanted' }));
      }
    }
  }

  close(): void {
    this.#keeper.close();
    this.#failAll({ code: 'voice-silent', detail: 'closed' });
  }

  #add(key: string, utterance: Utterance): Job {
    const { promise, resolve } = deferred<Rendered>();
    const job: Job = { key, utterance, promise, settle: resolve, wanted: 'ahead', attempts: 0 };
    this.#jobs.set(key, job);
    return job;
  }

  #limitPatience(job: Job): void {
    const timer = setTimeout(() => {
      const code = this.#keeper.ready ? 'voice-silent' : 'voice-missing';
      this.#settle(job, fail({ code, detail: `not rendered within ${PATIENCE_MS} ms` }));
    }, PATIENCE_MS);
    void job.promise.then(() => clearTimeout(timer));
  }

  #next(): void {
    if (this.#atWork !== null || !this.#keeper.ready) return;
    const jobs = [...this.#jobs.values()];
    const job = jobs.find(({ wanted }) => wanted === 'now') ?? jobs[0];
    if (job === undefined) return;
    job.attempts++;
    this.#atWork = { id: ++this.#lastId, job };
    this.#keeper.post({ type: 'render', id: this.#lastId, utterance: job.utterance });
  }

  #hear(event: KeeperEvent): void {
    switch (event.type) {
      case 'ready':
        this.#tell({ type: 'ready' });
        break;
      case 'answer':
        this.#answer(event.answer);
        break;
      case 'lost':
        this.#lose(event.failure, event.forGood);
        break;
    }
    this.#next();
  }

  #answer(answer: Extract<KeeperEvent, { type: 'answer' }>['answer']): void {
    if (answer.id !== this.#atWork?.id) return;
    const { job } = this.#atWork;
    this.#atWork = null;
    const detail = answer.type === 'failed' ? `${answer.code}: ${answer.detail}` : '';
    this.#settle(job, answer.type === 'rendered' ? ok(answer.rendering) : fail({ code: 'voice-crashed', detail }));
  }

  #lose(failure: VoiceFailure, forGood: boolean): void {
    const job = this.#atWork?.job;
    this.#atWork = null;
    if (forGood) {
      this.#tell({ type: 'failed', ...failure });
      this.#failAll(failure);
    } else if (job !== undefined && job.attempts >= MOST_ATTEMPTS) {
      this.#settle(job, fail(failure));
    }
  }

  #failAll(failure: VoiceFailure): void {
    for (const job of [...this.#jobs.values()]) this.#settle(job, fail(failure));
  }

  #settle(job: Job, rendered: Rendered): void {
    this.#jobs.delete(job.key);
    job.settle(rendered);
  }
}

/** Promise.withResolvers, which the oldest browsers we serve do not have. */
function deferred<T>(): { promise: Promise<T>; resolve: (value: T) => void } {
  let resolve: (value: T) => void = () => {};
  const promise = new Promise<T>((settle) => {
    resolve = settle;
  });
  return { promise, resolve };
}
