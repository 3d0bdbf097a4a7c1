import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { serve } from '../../src/cli/serve';

/** What is tested: dist, or another build named by WRENCHSIDE_DIST. */
export const dist = process.env.WRENCHSIDE_DIST
  ? resolve(process.env.WRENCHSIDE_DIST)
  : fileURLToPath(new URL('../../dist/', import.meta.url));

export type Site = {
  readonly address: string;
  readonly port: number;
  /** Every path it was asked for so far, by whomever. */
  readonly asked: readonly string[];
  readonly close: () => Promise<void>;
};

/** A built app, on a free loopback port unless one is named. */
export async function openSite(folder = dist, wanted = 0): Promise<Site> {
  const server: Server = await serve(folder, wanted);
  const asked: string[] = [];
  server.on('request', ({ url = '' }) => asked.push(url));
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    port,
    asked,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
        // A page keeps its connections open; a server that is gone has none.
        server.closeAllConnections();
      }),
  };
}
