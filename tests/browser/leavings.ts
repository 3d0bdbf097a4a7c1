import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import type { BrowserContext } from 'playwright-core';
import { afterEach } from 'vitest';
import { openContext } from './chromium';
import { openSite, type Site } from './site';

/** Folders, sites and browsers that are gone again, the last first, when the test that asked for them has ended. */
export function leavings(): {
  readonly folder: (name: string) => string;
  readonly site: (...args: Parameters<typeof openSite>) => Promise<Site>;
  readonly browser: (launch?: Parameters<typeof openContext>[0]) => Promise<BrowserContext>;
} {
  const left: (() => unknown)[] = [];
  afterEach(async () => {
    for (const undo of left.splice(0).reverse()) await undo();
  });
  return {
    folder: (name) => {
      const made = mkdtempSync(`${tmpdir()}/wrenchside-${name}-`);
      left.push(() => rmSync(made, { recursive: true, force: true }));
      return made;
    },
    site: async (...args) => {
      const opened = await openSite(...args);
      left.push(opened.close);
      return opened;
    },
    browser: async (launch = {}) => {
      const context = await openContext(launch);
      left.push(() => context.close());
      return context;
    },
  };
}
