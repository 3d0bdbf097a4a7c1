import type { LogStore } from '../../core/log/log-store';
import type { Screen } from '../../ui/app';
import type { UiEvent } from '../../ui/events';
import type { Rooms } from '../rooms';
import type { ShellParts } from '../shell-parts';
import type { RecordSource } from './record-room';

type ExportAsked = Extract<UiEvent, { readonly type: 'export' }>;

/** Which record is being looked at, and what is done with it: the open job's, or one that is only read. */
export class RecordDesk {
  /** Null while the open job's is meant. */
  #reading: RecordSource | null = null;
  /** The clips of what was heard, of the job looked at. */
  #heard: ReadonlyMap<string, number> = new Map();

  constructor(
    private readonly rooms: Rooms,
    private readonly parts: Pick<ShellParts, 'store' | 'print'>,
  ) {}

  /** Turns to a job's record; false where it cannot be read. */
  async open(id: string): Promise<boolean> {
    const { seat, jobs, record } = this.rooms;
    await record.load();
    const isHere = seat.open?.card.id === id;
    this.#reading = isHere ? null : await jobs.read(id);
    await this.#lookForClips();
    return isHere || this.#reading !== null;
  }

  /** Back to the open job's. */
  async toOpenJob(): Promise<void> {
    this.rooms.clips.end();
    this.#reading = null;
    await this.rooms.record.load();
    await this.#lookForClips();
  }

  forget(id: string): void {
    if (this.#reading?.card.id === id) this.#reading = null;
  }

  screen(): Screen | null {
    const source = this.#reading ?? this.rooms.seat.source;
    return source && this.rooms.record.screen(source, this.rooms.clips, this.#heard);
  }

  async export({ job, as }: ExportAsked): Promise<void> {
    const { exports, seat, jobs, record } = this.rooms;
    const source = seat.open?.card.id === job ? seat.source : (this.#reading ?? (await jobs.read(job)));
    switch (as) {
      case 'json':
        await (await exports()).wholeLog(job, source?.card.title ?? '', seat.open);
        break;
      case 'csv':
        if (source) await (await exports()).table(source);
        break;
      case 'print':
        record.isWhole = true;
        this.parts.print();
        record.isWhole = false;
        break;
    }
  }

  async showClip(clip: string): Promise<void> {
    const where = this.#where();
    if (where) await this.rooms.clips.show(where.store, where.job, clip);
  }

  async #lookForClips(): Promise<void> {
    const where = this.#where();
    if (where) this.#heard = await (await this.rooms.heardClips()).kept(where.store, where.job);
  }

  /** The job looked at and where it is kept: a rehearsal has a store of its own. */
  #where(): { readonly store: LogStore; readonly job: string } | null {
    if (this.#reading) return { store: this.parts.store, job: this.#reading.card.id };
    const { open } = this.rooms.seat;
    return open && { store: open.store, job: open.card.id };
  }
}
