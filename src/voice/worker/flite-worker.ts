import { assertNever } from '../../core/result';
import type { Flite } from '../flite/flite';
import { loadFlite } from '../flite/load';
import type { FromVoiceWorker, ToVoiceWorker } from '../flite/messages';

/** The voice worker: one synthesiser, one message in, one message out. It decides nothing. */
declare const self: DedicatedWorkerGlobalScope;

let flite: Flite | null = null;

const post = (message: FromVoiceWorker, transfer: Transferable[] = []): void => self.postMessage(message, transfer);

async function load(url: string): Promise<void> {
  const began = performance.now();
  const loaded = await loadFlite(url);
  if (!loaded.ok) {
    post({ type: 'load-failed', ...loaded.error });
    return;
  }
  flite = loaded.value;
  post({ type: 'ready', msToLoad: performance.now() - began });
}

function render({ id, utterance }: Extract<ToVoiceWorker, { type: 'render' }>): void {
  const rendered = flite?.render(utterance);
  if (rendered === undefined) {
    post({ type: 'failed', id, code: 'synthesis-failed', detail: 'asked before it was ready' });
  } else if (rendered.ok) {
    post({ type: 'rendered', id, rendering: rendered.value }, [rendered.value.wav.buffer]);
  } else {
    post({ type: 'failed', id, ...rendered.error });
  }
}

self.onmessage = ({ data }: MessageEvent<ToVoiceWorker>): void => {
  switch (data.type) {
    case 'load':
      void load(data.url);
      return;
    case 'render':
      render(data);
      return;
    case 'ping':
      post({ type: 'pong' });
      return;
    default:
      assertNever(data);
  }
};
