import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { modelPart, NEEDED, neededAgain, type OfflineFile, partOf, pathUnder } from '../../src/offline/file-list';
import { Keeper } from '../../src/offline/keeper';

const PARTS = [...NEEDED, modelPart('en-us')];

const SCOPE = 'https://host.example/bay/';

const fileOf = (path: string, content: string): OfflineFile => ({
  path,
  sha256: createHash('sha256').update(content).digest('hex'),
  bytes: content.length,
  part: partOf(path),
});

/** The part of a Cache that is used, in memory. `room` is how many entries fit. */
function memoryCache(room = Number.POSITIVE_INFINITY): Cache & { readonly held: Map<string, Response> } {
  const held = new Map<string, Response>();
  const bare = (url: string): string => url.split('?')[0] ?? url;
  const cache = {
    held,
    match: async (key: string, options?: { ignoreSearch?: boolean }) => {
      const found = options?.ignoreSearch ? [...held].find(([url]) => bare(url) === bare(key))?.[1] : held.get(key);
      return found?.clone();
    },
    put: async (key: string, response: Response) => {
      if (held.size >= room) throw new DOMException('full', 'QuotaExceededError');
      held.set(key, response);
    },
    keys: async () => [...held.keys()].map((url) => ({ url })),
    delete: async (key: string) => held.delete(key),
  };
  return cache as unknown as ReturnType<typeof memoryCache>;
}

const SHELL = 'the shell';
const MODEL = 'the model';
const VOICE = 'the voice';
const files = [fileOf('index.html', SHELL), fileOf('model/en-us/mdef', MODEL), fileOf('assets/flite-1.wasm', VOICE)];
const SERVED = { 'index.html': SHELL, 'model/en-us/mdef': MODEL, 'assets/flite-1.wasm': VOICE };

function keeperOn(served: Readonly<Record<string, string>> | null, list = files, cache = memoryCache()) {
  const asked: string[] = [];
  const keeper = new Keeper({
    scope: SCOPE,
    files: list,
    cache: async () => cache,
    fetch: async ({ url }) => {
      const path = url.slice(SCOPE.length);
      asked.push(path);
      if (!served) throw new TypeError('no network');
      const body = served[path];
      return body === undefined ? new Response('not found', { status: 404 }) : new Response(body);
    },
  });
  const get = (path: string, method = 'GET') => keeper.answer(new Request(SCOPE + path, { method }));
  return { keeper, asked, cache, get };
}

describe('keeping', () => {
  test('everything needed is kept once, and then answered with no network', async () => {
    const { keeper, asked, cache } = keeperOn(SERVED);
    expect((await keeper.fill(PARTS)).state).toBe('ready');
    expect((await keeper.fill(PARTS)).state).toBe('ready');
    expect(asked).toHaveLength(3);
    const later = keeperOn(null, files, cache);
    expect(await (await later.get('model/en-us/mdef'))?.text()).toBe(MODEL);
    expect(await (await later.get(''))?.text()).toBe(SHELL);
    expect(await (await later.get('?from=bookmark'))?.text()).toBe(SHELL);
    expect(later.asked).toEqual([]);
  });

  test.each([
    ['half a download', { ...SERVED, 'assets/flite-1.wasm': 'the vo' }],
    ['the start page in its place', { ...SERVED, 'assets/flite-1.wasm': SHELL }],
    ['another version of it', { ...SERVED, 'assets/flite-1.wasm': 'a new voice' }],
    ['no such file', { 'index.html': SHELL, 'model/en-us/mdef': MODEL }],
  ])('%s is never kept as the file', async (_, served) => {
    const { keeper, cache } = keeperOn(served);
    const report = await keeper.fill(PARTS);
    expect(report).toEqual({
      state: 'incomplete',
      keptBytes: SHELL.length + MODEL.length,
      ofBytes: SHELL.length + MODEL.length + VOICE.length,
    });
    expect(cache.held.size).toBe(2);
  });

  test('with no room left it says so, and the page still gets its file', async () => {
    const { keeper, get } = keeperOn(SERVED, files, memoryCache(1));
    expect((await keeper.fill(PARTS)).state).toBe('incomplete');
    expect(await (await get('assets/flite-1.wasm'))?.text()).toBe(VOICE);
  });

  test('the page and the keeper share one download', async () => {
    const { keeper, asked, get } = keeperOn(SERVED);
    const [, answer] = await Promise.all([keeper.fill(PARTS), get('assets/flite-1.wasm')]);
    expect(await answer?.text()).toBe(VOICE);
    expect(asked.filter((path) => path === 'assets/flite-1.wasm')).toHaveLength(1);
  });

  test('what was packed for the way is not said to be packed still', async () => {
    const cache = memoryCache();
    const keeper = new Keeper({
      scope: SCOPE,
      files: [fileOf('index.html', SHELL)],
      cache: async () => cache,
      fetch: async () => new Response(SHELL, { headers: { 'content-encoding': 'gzip', 'content-length': '5' } }),
    });
    await keeper.fill(PARTS);
    const answer = await keeper.answer(new Request(SCOPE));
    expect(answer?.headers.get('content-encoding')).toBeNull();
    expect(answer?.headers.get('content-length')).toBe(String(SHELL.length));
  });
});

describe('updating', () => {
  const next = [fileOf('index.html', 'a new shell'), ...files.slice(1)];

  test('only what has changed is fetched, and the version in use stays whole until it is pruned', async () => {
    const old = keeperOn(SERVED);
    await old.keeper.fill(PARTS);
    const fresh = keeperOn({ ...SERVED, 'index.html': 'a new shell' }, next, old.cache);
    expect((await fresh.keeper.fill(PARTS)).state).toBe('ready');
    expect(fresh.asked).toEqual(['index.html']);
    expect(await (await old.get(''))?.text()).toBe(SHELL);
    await fresh.keeper.prune();
    expect(old.cache.held.size).toBe(3);
    expect(await (await fresh.get(''))?.text()).toBe('a new shell');
  });

  test('a page of the version before still gets the parts it asks for late', async () => {
    const old = keeperOn(SERVED);
    await old.keeper.fill(PARTS);
    const fresh = keeperOn(null, [fileOf('assets/flite-2.wasm', 'x')], old.cache);
    expect(await (await fresh.get('assets/flite-1.wasm'))?.text()).toBe(VOICE);
  });
});

describe('the acoustic models', () => {
  const list = [...files, fileOf('model/fr-fr/mdef', 'un modèle')];
  const served = { ...SERVED, 'model/fr-fr/mdef': 'un modèle' };

  test('only that of the language in use is fetched', async () => {
    const { keeper, asked } = keeperOn(served, list);
    expect((await keeper.fill(PARTS)).state).toBe('ready');
    expect(asked).not.toContain('model/fr-fr/mdef');
  });

  test('an update takes hold with the models that this machine has used, and no others', async () => {
    const { keeper, get } = keeperOn(served, list);
    await keeper.fill(['shell']);
    expect(neededAgain(await keeper.keptPaths())).toEqual(NEEDED);
    await get('model/fr-fr/mdef');
    expect(neededAgain(await keeper.keptPaths())).toEqual([...NEEDED, 'model-fr-fr']);
  });
});

describe('what is none of its business', () => {
  test('another host, another folder of this host, and anything that is no reading', () => {
    const { keeper, get } = keeperOn(SERVED);
    expect(keeper.answer(new Request('https://elsewhere.example/bay/index.html'))).toBeNull();
    expect(keeper.answer(new Request('https://host.example/other/index.html'))).toBeNull();
    expect(get('index.html', 'POST')).toBeNull();
  });

  test('without a network a file of no build is not found, and is not the start page', async () => {
    const { keeper, cache } = keeperOn(SERVED);
    await keeper.fill(PARTS);
    const answer = await keeperOn(null, files, cache).get('model/en-us/feature_transform');
    expect(answer?.status).toBe(404);
    expect(await answer?.text()).not.toContain(SHELL);
  });
});

test.each([
  ['index.html', 'shell'],
  ['assets/index-AB12.js', 'shell'],
  ['assets/ear-worker-AB12.js', 'ear'],
  ['assets/capture-AB12.js', 'ear'],
  ['assets/rnnoise-AB12.wasm', 'ear'],
  ['model/en-us/mdef', 'model-en-us'],
  ['model/fr-fr/mdef', 'model-fr-fr'],
  ['assets/language-fr-AB12.js', 'shell'],
  ['assets/flite-AB12.wasm', 'voice'],
  ['assets/flite-worker-AB12.js', 'voice'],
  ['vosk.html', 'choice'],
  ['assets/vosk-frame-AB12.js', 'choice'],
])('%s belongs to the %s', (path, part) => {
  expect(partOf(path)).toBe(part);
});

test.each([
  ['https://host.example/bay/', 'index.html'],
  ['https://host.example/bay/?x#y', 'index.html'],
  ['https://host.example/bay/assets/a.js?v=1', 'assets/a.js'],
  ['https://host.example/ba', null],
  ['http://host.example/bay/', null],
])('%s is %s', (address, path) => {
  expect(pathUnder(SCOPE, address)).toBe(path);
});
