import type { KaldiRecognizer, Model } from 'vosk-browser';
import type { RecogniserFault } from '../../../core/ports';
import { fail, ok, type Result } from '../../../core/result';
import type { LoadStage, SaidWord } from '../frame-messages';
import type { Answer, Engine, Session } from './engine';
import { emptyLibraryCache } from './library-cache';

type LoadFault = { readonly code: RecogniserFault; readonly detail: string };

/** Unpacking and loading forty megabytes takes seconds; a model that takes longer than this has failed without a word. */
const LOADING_MS = 55_000;
/** Only what is fatal: its other lines would name what was said. */
const LOG_LEVEL = -1;

/** Fetches the library and loads an archive that has been checked. */
export async function openVosk(archive: Blob, onStage: (stage: LoadStage) => void): Promise<Result<Engine, LoadFault>> {
  onStage('script');
  const address = URL.createObjectURL(archive);
  try {
    const { Model } = await import('vosk-browser');
    onStage('model');
    await emptyLibraryCache();
    const model = new Model(address, LOG_LEVEL);
    const loaded = await settled(model);
    await emptyLibraryCache();
    return loaded.ok ? ok({ open: (...asked) => openSession(model, ...asked) }) : loaded;
  } catch (error) {
    // The script could not be fetched, or the page may not start its worker.
    return fail({ code: 'worker-crashed', detail: String(error) });
  } finally {
    URL.revokeObjectURL(address);
  }
}

/** The library's own promise never settles where a model is broken, hence both events and a limit. */
function settled(model: Model): Promise<Result<void, LoadFault>> {
  return new Promise((resolve) => {
    const broken = (detail: string): void => resolve(fail({ code: 'model-broken', detail }));
    const timer = setTimeout(() => broken('the model did not load in time'), LOADING_MS);
    model.on('load', (message) => {
      clearTimeout(timer);
      if ('result' in message && message.result) resolve(ok(undefined));
      else broken('the library refused the model');
    });
    model.on('error', (message) => {
      clearTimeout(timer);
      broken('error' in message && message.error ? message.error : 'the library gave no reason');
    });
  });
}

function openSession(
  model: Model,
  sampleRate: number,
  phrases: readonly string[],
  answer: (answer: Answer) => void,
): Session {
  const recogniser: KaldiRecognizer = new model.KaldiRecognizer(sampleRate, JSON.stringify(phrases));
  // Only then does a result say when each word was said.
  recogniser.setWords(true);
  recogniser.on('partialresult', (message) => {
    if (message.event === 'partialresult') answer({ kind: 'partial', words: message.result.partial });
  });
  recogniser.on('result', (message) => {
    if (message.event === 'result') answer({ kind: 'result', words: wordsOf(message.result) });
  });
  recogniser.on('error', (message) => {
    if (message.event === 'error') answer({ kind: 'error', detail: message.error });
  });
  return {
    feed: (samples) => recogniser.acceptWaveformFloat(samples, sampleRate),
    finish: () => recogniser.retrieveFinalResult(),
    remove: () => recogniser.remove(),
  };
}

/** In spite of the library's declarations the list is absent where nothing was said. */
const wordsOf = ({ result }: { readonly result?: readonly SaidWord[] }): readonly SaidWord[] => result ?? [];
