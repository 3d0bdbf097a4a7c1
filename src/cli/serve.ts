import { existsSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { fileURLToPath } from 'node:url';
import { parseArgs } from 'node:util';
import sirv from 'sirv';
import { openBrowser } from './open-browser';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));

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
export function serve(folder: string, port: number, host = '127.0.0.1'): Promise<Server> {
  const files = sirv(folder, {
    dev: true,
    etag: true,
    dotfiles: false,
    setHeaders: (response, path) => {
      for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
      if (!path.endsWith('vosk.html')) response.setHeader('Content-Security-Policy', CONTENT_SECURITY_POLICY);
      if (path.endsWith('.wasm')) response.setHeader('Content-Type', 'application/wasm');
    },
  });
  const server = createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    files(request, response, () => {
      response.writeHead(404, { 'Content-Type': 'text/plain' }).end('not found\n');
    });
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, host, () => resolve(server));
  });
}

async function main(): Promise<void> {
  const { values } = parseArgs({
    options: {
      port: { type: 'string', default: '4817' },
      host: { type: 'string', default: '127.0.0.1' },
      'no-open': { type: 'boolean', default: false },
    },
  });
  if (!existsSync(`${dist}index.html`)) {
    console.error('Nothing is built yet. Run "npm run build" first, or "npm start", which does both.');
    process.exitCode = 1;
    return;
  }
  const server = await serve(dist, Number(values.port), values.host);
  const { port } = server.address() as AddressInfo;
  const address = `http://${values.host}:${port}/`;
  console.log(`Wrenchside is at ${address}  (stop it with Ctrl-C)`);
  if (!values['no-open']) openBrowser(address);
}

if (process.argv[1]?.endsWith('serve.ts')) await main();
