import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { serve } from '../../src/cli/serve';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));

/** The built app on a free loopback port. */
export async function openSite(): Promise<{ readonly address: string; readonly close: () => Promise<void> }> {
  const server: Server = await serve(dist, 0);
  const { port } = server.address() as AddressInfo;
  return {
    address: `http://127.0.0.1:${port}/`,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
}
