import type { LogStore } from '../../core/log/log-store';
import type { StorageState } from '../../ui/setup/storage-setup';
import type { Say } from '../../ui/words/words';
import type { NoticeBoard } from '../notice-board';

/** Told well before it is full: a long job with its clips still fits into the rest. */
const WARN_AT = 0.8;

/** How full the browser's storage is, and whether it is promised to stay. */
export class StorageWatch {
  #state: StorageState = null;
  #isKept = false;

  constructor(
    private readonly store: LogStore,
    private readonly say: Say,
    private readonly notices: NoticeBoard,
  ) {}

  get state(): StorageState {
    return this.#state;
  }

  /** Asks the browser never to clear the logs by itself. */
  async keep(): Promise<void> {
    this.#isKept = await this.store.persist();
    await this.look();
  }

  async look(): Promise<void> {
    if (!this.store.lasting) {
      this.#state = { usedMegabytes: 0, quotaMegabytes: 0, lasting: false, kept: false };
      this.notices.trouble('store', this.say('store-not-lasting'));
      return;
    }
    const room = await this.store.estimate();
    if (!room) return;
    const { usedBytes, quotaBytes } = room;
    this.#state = {
      usedMegabytes: usedBytes / 1e6,
      quotaMegabytes: quotaBytes / 1e6,
      lasting: true,
      kept: this.#isKept,
    };
    const share = quotaBytes > 0 ? usedBytes / quotaBytes : 0;
    if (share < WARN_AT) this.notices.clear('room');
    else this.notices.trouble('room', this.say('storage-nearly-full', { percent: Math.floor(share * 100) }));
  }
}
