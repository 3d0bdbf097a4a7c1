import type { RecogniserEvent } from '../core/ports';
import { WATCH, type WorkerWatch } from './worker-watch';

type Failed = Extract<RecogniserEvent, { type: 'failed' }>;

/** Something that works elsewhere, in a worker or a frame, and may crash or hang there. */
export type Elsewhere = {
  readonly begin: () => void;
  readonly stop: () => void;
  readonly isUp: () => boolean;
  readonly ping: (id: number) => void;
  readonly tell: (event: Failed) => void;
  /** What is said of it when it falls silent. */
  readonly silence: string;
};

export type Kept = { readonly replace: (code: Failed['code'], detail: string) => void; readonly close: () => void };

/** Begins it, asks it now and then whether it still answers, and replaces it a bounded number of times, with growing waits. */
export function keptAnswering(watch: WorkerWatch, elsewhere: Elsewhere): Kept {
  const { begin, stop, isUp, ping, tell, silence } = elsewhere;
  let pings = 0;
  let later: ReturnType<typeof setTimeout> | undefined;

  const replace: Kept['replace'] = (code, detail) => {
    stop();
    const wait = watch.restart(performance.now());
    tell({ type: 'failed', code, detail: wait === null ? `${detail}; it failed too often and stays off` : detail });
    if (wait !== null) later = setTimeout(begin, wait);
  };

  const timer = setInterval(() => {
    if (!isUp()) return;
    const now = watch.tick(performance.now());
    if (now === 'ask') ping(++pings);
    if (now === 'silent') replace('worker-silent', silence);
  }, WATCH.every);

  begin();
  return {
    replace,
    close: () => {
      clearInterval(timer);
      clearTimeout(later);
      stop();
    },
  };
}
