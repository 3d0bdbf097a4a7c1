import type { EntryBody } from '../../core/job/entry';
import type { Job } from '../../core/job/job';
import { workPlace } from '../../core/job/place';
import type { LiveGrammar } from '../../core/language/grammar';
import type { LogStore, StoredBlob } from '../../core/log/log-store';
import { type Reply, reply } from '../../core/phrasing/reply';
import type { Result } from '../../core/result';
import type { After } from '../../store/log-writer';
import type { Say } from '../../ui/words/words';
import { storeFaultWords } from '../job/fault-words';
import type { OpenJob } from '../job/job-desk';
import type { NoticeBoard } from '../notice-board';
import type { Recorded, Recording } from '../sound/record-sound';
import type { Sound } from '../sound/sound';
import type { StillFault } from './take-still';

/** What makes and plays recordings, as the composition root built it. */
export type ClipParts = {
  readonly record: (stream: MediaStream, mostBytes: number) => Recording;
  readonly still: () => Promise<Result<Recorded, StillFault>>;
  readonly play: (blob: StoredBlob, ended: (isPlayed: boolean) => void) => () => void;
  /** The bytes of a WAV file of these samples, mono. */
  readonly wav: (samples: Float32Array, rateHz: number) => Promise<Uint8Array>;
  readonly url: (blob: StoredBlob) => { readonly url: string; readonly release: () => void };
};

type ClipHost = ClipParts & {
  readonly sound: Sound;
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
  #isNoting = false;
  #playing: { readonly clip: string; readonly stop: () => void } | null = null;
  #picture: { readonly clip: string; readonly url: string; readonly release: () => void } | null = null;

  constructor(private readonly host: ClipHost) {}

  get playing(): string | null {
    return this.#playing?.clip ?? null;
  }

  get picture(): { readonly clip: string; readonly url: string } | null {
    return this.#picture;
  }

  async takeNote(open: OpenJob): Promise<void> {
    if (this.#isNoting) return;
    this.#isNoting = true;
    const { sound, stopOnly, say, notices } = this.host;
    const { ear, voice } = sound;
    const microphone = () => sound.microphone;
    const { takeNote } = await import('./note-taker');
    const end = await takeNote({ ...this.host, ear, voice, microphone, grammar: stopOnly() });
    this.#isNoting = false;
    switch (end.code) {
      case 'kept':
        if (end.isCut) notices.news('note', say('note-ended'));
        await this.#keep(open, 'noted', end.note, reply('note-kept', {}));
        break;
      case 'empty':
        notices.news('note', say('note-empty'));
        break;
      case 'no-microphone':
        notices.news('note', say('note-no-microphone'));
        break;
      case 'failed':
        notices.news('note', say('note-failed'));
        break;
    }
  }

  async takePicture(open: OpenJob): Promise<void> {
    const still = await this.host.still();
    if (still.ok) await this.#keep(open, 'pictured', still.value, reply('picture-taken', {}));
    else this.host.notices.news('picture', this.host.say('picture-no-camera'));
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

  /** The bytes first, then the entry that names them: an entry never points at nothing. */
  async #keep(open: OpenJob, kind: 'noted' | 'pictured', recorded: Recorded, told: Reply): Promise<void> {
    const id = this.host.newId();
    const kept = await open.store.putBlob(open.card.id, { id, ...recorded });
    if (!kept.ok) {
      this.host.notices.trouble('clip', storeFaultWords(kept.error, this.host.say));
      return;
    }
    const body: EntryBody = { kind, blob: id, step: stepNow(open.desk.job) };
    open.desk.report([body], [told]);
  }
}

/** The step at hand; the last one of all where the work is done. */
function stepNow(job: Job): string {
  const place = workPlace(job);
  return place.kind === 'step' || place.kind === 'pass' ? place.step : (job.plan.order.at(-1) ?? '');
}
