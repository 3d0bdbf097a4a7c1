import type { Screen } from '../ui/app';
import type { UiEvent } from '../ui/events';
import type { RecordSource } from './record-room';
import type { Rooms } from './rooms';
import type { ShellParts } from './shell-parts';

type ExportAsked = Extract<UiEvent, { readonly type: 'export' }>;

/** Which record is being looked at, and what is done with it: the open job's, or one that is only read. */
export class RecordDesk {
  /** Null while the open job's is meant. */
  #reading: RecordSource | null = null;

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
    return isHere || this.#reading !== null;
  }

  /** Back to the open job's. */
  async toOpenJob(): Promise<void> {
    this.rooms.clips.end();
    this.#reading = null;
    await this.rooms.record.load();
  }

  forget(id: string): void {
    if (this.#reading?.card.id === id) this.#reading = null;
  }

  screen(): Screen | null {
    const source = this.#reading ?? this.rooms.seat.source;
    return source && this.rooms.record.screen(source, this.rooms.clips);
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
    const { clips, seat } = this.rooms;
    const id = this.#reading?.card.id ?? seat.open?.card.id;
    const store = this.#reading ? this.parts.store : (seat.open?.store ?? this.parts.store);
    if (id !== undefined) await clips.show(store, id, clip);
  }
}
