import type { WriterLock } from '../../store/writer-lock';
import type { Say } from '../../ui/words/words';
import type { NoticeBoard } from '../notice-board';

/** Whether this tab may write. Where another has the pen, jobs can be read here and nothing else. */
export class Writing {
  constructor(
    private readonly lock: WriterLock,
    private readonly say: Say,
    private readonly notices: NoticeBoard,
    taken: () => void,
  ) {
    let isReading = false;
    lock.on((pen) => {
      if (pen === 'reading') {
        isReading = true;
        this.#tell();
      }
      if (pen !== 'writing' || !isReading) return;
      isReading = false;
      notices.clear('pen');
      notices.news('pen', say('pen-taken'));
      taken();
    });
  }

  /** True where this tab may write; otherwise the person is told why not. */
  isAllowed(): boolean {
    const pen = this.lock.pen();
    if (pen === 'writing' || pen === 'unguarded') return true;
    this.#tell();
    return false;
  }

  #tell(): void {
    this.notices.trouble('pen', this.say('reading-only'));
  }
}
