import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, sep } from 'node:path';
import type { Plugin } from 'vite';
import { type OfflineFile, partOf } from './file-list.ts';

const WORKER = 'service-worker.js';
const PLACE = 'OFFLINE_FILES';

/** Build: adds the service worker, and writes into it the list of every other file there is, however it came there. */
export function offlineWorker(): Plugin {
  return {
    name: 'wrenchside-offline-worker',
    apply: 'build',
    buildStart() {
      this.emitFile({ type: 'chunk', id: join(import.meta.dirname, 'worker/service-worker.ts'), fileName: WORKER });
    },
    writeBundle: {
      order: 'post',
      sequential: true,
      handler({ dir = '' }) {
        const worker = join(dir, WORKER);
        const code = readFileSync(worker, 'utf8');
        if (!code.includes(PLACE)) this.error(`${WORKER} has no place for the list of files`);
        writeFileSync(
          worker,
          code.replaceAll(PLACE, () => JSON.stringify(listed(dir))),
        );
      },
    },
  };
}

/** Every file of a build but the service worker itself. */
export function listed(folder: string): readonly OfflineFile[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => ({ path: name.split(sep).join('/'), at: join(folder, name) }))
    .filter(({ path, at }) => path !== WORKER && statSync(at).isFile())
    .map(({ path, at }) => {
      const content = readFileSync(at);
      const sha256 = createHash('sha256').update(content).digest('hex');
      return { path, sha256, bytes: content.length, part: partOf(path) };
    })
    .sort((a, b) => (a.path < b.path ? -1 : 1));
}
