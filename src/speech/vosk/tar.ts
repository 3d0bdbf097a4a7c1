import { fail, ok, type Result } from '../../core/result';
import type { ArchiveFault } from './archive-fault';

export type TarFile = { readonly path: string; readonly size: number };

/** Takes the parts of a file's content, in order; null is for a file nobody wants to read. */
export type FileSink = ((part: Uint8Array<ArrayBuffer>) => void) | null;

const BLOCK = 512;
/** Long names and other attributes come as files of their own, which need not be larger than this. */
const LONGEST_ATTRIBUTES = 64 * 1024;

type State =
  | { readonly at: 'header' }
  | { readonly at: 'content'; readonly sink: FileSink; readonly left: number; readonly padding: number }
  | { readonly at: 'end' };

/**
 * Reads a tar stream (POSIX.1-1988 ustar, the pax records of POSIX.1-2001, and GNU long names) part by part, so that
 * a large archive never lies in memory whole. `want` is asked for each file whether its content matters.
 */
export class TarReader {
  readonly files: TarFile[] = [];
  readonly #want: (file: TarFile) => FileSink;
  #held = new Uint8Array(0);
  #state: State = { at: 'header' };
  #longName: string | null = null;

  constructor(want: (file: TarFile) => FileSink) {
    this.#want = want;
  }

  push(part: Uint8Array<ArrayBuffer>): Result<void, ArchiveFault> {
    this.#held = joined(this.#held, part);
    for (;;) {
      if (this.#state.at === 'end') {
        this.#held = new Uint8Array(0);
        return ok(undefined);
      }
      if (this.#state.at === 'content') {
        if (!this.#content(this.#state)) return ok(undefined);
        continue;
      }
      if (this.#held.length < BLOCK) return ok(undefined);
      const header = this.#held.slice(0, BLOCK);
      this.#held = this.#held.subarray(BLOCK);
      const read = this.#header(header);
      if (!read.ok) return read;
    }
  }

  /** Whether the stream may stop here: after an end mark, or between files, where some writers stop without one. */
  get isWhole(): boolean {
    return this.#state.at === 'end' || (this.#state.at === 'header' && this.#held.length === 0);
  }

  /** False once more bytes are needed. */
  #content({ sink, left, padding }: Extract<State, { at: 'content' }>): boolean {
    const taken = Math.min(left, this.#held.length);
    if (taken > 0) sink?.(this.#held.slice(0, taken));
    this.#held = this.#held.subarray(taken);
    const skipped = left === taken ? Math.min(padding, this.#held.length) : 0;
    this.#held = this.#held.subarray(skipped);
    const done = left === taken && padding === skipped;
    this.#state = done ? { at: 'header' } : { at: 'content', sink, left: left - taken, padding: padding - skipped };
    return done;
  }

  #header(header: Uint8Array<ArrayBuffer>): Result<void, ArchiveFault> {
    if (header.every((byte) => byte === 0)) {
      this.#state = { at: 'end' };
      return ok(undefined);
    }
    const size = number(header.subarray(124, 136));
    if (!checksumFits(header) || size === null) return fail({ code: 'archive-not-tar' });
    const kind = String.fromCharCode(header[156] ?? 0);
    const content = (sink: FileSink): Result<void, ArchiveFault> => {
      this.#state = { at: 'content', sink, left: size, padding: (BLOCK - (size % BLOCK)) % BLOCK };
      if (size === 0) this.#state = { at: 'header' };
      return ok(undefined);
    };
    if ('Lxg'.includes(kind)) {
      if (size > LONGEST_ATTRIBUTES) return fail({ code: 'archive-not-tar' });
      let record = new Uint8Array(0);
      return content((part) => {
        record = joined(record, part);
        if (record.length === size && kind !== 'g') this.#longName = kind === 'L' ? text(record) : paxPath(record);
      });
    }
    const written = this.#longName ?? ustarName(header);
    this.#longName = null;
    const path = written.replace(/^(\.\/+)+/, '').replace(/\/+$/, '');
    if (kind === '5') return content(null);
    if (!['0', '\0', '7'].includes(kind) || isOutside(path)) return fail({ code: 'archive-odd-entry', name: written });
    const file = { path, size };
    this.files.push(file);
    return content(this.#want(file));
  }
}

function joined(a: Uint8Array<ArrayBuffer>, b: Uint8Array<ArrayBuffer>): Uint8Array<ArrayBuffer> {
  if (a.length === 0) return b;
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** Up to the first NUL. */
function text(bytes: Uint8Array): string {
  const end = bytes.indexOf(0);
  return new TextDecoder().decode(end < 0 ? bytes : bytes.subarray(0, end));
}

function ustarName(header: Uint8Array): string {
  const name = text(header.subarray(0, 100));
  const prefix = text(header.subarray(257, 262)) === 'ustar' ? text(header.subarray(345, 500)) : '';
  // GNU's own variant has times where POSIX has the prefix, and marks itself by two blanks.
  return prefix === '' || header[262] !== 0 ? name : `${prefix}/${name}`;
}

/** A number in octal digits. GNU's binary form is for files beyond 8 GiB, which no model of ours is. */
function number(field: Uint8Array): number | null {
  const digits = text(field).trim();
  return /^[0-7]{1,11}$/.test(digits) ? Number.parseInt(digits, 8) : null;
}

/** The sum of all bytes, those of the sum itself taken as blanks. */
function checksumFits(header: Uint8Array): boolean {
  const said = number(header.subarray(148, 156));
  return header.reduce((sum, byte, at) => sum + (at >= 148 && at < 156 ? 32 : byte), 0) === said;
}

/** The path among pax records, each "length key=value\n"; null where none is given. */
function paxPath(records: Uint8Array): string | null {
  return /(?:^|\n)\d+ path=([^\n]*)\n/.exec(new TextDecoder().decode(records))?.[1] ?? null;
}

const isOutside = (path: string): boolean => path === '' || path.startsWith('/') || path.split('/').includes('..');
