import { createReadStream } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

const FOLDER = '/model/en-us/';
/** All that the decoder reads; the package's other language and its notes stay behind. */
const MODEL = join(dirname(createRequire(import.meta.url).resolve('soundswallower')), 'model/en-us');
const isModelFile = (name: string): boolean =>
  !name.endsWith('.txt') || name === 'dict.txt' || name === 'noisedict.txt';

/** Build: copies the acoustic model to model/en-us/. Dev server: serves it there, with a true 404 for anything else. */
export function modelAssets(): Plugin {
  return {
    name: 'wrenchside-model-assets',
    async generateBundle() {
      for (const name of (await readdir(MODEL)).filter(isModelFile)) {
        this.emitFile({ type: 'asset', fileName: `model/en-us/${name}`, source: await readFile(join(MODEL, name)) });
      }
    },
    configureServer(server) {
      server.middlewares.use(async (request, response, next) => {
        const path = (request.url ?? '').split('?')[0] ?? '';
        if (!path.startsWith('/model/')) return next();
        const name = path.startsWith(FOLDER) ? path.slice(FOLDER.length) : '';
        const known = (await readdir(MODEL)).filter(isModelFile).includes(name);
        response.statusCode = known ? 200 : 404;
        if (!known) return response.end();
        response.setHeader('content-type', name.endsWith('.json') ? 'application/json' : 'application/octet-stream');
        return createReadStream(join(MODEL, name)).pipe(response);
      });
    },
  };
}
