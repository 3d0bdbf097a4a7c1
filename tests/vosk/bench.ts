import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { serve } from '../../src/cli/serve';

const path = (relative: string): string => fileURLToPath(new URL(relative, import.meta.url));

export type Bench = { readonly address: string; readonly folder: string; readonly close: () => Promise<void> };

/**
 * The page of the user's model as the app's own build makes it, and a page around it under the app's own policy,
 * served by the app's own server.
 */
export async function openBench(): Promise<Bench> {
  const folder = mkdtempSync(join(tmpdir(), 'vosk-bench-'));
  await build({
    configFile: path('../../src/vite.config.ts'),
    root: path('../../src'),
    logLevel: 'error',
    build: {
      outDir: folder,
      emptyOutDir: true,
      copyPublicDir: false,
      chunkSizeWarningLimit: 6_000,
      rolldownOptions: {
        input: { vosk: path('../../src/vosk.html'), bench: path('./bench-page.ts') },
        output: { entryFileNames: ({ name }) => (name === 'bench' ? 'bench.js' : 'assets/[name]-[hash].js') },
      },
    },
  });
  writeFileSync(
    join(folder, 'bench.html'),
    '<!doctype html><title>bench</title><script type="module" src="bench.js"></script>',
  );
  // A browser asks for it unasked.
  writeFileSync(join(folder, 'favicon.ico'), '');
  const server = await serve(folder, 0);
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/bench.html`,
    folder,
    close: async () => {
      await new Promise((resolve) => server.close(resolve));
      rmSync(folder, { recursive: true });
    },
  };
}
