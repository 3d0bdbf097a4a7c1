import { createReadStream } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';
import { parse } from 'yaml';

const MODELS = join(dirname(createRequire(import.meta.url).resolve('soundswallower')), 'model');
const GRAMMARS = join(import.meta.dirname, '../../grammars');

/** All that the decoder reads; the package's notes stay behind. */
const isModelFile = (name: string): boolean =>
  !name.endsWith('.txt') || name === 'dict.txt' || name === 'noisedict.txt';

/** The acoustic models that the languages of the program name, by their folders in the package. */
async function models(): Promise<readonly string[]> {
  const named = (await readdir(GRAMMARS)).map(async (language) => {
    const profile: unknown = parse(await readFile(join(GRAMMARS, language, 'language.yaml'), 'utf8'));
    const isNamed = typeof profile === 'object' && profile !== null && 'model' in profile;
    return isNamed && typeof profile.model === 'string' ? profile.model : '';
  });
  return [...new Set(await Promise.all(named))].filter(Boolean);
}

const filesOf = async (model: string): Promise<readonly string[]> =>
  (await readdir(join(MODELS, model))).filter(isModelFile);

/** Build: copies the acoustic models to model/. Dev server: serves them there, with a true 404 for anything else. */
export function modelAssets(): Plugin {
  return {
    name: 'wrenchside-model-assets',
    async generateBundle() {
      for (const model of await models())
        for (const name of await filesOf(model))
          this.emitFile({
            type: 'asset',
            fileName: `model/${model}/${name}`,
            source: await readFile(join(MODELS, model, name)),
          });
    },
    configureServer(server) {
      server.middlewares.use(async (request, response, next) => {
        const path = (request.url ?? '').split('?')[0] ?? '';
        if (!path.startsWith('/model/')) return next();
        const [model = '', name = ''] = path.slice('/model/'.length).split('/');
        const known = (await models()).includes(model) && (await filesOf(model)).includes(name);
        response.statusCode = known ? 200 : 404;
        if (!known) return response.end();
        response.setHeader('content-type', name.endsWith('.json') ? 'application/json' : 'application/octet-stream');
        return createReadStream(join(MODELS, model, name)).pipe(response);
      });
    },
  };
}
