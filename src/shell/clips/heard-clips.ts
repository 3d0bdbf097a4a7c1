import type { Entry } from '../../core/job/entry';
import { heardClipId, isHeardClip } from '../../core/log/heard-clip';
import type { LogStore } from '../../core/log/log-store';
import type { OpenJob } from '../job/job-desk';
import type { ClipParts } from './clips';

const RATE_HZ = 16_000;
/** Longer than anything the ear takes for one utterance. */
const LONGEST_S = 8;
/** For one job: some ten minutes of speech. What was kept longest goes first. */
const MOST_BYTES = 20_000_000;

/** The sound of what was heard, for those who have asked for it in Setup: kept with its job, played from its record. */
export class HeardClips {
  #job = '';
  /** The clips of that job and their bytes, the oldest first. */
  #kept = new Map<string, number>();
  #turn: Promise<unknown> = Promise.resolve();

  constructor(
    private readonly wav: ClipParts['wav'],
    private readonly failed: () => void,
  ) {}

  /** The ids of the clips a job has. */
  kept(store: LogStore, job: string): Promise<ReadonlyMap<string, number>> {
    return this.#inTurn(() => this.#look(store, job));
  }

  /** Keeps the sound of the line that the open job's log has just got for it. */
  keep({ card, store }: OpenJob, line: Entry, sound: Float32Array): Promise<void> {
    return this.#inTurn(async () => {
      const kept = await this.#look(store, card.id);
      const bytes = await this.wav(sound.slice(0, LONGEST_S * RATE_HZ), RATE_HZ);
      const id = heardClipId(line);
      const stored = await store.putBlob(card.id, { id, mime: 'audio/wav', bytes });
      if (!stored.ok) {
        this.failed();
        return;
      }
      kept.set(id, bytes.length);
      await this.#prune(store, card.id);
    });
  }

  async #look(store: LogStore, job: string): Promise<Map<string, number>> {
    if (this.#job === job) return this.#kept;
    const blobs = await store.blobs(job);
    const clips = (blobs.ok ? blobs.value : []).filter(({ id }) => isHeardClip(id));
    this.#job = job;
    this.#kept = new Map(
      clips.map(({ id, bytes }) => [id, bytes.length] as const).toSorted(([a], [b]) => seqOf(a) - seqOf(b)),
    );
    return this.#kept;
  }

  async #prune(store: LogStore, job: string): Promise<void> {
    let bytes = [...this.#kept.values()].reduce((sum, size) => sum + size, 0);
    for (const [id, size] of this.#kept) {
      if (bytes <= MOST_BYTES) return;
      await store.deleteBlob(job, id);
      this.#kept.delete(id);
      bytes -= size;
    }
  }

  #inTurn<T>(run: () => Promise<T>): Promise<T> {
    const done = this.#turn.then(run);
    this.#turn = done.catch(() => undefined);
    return done;
  }
}

const seqOf = (id: string): number => Number(id.split('-')[1]);
