import type { EntryBody } from '../../core/job/entry';
import { isHeardClip } from '../../core/log/heard-clip';
import type { StoreFault } from '../../core/log/log-store';
import { type Reply, reply } from '../../core/phrasing/reply';
import { storeFaultWords } from '../job/fault-words';
import type { OpenJob } from '../job/job-desk';
import type { Recorded } from '../sound/record-sound';
import type { ClipHost } from './clips';

/** The largest note or picture taken, in bytes. */
export const MOST_BYTES = 2_000_000;
/** All notes and pictures of one job together, in megabytes: hours of notes or some 150 pictures, and a file that a tablet can still make. */
export const MOST_MEGABYTES = 60;
/** So many wait in memory for a disk that refuses them; more are not begun. */
const MOST_WAITING = 4;

const NOTICE = 'clip-not-kept';

/** A note or a picture, the step it belongs to, and what is said once it is in the log. */
export type Clip = {
  readonly kind: 'noted' | 'pictured';
  readonly step: string;
  readonly recorded: Recorded;
  readonly told: Reply;
};

type Waiting = Clip & { readonly job: string; readonly id: string };

/** The way of notes and pictures into their job, within its bound. What cannot be stored waits here, and is not dropped. */
export class ClipKeeper {
  #waiting: readonly Waiting[] = [];
  #turn: Promise<unknown> = Promise.resolve();

  constructor(private readonly host: Pick<ClipHost, 'newId' | 'notices' | 'say'>) {}

  /** Why one more cannot be taken now, before anybody has spoken or held a camera; null where it can. */
  async full(open: OpenJob): Promise<Reply | null> {
    await this.#store(open);
    if (this.#waiting.length >= MOST_WAITING) return reply('clips-waiting', {});
    const sizes = await open.store.blobSizes(open.card.id);
    // Where the disk does not answer, keeping it will tell.
    if (!sizes.ok) return null;
    const kept = [...sizes.value].filter(([id]) => !isHeardClip(id)).map(([, size]) => size);
    const waiting = this.#ofJob(open).map(({ recorded }) => recorded.bytes.length);
    const bytes = [...kept, ...waiting].reduce((sum, size) => sum + size, 0);
    return bytes + MOST_BYTES > MOST_MEGABYTES * 1_000_000 ? reply('clips-full', {}) : null;
  }

  async keep(open: OpenJob, clip: Clip): Promise<void> {
    const { newId } = this.host;
    this.#waiting = [...this.#waiting, { ...clip, job: open.card.id, id: newId() }];
    const fault = await this.#store(open);
    if (fault) open.desk.excuse([reply('clip-not-kept', {})]);
    await open.desk.idle();
  }

  /** Once more what waits for this job. */
  async again(open: OpenJob): Promise<void> {
    await this.#store(open);
  }

  /** One after the other, or what waits would be stored twice. */
  #store(open: OpenJob): Promise<StoreFault | null> {
    const done = this.#turn.then(() => this.#storeAll(open));
    this.#turn = done;
    return done;
  }

  /** The bytes first, then the entry that names them: an entry never points at nothing. */
  async #storeAll(open: OpenJob): Promise<StoreFault | null> {
    for (const clip of this.#ofJob(open)) {
      const { id, kind, step, recorded, told } = clip;
      const stored = await open.store.putBlob(open.card.id, { id, ...recorded });
      if (!stored.ok) {
        this.#tell(stored.error);
        return stored.error;
      }
      this.#waiting = this.#waiting.filter((one) => one !== clip);
      const body: EntryBody = { kind, blob: id, step };
      open.desk.report([body], [told]);
    }
    if (this.#waiting.length === 0) this.host.notices.clear(NOTICE);
    return null;
  }

  #tell(fault: StoreFault): void {
    const { notices, say } = this.host;
    notices.trouble(NOTICE, `${say('clip-not-kept')} ${storeFaultWords(fault, say)}`, [
      { label: say('clip-keep-again'), event: { type: 'keep-clips' } },
    ]);
  }

  #ofJob({ card }: OpenJob): readonly Waiting[] {
    return this.#waiting.filter(({ job }) => job === card.id);
  }
}
