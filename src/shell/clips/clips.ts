import type { Job } from '../../core/job/job';
import { workPlace } from '../../core/job/place';
import type { LiveGrammar } from '../../core/language/grammar';
import type { LogStore, StoredBlob } from '../../core/log/log-store';
import { reply } from '../../core/phrasing/reply';
import type { RecogniserEvent } from '../../core/ports';
import type { Result } from '../../core/result';
import type { After } from '../../store/log-writer';
import type { Say } from '../../ui/words/words';
import type { OpenJob } from '../job/job-desk';
import type { NoticeBoard } from '../notice-board';
import type { Recording } from '../sound/record-sound';
import type { Sound } from '../sound/sound';
import type { ClipKeeper } from './clip-keeper';
import type { Still, StillFault } from './take-still';

/** What makes and plays recordings, as the composition root built it. */
export type ClipParts = {
  readonly record: (stream: MediaStream, mostBytes: number) => Recording;
  /** `asking`: the browser has a question of its own first, and only a finger can answer it. */
  readonly still: (asking: () => void) => Promise<Result<Still, StillFault>>;
  readonly play: (blob: StoredBlob, ended: (isPlayed: boolean) => void) => () => void;
  /** The bytes of a WAV file of these samples, mono. */
  readonly wav: (samples: Float32Array, rateHz: number) => Promise<Uint8Array>;
  readonly url: (blob: StoredBlob) => { readonly url: string; readonly release: () => void };
};

export type ClipHost = ClipParts & {
  readonly sound: Pick<Sound, 'ear' | 'voice' | 'microphone'>;
  readonly newId: () => string;
  readonly after: After;
  readonly now: () => number;
  readonly stopOnly: () => LiveGrammar;
  readonly say: Say;
  readonly notices: NoticeBoard;
  readonly changed: () => void;
};

/** Spoken notes and pictures: taken into the open job, and played or shown again from its record. */
export class Clips {
  #note: { readonly ending: AbortController; readonly over: Promise<void> } | null = null;
  #picturing: Promise<void> | null = null;
  #playing: { readonly clip: string; readonly stop: () => void } | null = null;
  #picture: { readonly clip: string; readonly url: string; readonly release: () => void } | null = null;
  #keeper: Promise<ClipKeeper> | undefined;

  constructor(private readonly host: ClipHost) {}

  get playing(): string | null {
    return this.#playing?.clip ?? null;
  }

  get picture(): { readonly clip: string; readonly url: string } | null {
    return this.#picture;
  }

  /** Asked for again while one is recorded, it ends that one. */
  async takeNote(open: OpenJob): Promise<void> {
    if (this.#note) {
      this.#note.ending.abort();
      return;
    }
    const { sound, stopOnly } = this.host;
    if (!sound.microphone) {
      open.desk.excuse([reply('note-no-microphone', {})]);
      return;
    }
    const ending = new AbortController();
    const listening: { to: (event: RecogniserEvent) => void } = { to: () => undefined };
    // From the very first moment, and until what came of it has been said: no word of a note may move the job, nor
    // answer a question that waits.
    const giveBack = sound.ear.borrow(stopOnly(), (event) => {
      if (event.type === 'heard') ending.abort();
      else listening.to(event);
    });
    const over = this.#noted(open, ending.signal, listening).finally(() => {
      giveBack();
      this.#note = null;
    });
    this.#note = { ending, over };
    return over;
  }

  /** One at a time: while the browser still asks about the camera, asking again changes nothing. */
  async takePicture(open: OpenJob): Promise<void> {
    this.#picturing ??= this.#pictured(open).finally(() => {
      this.#picturing = null;
    });
    return this.#picturing;
  }

  /** What is being recorded ends here and is kept; what plays ends. A picture makes no noise, and has its own way out. */
  stop(): void {
    this.#note?.ending.abort();
    this.#playing?.stop();
  }

  /** Before the job is left: what is being recorded ends and is in the log. A picture nobody has allowed yet is not waited for. */
  async settle(): Promise<void> {
    this.#note?.ending.abort();
    await this.#note?.over;
  }

  /** Once more what could not be stored. */
  async keepAgain(open: OpenJob): Promise<void> {
    await (await this.#kept()).again(open);
  }

  /** Plays a recording or shows a picture; the same again ends it. */
  async show(store: LogStore, jobId: string, clip: string): Promise<void> {
    const isSame = this.#playing?.clip === clip || this.#picture?.clip === clip;
    this.end();
    if (isSame) return;
    const { say, notices, play, url, sound, changed } = this.host;
    const blob = await store.blob(jobId, clip);
    if (!blob.ok || !blob.value) {
      notices.news('clip', say('clip-missing'));
      return;
    }
    if (blob.value.mime.startsWith('image/')) {
      this.#picture = { clip, ...url(blob.value) };
      return;
    }
    // A voice from the speaker must not be taken for a person's.
    sound.ear.shut('clip');
    const stop = play(blob.value, (isPlayed) => {
      this.#playing = null;
      sound.ear.open('clip');
      if (!isPlayed) notices.news('clip', say('clip-unplayable'));
      changed();
    });
    this.#playing = { clip, stop };
  }

  /** Stops what plays and puts away what is shown. */
  end(): void {
    this.#playing?.stop();
    this.#picture?.release();
    this.#picture = null;
  }

  async #noted(open: OpenJob, signal: AbortSignal, listening: { to: (event: RecogniserEvent) => void }): Promise<void> {
    const step = stepNow(open.desk.job);
    try {
      const { noteInto } = await import('./note-into');
      await noteInto(open, step, await this.#kept(), { ...this.host, signal, listening });
    } catch {
      // Its code could not be fetched, which a bad network or a newer version can bring about.
      open.desk.excuse([reply('note-failed', {})]);
    }
  }

  async #pictured(open: OpenJob): Promise<void> {
    const step = stepNow(open.desk.job);
    try {
      const { pictureInto } = await import('./picture-into');
      await pictureInto(open, step, await this.#kept(), this.host.still);
    } catch {
      open.desk.excuse([reply('picture-failed', {})]);
    }
  }

  #kept(): Promise<ClipKeeper> {
    this.#keeper ??= import('./clip-keeper').then((it) => new it.ClipKeeper(this.host));
    return this.#keeper;
  }
}

/** The step at hand, where it was asked for; the last one of all where the work is done. */
function stepNow(job: Job): string {
  const place = workPlace(job);
  return place.kind === 'step' || place.kind === 'pass' ? place.step : (job.plan.order.at(-1) ?? '');
}
