import { modelPart, NEEDED, neededAgain, type OfflineFile } from '../file-list';
import { Keeper } from '../keeper';
import type { FromKeeper, OfflineReport, ToKeeper } from '../messages';

declare const self: ServiceWorkerGlobalScope;

/** Put in by the build once all other files are written: this file is the only one that is not in it. */
declare const OFFLINE_FILES: readonly OfflineFile[];

const keeper = new Keeper({
  scope: self.registration.scope,
  files: OFFLINE_FILES,
  cache: () => caches.open('wrenchside'),
  fetch: (request) => fetch(request),
});

const windows = (): Promise<readonly WindowClient[]> =>
  self.clients.matchAll({ type: 'window', includeUncontrolled: true });

self.addEventListener('install', (event) => {
  // The first time only what the page cannot do without; an update takes hold whole, or not at all.
  const filled = self.registration.active
    ? keeper.keptPaths().then((paths) => keeper.fill(neededAgain(paths)))
    : keeper.fill(['shell']);
  event.waitUntil(
    filled.then(({ state }) => {
      if (state !== 'ready') throw new Error('not all of this version could be fetched');
    }),
  );
});

self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', (event) => {
  const answer = keeper.answer(event.request);
  if (answer) event.respondWith(answer);
});

self.addEventListener('message', (event: ExtendableMessageEvent) => {
  const message: ToKeeper = event.data;
  switch (message.type) {
    case 'fill': {
      const tell = (report: OfflineReport): void => {
        const news: FromKeeper = { type: 'offline', ...report };
        event.source?.postMessage(news);
      };
      event.waitUntil(
        keeper.fill([...NEEDED, modelPart(message.model)], tell).then(async (report) => {
          tell(report);
          // Not before: a page of the version before may still be open, and ask for a part of it.
          if (report.state === 'ready' && (await windows()).length <= 1) await keeper.prune();
        }),
      );
      return;
    }
    case 'take-over':
      // Another window may be in the middle of a job, on files of the version before.
      event.waitUntil(windows().then((open) => (open.length <= 1 ? self.skipWaiting() : undefined)));
      return;
  }
});
