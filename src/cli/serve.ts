import { existsSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import sirv from 'sirv';
import { fail, ok, type Result } from '../core/result';
import { openBrowser } from './open-browser';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));

const USUAL_PORT = 4817;
/** Tried one after the other when no port was asked for. */
const PORTS_TRIED = 10;
const LOOPBACK = '127.0.0.1';

/** The same policy as in the page itself; vosk.html has its own and is the only page let off it. */
export const CONTENT_SECURITY_POLICY =
  "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self' blob:; media-src 'self' blob:; " +
  "img-src 'self' blob:; worker-src 'self'; frame-src 'self'";

const HEADERS = {
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Permissions-Policy': 'microphone=(self), camera=(self), screen-wake-lock=(self), geolocation=()',
};

/** Serves a built folder and nothing outside it. Files that are not there are 404, never the start page. */
export function serve(folder: string, port: number, host = LOOPBACK): Promise<Server> {
  const files = sirv(folder, {
    dev: true,
    etag: true,
    dotfiles: false,
    setHeaders: (response, path) => {
      if (!path.endsWith('vosk.html')) response.setHeader('Content-Security-Policy', CONTENT_SECURITY_POLICY);
      if (path.endsWith('.wasm')) response.setHeader('Content-Type', 'application/wasm');
    },
  });
  const server = createServer((request, response) => {
    for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    // Nobody here needs part of a file, and a range that ends before it begins would end the server (sirv 3.0.2).
    delete request.headers.range;
    // sirv lets files whose name begins with a dot through while it serves from the disk.
    if (/\/(\.|%2e)/i.test(request.url ?? '')) notFound();
    else files(request, response, notFound);

    function notFound(): void {
      response.writeHead(404, { 'Content-Type': 'text/plain' }).end('not found\n');
    }
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => resolve(server));
  });
}

export type ServeFault = 'no-such-port' | 'port-taken' | 'port-forbidden' | 'no-such-host' | 'nothing-built';

/**
 * Serves the folder on the port that was asked for, or on the first free one from the usual port on. A port named by
 * the person is never exchanged for another: a bookmark, a certificate or a firewall may depend on it.
 */
export async function serveAt(
  folder: string,
  { port, host = LOOPBACK }: { readonly port?: string | undefined; readonly host?: string | undefined },
): Promise<Result<Server, ServeFault>> {
  if (!existsSync(`${folder}/index.html`)) return fail('nothing-built');
  if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65_535)) return fail('no-such-port');
  const first = port === undefined ? USUAL_PORT : Number(port);
  const last = port === undefined ? first + PORTS_TRIED - 1 : first;
  for (let tried = first; tried <= last; tried++) {
    try {
      return ok(await serve(folder, tried, host));
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : '';
      if (code === 'EACCES') return fail('port-forbidden');
      if (code !== 'EADDRINUSE') return fail('no-such-host');
    }
  }
  return fail('port-taken');
}

const MEND: Readonly<Record<ServeFault, string>> = {
  'nothing-built': 'Nothing is built yet. Run "npm run build" first, or "npm start", which does both.',
  'no-such-port': 'That is not a port: name a whole number from 0 to 65535, for example --port 4817.',
  'port-taken': 'Another program is using that port. Stop it, or name another one: --port 4900.',
  'port-forbidden': 'This account may not use that port. Name one above 1023: --port 4817.',
  'no-such-host': 'This machine has no such address. Leave --host out to serve this machine only.',
};

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: { port: { type: 'string' }, host: { type: 'string' }, 'no-open': { type: 'boolean', default: false } },
  });
  const served = await serveAt(dist, values);
  if (!served.ok) {
    console.error(MEND[served.error]);
    process.exitCode = 1;
    return;
  }
  // A server that listens on a port, and not on a pipe, has an address with one.
  const { port } = served.value.address() as AddressInfo;
  const host = values.host ?? LOOPBACK;
  const address = `http://${host}:${port}/`;
  console.log(`Wrenchside is at ${address}  (stop it with Ctrl-C)`);
  if (host !== LOOPBACK && host !== 'localhost')
    console.log('From other machines a browser gives no microphone to http: put https in front. See README.md.');
  if (!values['no-open']) openBrowser(address);
}

if (process.argv[1]?.endsWith('serve.ts')) await main();
