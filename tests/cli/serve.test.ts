import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { type AddressInfo, connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { CONTENT_SECURITY_POLICY, serve, serveAt } from '../../src/cli/serve';

const root = mkdtempSync(join(tmpdir(), 'wrenchside-serve-'));
const folder = join(root, 'dist');
const portOf = (server: { address(): unknown }): number => (server.address() as AddressInfo).port;

mkdirSync(join(folder, 'model/en-us'), { recursive: true });
mkdirSync(join(root, 'dist-beside'));
writeFileSync(join(root, 'secret.txt'), 'secret');
writeFileSync(join(root, 'dist-beside/secret.txt'), 'secret');
writeFileSync(join(folder, 'index.html'), '<!doctype html>start page');
writeFileSync(join(folder, '.hidden'), 'secret');
writeFileSync(join(folder, 'engine.wasm'), 'wasm');
writeFileSync(join(folder, 'model/en-us/mdef'), 'model');
afterAll(() => rmSync(root, { recursive: true }));

/** A request as it is written here, with nothing made tidy on the way. */
function raw(port: number, path: string, { method = 'GET', headers = '' } = {}): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    let answer = '';
    socket.on('data', (data) => {
      answer += data;
    });
    socket.on('close', () => resolve(answer));
    socket.on('error', reject);
    socket.write(`${method} ${path} HTTP/1.1\r\nHost: here\r\nConnection: close\r\n${headers}\r\n`);
  });
}

describe('what is served', () => {
  let server: Server;
  let port: number;
  beforeAll(async () => {
    server = await serve(folder, 0);
    port = portOf(server);
  });
  afterAll(() => server.close());

  test('only this machine can reach it unless told otherwise', () => {
    expect((server.address() as AddressInfo).address).toBe('127.0.0.1');
  });

  test.each(['/', '/index.html', '/?x=1'])('%s is the start page with its policy', async (path) => {
    const answer = await raw(port, path);
    expect(answer).toContain('200 OK');
    expect(answer).toContain(CONTENT_SECURITY_POLICY);
    expect(answer).toContain('X-Content-Type-Options: nosniff');
    expect(answer).toContain('start page');
  });

  test('WebAssembly has its type, without which no browser compiles it while it arrives', async () => {
    expect(await raw(port, '/engine.wasm')).toContain('Content-Type: application/wasm');
  });

  test('a file with no extension is found', async () => {
    expect(await raw(port, '/model/en-us/mdef')).toContain('model');
  });

  test.each([
    '/model/en-us/feature_transform',
    '/model/',
    '/nothing/here',
    '/.hidden',
    '/%2ehidden',
    '/%2Ehidden',
    '/../secret.txt',
    '/%2e%2e/secret.txt',
    '/%2e%2e%2fsecret.txt',
    '/..%2fsecret.txt',
    '/..%5csecret.txt',
    '/model/../../secret.txt',
    '/model/%2e%2e/%2e%2e/secret.txt',
    '/../dist-beside/secret.txt',
    '//etc/passwd',
    '/%00',
    '/%E0%A4%A',
    'http://elsewhere/../secret.txt',
  ])('%s is not found, and is never the start page', async (path) => {
    const answer = await raw(port, path);
    expect(answer).toMatch(/^HTTP\/1\.1 40[04]/);
    expect(answer).not.toContain('secret');
    expect(answer).not.toContain('start page');
  });

  test.each(['POST', 'PUT', 'DELETE', 'OPTIONS'])('%s is not allowed', async (method) => {
    expect(await raw(port, '/', { method })).toContain('405 ');
  });

  test.each(['bytes=9-2', 'bytes=99999-', 'bytes=-', 'bytes=x-y', 'bytes=0-0'])(
    'a request for the range %s gets the whole file, and the server goes on',
    async (range) => {
      expect(await raw(port, '/model/en-us/mdef', { headers: `Range: ${range}\r\n` })).toContain('200 OK');
      expect(await raw(port, '/')).toContain('start page');
    },
  );
});

describe('where it is served', () => {
  const open: { close(): unknown }[] = [];
  afterEach(() => {
    for (const one of open.splice(0)) one.close();
  });
  const taken = async (): Promise<number> => {
    const other = createServer().listen(0, '127.0.0.1');
    open.push(other);
    await new Promise((resolve) => other.once('listening', resolve));
    return portOf(other);
  };

  test('a port that was asked for and is taken is never exchanged for another', async () => {
    expect(await serveAt(folder, { port: String(await taken()) })).toEqual({ ok: false, error: 'port-taken' });
  });

  test('without a wish the next free port is found', async () => {
    const servers = [await serveAt(folder, {}), await serveAt(folder, {})];
    for (const served of servers) if (served.ok) open.push(served.value);
    const ports = servers.map((served) => (served.ok ? portOf(served.value) : 0));
    expect(new Set(ports).size).toBe(2);
    expect(Math.min(...ports)).toBeGreaterThanOrEqual(4817);
  });

  test.each(['', 'x', '-1', '65536', '1.5', '80 80'])('"%s" is no port', async (port) => {
    expect(await serveAt(folder, { port })).toEqual({ ok: false, error: 'no-such-port' });
  });

  test('an address this machine does not have', async () => {
    expect(await serveAt(folder, { port: '0', host: '203.0.113.1' })).toEqual({ ok: false, error: 'no-such-host' });
  });

  test('a folder with nothing built in it', async () => {
    expect(await serveAt(root, {})).toEqual({ ok: false, error: 'nothing-built' });
  });
});
