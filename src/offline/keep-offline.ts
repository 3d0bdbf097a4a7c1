import type { FromKeeper, OfflineReport, ToKeeper } from './messages';

export type KeepOffline = {
  /** The folder of the acoustic model in use. */
  readonly model: string;
  /** True once something would be lost by loading the page again: a job, or the tap that opened the sound. */
  readonly busy: () => boolean;
  readonly tell: (report: OfflineReport) => void;
};

const ASK_AGAIN_MS = 30_000;
/** A page that is just being left still counts as open, so the newer version may be refused at first. */
const TAKE_OVER_AGAIN_MS = 1000;

/**
 * Has the browser keep the whole app, and tells how far it is. A newer version, fetched in the background, takes hold
 * when a page starts with nothing under way, and never under a job. True where one is about to: the page fetches nothing then.
 */
export async function keepOffline({ model, busy, tell }: KeepOffline): Promise<boolean> {
  // Absent outside a secure context, and in some private windows.
  const workers: ServiceWorkerContainer | undefined = navigator.serviceWorker;
  const registered = await workers
    ?.register(new URL('service-worker.js', document.baseURI), { updateViaCache: 'none' })
    .catch(() => undefined);
  if (!workers || !registered) {
    tell({ state: 'unsupported', keptBytes: 0, ofBytes: 0 });
    return false;
  }

  let done = false;
  const ask = async (): Promise<void> => {
    const { active } = await workers.ready;
    if (!done) send(active, { type: 'fill', model });
  };
  workers.addEventListener('message', ({ data }: MessageEvent<FromKeeper>) => {
    const { state, keptBytes, ofBytes } = data;
    done = state === 'ready';
    tell({ state, keptBytes, ofBytes });
  });
  workers.startMessages();
  setInterval(ask, ASK_AGAIN_MS);

  let isAsked = false;
  /** Asks a version that waits to take hold. True where one was asked. */
  const takeOver = (): boolean => {
    if (!registered.waiting || busy()) return false;
    if (!isAsked) {
      isAsked = true;
      // By the time it happens somebody may have tapped: then this page goes on with the files it was started with.
      workers.addEventListener('controllerchange', () => busy() || location.reload(), { once: true });
    }
    send(registered.waiting, { type: 'take-over' });
    return true;
  };
  // Looked for again and again: a newer version may come, or be allowed, at any time.
  setInterval(takeOver, TAKE_OVER_AGAIN_MS);
  // The version before is let go only when it has nothing to do, so it is given nothing while another is to follow it:
  // whatever reached it now would start it anew, and Chromium looks again only half a minute later.
  const follows = takeOver();
  if (!follows) await ask();
  return follows;
}

const send = (worker: ServiceWorker | null, message: ToKeeper): void => worker?.postMessage(message);
