import { type OfflineFile, type Part, pathUnder } from './file-list';
import type { OfflineReport } from './messages';

export type KeeperHost = {
  /** The folder the app is served from: absolute, with a trailing slash. */
  readonly scope: string;
  readonly files: readonly OfflineFile[];
  readonly cache: () => Promise<Cache>;
  readonly fetch: (request: Request) => Promise<Response>;
};

type Fetched = { readonly bytes: ArrayBuffer; readonly response: Response; readonly same: boolean };

/**
 * Keeps the files of one build and answers with them. A file is kept under its path and its hash, so that an update
 * fetches only what has changed and the build in use is never touched; only bytes with the right hash are kept, so that
 * half a download or a page that says "not found" never takes a file's place.
 */
export class Keeper {
  readonly #host: KeeperHost;
  readonly #files: ReadonlyMap<string, OfflineFile>;
  readonly #underWay = new Map<string, Promise<Fetched>>();
  #filling: Promise<OfflineReport> | null = null;

  constructor(host: KeeperHost) {
    this.#host = host;
    this.#files = new Map(host.files.map((file) => [file.path, file]));
  }

  /** The answer to a request of the page, or null to leave it to the browser: it is none of ours. */
  answer(request: Request): Promise<Response> | null {
    const path = pathUnder(this.#host.scope, request.url);
    if (request.method !== 'GET' || path === null) return null;
    const file = this.#files.get(path);
    return file ? this.#kept(file) : this.#unlisted(request);
  }

  /** Fetches what is missing of these parts, one file after the other. Never throws: the report tells how far it came. */
  fill(parts: readonly Part[], tell: (report: OfflineReport) => void = () => undefined): Promise<OfflineReport> {
    this.#filling ??= this.#fillNow(parts, tell).finally(() => {
      this.#filling = null;
    });
    return this.#filling;
  }

  /** The paths of everything that is kept, of this build and of others. */
  async keptPaths(): Promise<readonly string[]> {
    const keys = await (await this.#host.cache()).keys();
    return keys.flatMap(({ url }) => pathUnder(this.#host.scope, url) ?? []);
  }

  /** Forgets the files of other builds. Only while no page of such a build is open: it may yet ask for one. */
  async prune(): Promise<void> {
    const cache = await this.#host.cache();
    const ours = new Set(this.#host.files.map((file) => this.#key(file)));
    for (const { url } of await cache.keys()) if (!ours.has(url)) await cache.delete(url);
  }

  async #fillNow(parts: readonly Part[], tell: (report: OfflineReport) => void): Promise<OfflineReport> {
    const cache = await this.#host.cache();
    const wanted = this.#host.files.filter((file) => parts.includes(file.part));
    const ofBytes = wanted.reduce((sum, { bytes }) => sum + bytes, 0);
    let keptBytes = 0;
    let missing = 0;
    for (const file of wanted) {
      const here = (await cache.match(this.#key(file))) !== undefined || (await this.#tryFetch(file));
      if (here) keptBytes += file.bytes;
      else missing += 1;
      tell({ state: 'filling', keptBytes, ofBytes });
    }
    const report: OfflineReport = { state: missing === 0 ? 'ready' : 'incomplete', keptBytes, ofBytes };
    tell(report);
    return report;
  }

  async #tryFetch(file: OfflineFile): Promise<boolean> {
    try {
      const { same } = await this.#fetched(file);
      return same && (await (await this.#host.cache()).match(this.#key(file))) !== undefined;
    } catch {
      return false; // No network, or a server that is gone. It is asked again.
    }
  }

  async #kept(file: OfflineFile): Promise<Response> {
    const kept = await (await this.#host.cache()).match(this.#key(file));
    if (kept) return kept;
    const { bytes, response } = await this.#fetched(file);
    return copyOf(response, bytes);
  }

  /** A file of the build before, which a page of that build may still ask for; otherwise whatever the server says. */
  async #unlisted(request: Request): Promise<Response> {
    const kept = await (await this.#host.cache()).match(request.url, { ignoreSearch: true });
    if (kept) return kept;
    // Without a network the truth about a file that is in no build is that it is not there, and never the start page.
    return this.#host.fetch(request).catch(() => new Response(null, { status: 404 }));
  }

  #fetched(file: OfflineFile): Promise<Fetched> {
    const asked = this.#underWay.get(file.path);
    if (asked) return asked;
    const now = this.#fetchNow(file).finally(() => this.#underWay.delete(file.path));
    this.#underWay.set(file.path, now);
    return now;
  }

  async #fetchNow(file: OfflineFile): Promise<Fetched> {
    const response = await this.#host.fetch(new Request(this.#host.scope + file.path, { cache: 'no-cache' }));
    const bytes = await response.arrayBuffer();
    const same = response.ok && (await hex(bytes)) === file.sha256;
    if (same) {
      // No room is no reason to withhold the file from the page.
      const cache = await this.#host.cache();
      await cache.put(this.#key(file), copyOf(response, bytes)).catch(() => undefined);
    }
    return { bytes, response, same };
  }

  #key(file: OfflineFile): string {
    return `${this.#host.scope}${file.path}?sha256=${file.sha256}`;
  }
}

/** The same answer with a body that can be read again. The bytes are unpacked by now, whatever the headers say. */
function copyOf({ status, statusText, headers }: Response, bytes: ArrayBuffer): Response {
  const kept = new Headers(headers);
  kept.delete('content-encoding');
  kept.set('content-length', String(bytes.byteLength));
  return new Response(bytes, { status, statusText, headers: kept });
}

async function hex(bytes: ArrayBuffer): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}
