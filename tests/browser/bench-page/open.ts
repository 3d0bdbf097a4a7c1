import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { openSite, type Site } from '../site';

/** The screens of the app on a page of their own, which draws whatever it is given: built for the test, never shipped. */
export async function openBenchPage(): Promise<Site> {
  const folder = mkdtempSync(join(tmpdir(), 'bench-page-'));
  await build({
    configFile: false,
    root: import.meta.dirname,
    base: './',
    logLevel: 'warn',
    build: { outDir: folder, emptyOutDir: true, assetsInlineLimit: 0, target: 'es2022', minify: false },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  });
  const site = await openSite(folder);
  const close = async (): Promise<void> => {
    await site.close();
    rmSync(folder, { recursive: true });
  };
  return { ...site, close };
}
