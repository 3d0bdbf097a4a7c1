import type { Result } from '../../core/result';
import type { ModelFault } from '../../speech/vosk/archive-fault';
import type { KeptModel, ShelfProgress } from '../../speech/vosk/model-shelf';
import type { VoskNews } from '../../speech/vosk/recogniser';
import type { ModelState } from '../../ui/setup/listening-setup';
import type { Say } from '../../ui/words/words';
import type { NoticeBoard } from '../notice-board';

/** Where a model of the person's own is checked and kept. Fetched only when it is asked for. */
export type ModelParts = {
  readonly keep: (
    archive: Blob,
    name: string,
    progress: (now: ShelfProgress) => void,
  ) => Promise<Result<KeptModel, ModelFault>>;
  readonly kept: () => Promise<KeptModel | null>;
  readonly clear: () => Promise<void>;
};

/** The model the person brought, if there is one. */
export class ModelDesk {
  #kept: KeptModel | null = null;

  constructor(
    private readonly parts: ModelParts,
    private readonly say: Say,
    private readonly notices: NoticeBoard,
  ) {}

  get state(): ModelState {
    return this.#kept && { name: this.#kept.name, megabytes: this.#kept.bytes / 1e6 };
  }

  async look(): Promise<void> {
    this.#kept = await this.parts.kept().catch(() => null);
  }

  /** Checks and keeps an archive; true where there is a new model now. The one before stays where it is no model. */
  async bring(file: File): Promise<boolean> {
    const checked = (share: number | null) =>
      this.notices.work('model', this.say('model-checking', { file: file.name }), share);
    checked(0);
    const kept = await this.parts.keep(file, file.name, (now) => {
      checked(now.stage === 'checking' ? now.done / now.total : null);
    });
    this.notices.clear('model');
    if (!kept.ok) {
      const { modelFaultWords } = await import('./model-fault-words');
      this.notices.trouble('model', `${file.name}: ${modelFaultWords(kept.error, this.say)}`);
      return false;
    }
    this.#kept = kept.value;
    this.notices.news('model', this.say('model-kept', { name: kept.value.name, words: kept.value.wordCount }));
    return true;
  }

  /** What the recogniser on it has to tell while it is loaded and given grammars. */
  tell(news: VoskNews): void {
    if (news.type === 'loading') this.notices.work('model-loading', this.say('model-loading'), null);
    else this.notices.news('model-words', this.say('model-words-missing', { words: news.words.join(', ') }));
  }

  async clear(): Promise<void> {
    await this.parts.clear().catch(() => undefined);
    this.#kept = null;
  }
}
