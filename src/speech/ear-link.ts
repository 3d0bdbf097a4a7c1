import type { RecogniserEvent } from '../core/ports';
import type { ReadingEvent } from '../core/voice-profile/reading-aloud';
import type { FromEar, ToEar } from './ear/messages';
import { type Kept, keptAnswering } from './kept-answering';
import { WorkerWatch } from './worker-watch';

export type EarLink = {
  readonly send: (message: ToEar, transfer?: readonly Transferable[]) => void;
  readonly close: () => void;
};

/**
 * A worker with an ear in it that is replaced when it crashes or falls silent, a bounded number of times with growing
 * waits. `onStart` tells each new worker everything it must know.
 */
export function earLink(
  makeWorker: () => Worker,
  onStart: (send: EarLink['send']) => void,
  tell: (event: RecogniserEvent | ReadingEvent) => void,
): EarLink {
  const watch = new WorkerWatch(performance.now());
  let worker: Worker | null = null;

  const send: EarLink['send'] = (message, transfer = []) => worker?.postMessage(message, [...transfer]);

  const receive = (message: FromEar): void => {
    watch.answered();
    if (message.type === 'pong') return;
    if (message.type === 'ready' || message.type === 'failed') watch.loaded();
    if (message.type === 'heard') watch.proven();
    tell(message);
  };

  const stop = (): void => {
    worker?.terminate();
    worker = null;
  };

  const begin = (): void => {
    worker = makeWorker();
    worker.onmessage = ({ data }: MessageEvent<FromEar>) => receive(data);
    worker.onerror = (event) => kept.replace('worker-crashed', event.message);
    onStart(send);
  };

  const kept: Kept = keptAnswering(watch, {
    begin,
    stop,
    isUp: () => worker !== null,
    ping: (id) => send({ type: 'ping', id }),
    tell,
    silence: 'the ear stopped answering',
  });
  return { send, close: kept.close };
}
