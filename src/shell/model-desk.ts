import type { Result } from '../core/result';
import type { ModelFault } from '../speech/vosk/archive-fault';
import type { KeptModel } from '../speech/vosk/model-shelf';
import type { ModelState } from '../ui/setup/listening-setup';
import type { Say } from '../ui/words/words';
import type { NoticeBoard } from './notice-board';

/** Where a model of the person's own is checked and kept. Fetched only when it is asked for. */
export type ModelParts = {
  readonly keep: (archive: Blob, name: string) => Promise<Result<KeptModel, ModelFault>>;
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
    this.notices.news('model', this.say('model-checking', { file: file.name }));
    const kept = await this.parts.keep(file, file.name);
    this.notices.clear('model');
    if (!kept.ok) {
      this.notices.trouble('model', `${file.name}: ${faultWords(kept.error, this.say)}`);
      return false;
    }
    this.#kept = kept.value;
    this.notices.news('model', this.say('model-kept', { name: kept.value.name, words: kept.value.wordCount }));
    return true;
  }

  async clear(): Promise<void> {
    await this.parts.clear().catch(() => undefined);
    this.#kept = null;
  }
}

function faultWords(fault: ModelFault, say: Say): string {
  switch (fault.code) {
    case 'archive-empty':
      return say('archive-empty');
    case 'archive-too-large':
      return say('archive-too-large', { megabytes: Math.round(fault.most / 1e6) });
    case 'archive-not-gzip':
      return say(fault.looksLike === 'zip' ? 'archive-zip' : 'archive-not-gzip');
    case 'archive-cut':
      return say('archive-cut');
    case 'archive-not-tar':
      return say('archive-not-tar');
    case 'archive-odd-entry':
      return say('archive-odd-entry', { name: fault.name });
    case 'archive-no-top-folder':
      return say('archive-no-top-folder');
    case 'archive-several-top-folders':
      return say('archive-several-top-folders', { names: fault.names.join(', ') });
    case 'archive-nested':
      return say('archive-nested', { folder: fault.folder });
    case 'archive-file-missing':
      return say('archive-file-missing', { files: fault.files.join(', ') });
    case 'archive-static-graph':
      return say('archive-static-graph');
    case 'archive-no-vocabulary':
      return say('archive-no-vocabulary');
    case 'model-not-found':
      return say('model-not-found', { address: fault.address });
    case 'model-not-kept':
      return say(fault.reason === 'no-room' ? 'storage-full' : 'store-not-lasting');
  }
}
