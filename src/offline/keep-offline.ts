import type { FromKeeper, OfflineReport, ToKeeper } from './messages';

export type KeepOffline = {
  /** True once something would be lost by loading the page again: a job, or the tap that opened the sound. */
  readonly busy: () => boolean;
  readonly tell: (report: OfflineReport) => void;
};

const ASK_AGAIN_MS = 30_000;

/**
 * Has the browser keep the whole app, and tells how far it is. A newer version, fetched in the background, takes hold
 * when a page starts with nothing under way, and never under a job.
 */
export async function keepOffline({ busy, tell }: KeepOffline): Promise<void> {
  // Absent outside a secure context, and in some private windows.
  const workers: ServiceWorkerContainer | undefined = navigator.serviceWorker;
  const registered = await workers
    ?.register(new URL('service-worker.js', document.baseURI), { updateViaCache: 'none' })
    .catch(() => undefined);
  if (!workers || !registered) {
    tell({ state: 'unsupported', keptBytes: 0, ofBytes: 0 });
    return;
  }

  let done = false;
  const ask = async (): Promise<void> => {
    const { active } = await workers.ready;
    if (!done) send(active, { type: 'fill' });
  };
  workers.addEventListener('message', ({ data }: MessageEvent<FromKeeper>) => {
    const { state, keptBytes, ofBytes } = data;
    done = state === 'ready';
    tell({ state, keptBytes, ofBytes });
  });
  workers.startMessages();
  setInterval(ask, ASK_AGAIN_MS);

  const takeOver = (): void => {
    if (registered.waiting && !busy()) {
      workers.addEventListener('controllerchange', () => location.reload(), { once: true });
      send(registered.waiting, { type: 'take-over' });
    }
  };
  registered.addEventListener('updatefound', () => {
    const next = registered.installing;
    next?.addEventListener('statechange', () => {
      if (next.state === 'installed' && registered.active) takeOver();
    });
  });
  takeOver();
  await ask();
}

const send = (worker: ServiceWorker | null, message: ToKeeper): void => worker?.postMessage(message);
