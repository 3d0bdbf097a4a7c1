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
    this.put({ id, kind: 'trouble', text, acts });
  }

  /** Can be put away. */
  news(id: string, text: string, acts: NonNullable<Notice['acts']> = []): void {
    this.put({ id, kind: 'news', text, acts });
  }

  /** Something that takes a while: the share of it that is done, or null where nobody can tell. Gone with `clear`. */
  work(id: string, text: string, share: number | null): void {
    this.put({ id, kind: 'work', text, share });
  }

  clear(id: string): void {
    if (!this.#notices.some((n) => n.id === id)) return;
    this.#notices = this.#notices.filter((n) => n.id !== id);
    this.changed();
  }

  /** The notices with these ids, which are not shown any more. */
  take(ids: readonly string[]): readonly Notice[] {
    const taken = this.#notices.filter(({ id }) => ids.includes(id));
    this.#notices = this.#notices.filter(({ id }) => !ids.includes(id));
    return taken;
  }

  put(notice: Notice): void {
    this.#notices = [...this.#notices.filter((n) => n.id !== notice.id), notice];
    this.changed();
  }
}
