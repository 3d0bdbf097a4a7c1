import { copyFileSync, cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { dist, openSite, type Site } from './site';

type Watching = {
  /** A script that is set before the ear's own: a path. */
  readonly ear: string;
  /** Scripts laid beside the app: their names there, and paths. */
  readonly beside?: Readonly<Record<string, string>>;
};

/** A copy of the built app with scripts added that watch it from inside. */
export async function openWatchedSite({ ear, beside = {} }: Watching): Promise<Site> {
  const folder = mkdtempSync(join(tmpdir(), 'watched-'));
  cpSync(dist, folder, { recursive: true });
  for (const [name, path] of Object.entries(beside)) copyFileSync(path, join(folder, name));
  const worker = readdirSync(join(folder, 'assets')).find((name) => /^ear-worker-.*\.js$/.test(name));
  if (!worker) throw new Error(`${dist} has no script of the ear: build it first`);
  const path = join(folder, 'assets', worker);
  writeFileSync(path, readFileSync(ear, 'utf8') + readFileSync(path, 'utf8'));
  const site = await openSite(folder);
  const close = async (): Promise<void> => {
    await site.close();
    rmSync(folder, { recursive: true });
  };
  return { ...site, close };
}
