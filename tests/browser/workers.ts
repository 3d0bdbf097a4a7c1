import type { BrowserContext, Page } from 'playwright-core';

/** Keeps hold of the page's workers, so that a test can do to them what a browser short of memory does. */
export async function watchWorkers(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    const all: { readonly address: string; readonly worker: Worker }[] = [];
    Object.assign(window, { allWorkers: all });
    const Real = Worker;
    window.Worker = class extends Real {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options);
        all.push({ address: String(address), worker: this });
      }
    };
  });
}

type Held = { readonly allWorkers: { readonly address: string; readonly worker: Worker }[] };

/** How many workers of this kind have been started so far. */
export const started = (page: Page, kind: string): Promise<number> =>
  page.evaluate(
    (name) => (window as unknown as Held).allWorkers.filter(({ address }) => address.includes(name)).length,
    kind,
  );

/** Ends the newest worker of this kind without a word to anyone. */
export const endWorker = (page: Page, kind: string): Promise<void> =>
  page.evaluate(
    (name) =>
      (window as unknown as Held).allWorkers.findLast(({ address }) => address.includes(name))?.worker.terminate(),
    kind,
  );

/** Sends the newest worker of this kind something that it cannot handle. */
export const upsetWorker = (page: Page, kind: string): Promise<void> =>
  page.evaluate(
    (name) =>
      (window as unknown as Held).allWorkers
        .findLast(({ address }) => address.includes(name))
        ?.worker.postMessage({ type: 'arm', grammar: {} }),
    kind,
  );
