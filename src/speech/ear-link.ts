import type { RecogniserEvent } from '../core/ports';
import type { FromEar, ToEar } from './ear/messages';
import { WATCH, WorkerWatch } from './worker-watch';

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
  tell: (event: RecogniserEvent) => void,
): EarLink {
  const watch = new WorkerWatch(performance.now());
  let worker: Worker | null = null;
  let pings = 0;
  let later: ReturnType<typeof setTimeout> | undefined;

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

  const replace = (code: 'worker-crashed' | 'worker-silent', detail: string): void => {
    stop();
    const wait = watch.restart(performance.now());
    tell({ type: 'failed', code, detail: wait === null ? `${detail}; it failed too often and stays off` : detail });
    if (wait !== null) later = setTimeout(begin, wait);
  };

  const begin = (): void => {
    worker = makeWorker();
    worker.onmessage = ({ data }: MessageEvent<FromEar>) => receive(data);
    worker.onerror = (event) => replace('worker-crashed', event.message);
    onStart(send);
  };

  const timer = setInterval(() => {
    if (!worker) return;
    const now = watch.tick(performance.now());
    if (now === 'ask') send({ type: 'ping', id: ++pings });
    if (now === 'silent') replace('worker-silent', 'the ear stopped answering');
  }, WATCH.every);

  begin();
  return {
    send,
    close: () => {
      clearInterval(timer);
      clearTimeout(later);
      stop();
    },
  };
}
