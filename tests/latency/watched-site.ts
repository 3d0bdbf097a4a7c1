import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dist, openSite, type Site } from '../browser/site';

export const pageScript = (name: string): string => new URL(`./page/${name}`, import.meta.url).pathname;

/** A copy of the built app with two scripts added: the tap of its audio thread, and a watch before the ear's own script. */
export async function openWatchedSite(): Promise<Site> {
  const folder = mkdtempSync(join(tmpdir(), 'latency-'));
  cpSync(dist, folder, { recursive: true });
  cpSync(pageScript('tap-worklet.js'), join(folder, 'latency-tap.js'));
  const worker = readdirSync(join(folder, 'assets')).find((name) => /^ear-worker-.*\.js$/.test(name));
  if (!worker) throw new Error(`${dist} has no script of the ear: build it first`);
  const path = join(folder, 'assets', worker);
  writeFileSync(path, readFileSync(pageScript('watch-ear.js'), 'utf8') + readFileSync(path, 'utf8'));
  const site = await openSite(folder);
  const close = async (): Promise<void> => {
    await site.close();
    rmSync(folder, { recursive: true });
  };
  return { ...site, close };
}
