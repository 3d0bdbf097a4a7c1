import { fail, ok, type Result } from '../../core/result';
import { checkArchive } from './archive-check';
import type { ModelFault } from './archive-fault';

/** What Setup shows of the model that is kept. */
export type KeptModel = {
  /** The file's name as chosen, or where it was placed. */
  readonly name: string;
  readonly folder: string;
  readonly bytes: number;
  readonly sha256: string;
  readonly wordCount: number;
};

/** A kept model, opened: what the recogniser loads, and which words may be asked of it. */
export type OpenModel = { readonly kept: KeptModel; readonly archive: Blob; readonly words: ReadonlySet<string> };

export type ShelfProgress =
  | { readonly stage: 'fetching' | 'keeping' }
  | { readonly stage: 'checking'; readonly done: number; readonly total: number };

export type ModelShelf = {
  /** Checks an archive from a file and keeps it in place of the one before, which stays where the new one is no model. */
  readonly keep: (
    archive: Blob,
    name: string,
    progress?: (now: ShelfProgress) => void,
  ) => Promise<Result<KeptModel, ModelFault>>;
  /** The same for an archive that whoever set up the site has put into a folder of it. */
  readonly keepPlaced: (progress?: (now: ShelfProgress) => void) => Promise<Result<KeptModel, ModelFault>>;
  readonly kept: () => Promise<KeptModel | null>;
  readonly open: () => Promise<OpenModel | null>;
  readonly clear: () => Promise<void>;
};

const SHELF = 'wrenchside-vosk-model';
/** Under the app's own address. Servers take a name in .gz for an encoding, and browsers then unpack it on the way. */
const PLACED = 'vosk-model/model.tgz';

/**
 * Keeps one model in the browser's cache storage under addresses that do not change, so that it takes room once.
 * `base` is the app's address, with a trailing slash.
 */
export function modelShelf(base: string): ModelShelf {
  const address = (name: string): string => new URL(`vosk-model/kept/${name}`, base).href;
  const about = address('about.json');
  const wordList = address('words.txt');
  const archiveAt = address('model.tar.gz');

  const kept = async (): Promise<KeptModel | null> => {
    const found = await (await shelf())?.match(about);
    // Written by `keep` below and by nothing else.
    return found ? ((await found.json()) as KeptModel) : null;
  };

  const keep: ModelShelf['keep'] = async (archive, name, progress = () => undefined) => {
    const checked = await checkArchive(archive, (done, total) => progress({ stage: 'checking', done, total }));
    if (!checked.ok) return checked;
    progress({ stage: 'keeping' });
    const cache = await shelf();
    if (!cache) return fail({ code: 'model-not-kept', reason: 'no-storage' });
    const { folder, bytes, sha256, words } = checked.value;
    const model: KeptModel = { name, folder, bytes, sha256, wordCount: words.length };
    try {
      // What is about comes last and goes first: a half-written model is none.
      await cache.delete(about);
      await cache.put(archiveAt, new Response(archive));
      await cache.put(wordList, new Response(words.join('\n')));
      await cache.put(about, Response.json(model));
    } catch {
      await caches.delete(SHELF);
      return fail({ code: 'model-not-kept', reason: 'no-room' });
    }
    return ok(model);
  };

  return {
    keep,
    kept,
    keepPlaced: async (progress = () => undefined) => {
      const place = new URL(PLACED, base).href;
      progress({ stage: 'fetching' });
      const answer = await fetch(place, { cache: 'no-cache' }).catch(() => null);
      if (!answer?.ok) return fail({ code: 'model-not-found', address: place });
      const archive = await answer.blob().catch(() => null);
      return archive ? keep(archive, PLACED, progress) : fail({ code: 'archive-cut', at: 0 });
    },
    open: async () => {
      const model = await kept();
      const cache = model && (await shelf());
      const archive = await cache?.match(archiveAt);
      const words = await cache?.match(wordList);
      if (!model || !archive || !words) return null;
      return { kept: model, archive: await archive.blob(), words: new Set((await words.text()).split('\n')) };
    },
    clear: async () => {
      await (await shelf())?.delete(about);
      if (typeof caches !== 'undefined') await caches.delete(SHELF);
    },
  };
}

/** Null where the browser gives no storage: an insecure page, or a private window of some browsers. */
async function shelf(): Promise<Cache | null> {
  try {
    return await caches.open(SHELF);
  } catch {
    return null;
  }
}
