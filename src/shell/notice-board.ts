import type { Notice } from '../ui/notices';

/** What the program has to tell about itself, one notice an id, the newest last. */
export class NoticeBoard {
  #notices: readonly Notice[] = [];

  constructor(private readonly changed: () => void) {}

  get shown(): readonly Notice[] {
    return this.#notices;
  }

  /** Stays until what it is about is mended. */
  trouble(id: string, text: string, acts: NonNullable<Notice['acts']> = []): void {
    this.#put({ id, kind: 'trouble', text, acts });
  }

  /** Can be put away. */
  news(id: string, text: string, acts: NonNullable<Notice['acts']> = []): void {
    this.#put({ id, kind: 'news', text, acts });
  }

  clear(id: string): void {
    if (!this.#notices.some((n) => n.id === id)) return;
    this.#notices = this.#notices.filter((n) => n.id !== id);
    this.changed();
  }

  #put(notice: Notice): void {
    this.#notices = [...this.#notices.filter((n) => n.id !== notice.id), notice];
    this.changed();
  }
}
