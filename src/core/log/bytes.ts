import { fail, ok, type Result } from '../result';

/** Why a value has no canonical text; `path` is a JSON Pointer (RFC 6901) to the part at fault. */
export type Unwritable = {
  readonly code: 'not-json' | 'not-finite' | 'too-deep' | 'forbidden-key';
  readonly path: string;
};

/** Deeper than any entry of ours, and far short of what would overflow the stack. */
const DEEPEST = 64;

/**
 * The one JSON text of a value, as RFC 8785 (JSON Canonicalization Scheme) has it: no spaces, members sorted by
 * UTF-16 code unit, numbers as ECMAScript prints them, so that -0 is `0`. A member whose value is undefined is left out.
 *
 * Two differences: a lone surrogate is escaped where the RFC refuses it, because what was said must not be lost to a
 * stray character; and the key `__proto__` is refused, because no entry of ours has it.
 */
export function canonical(value: unknown): Result<string, Unwritable> {
  return write(value, 0);
}

/** The path is put together on the way out of a fault, since tens of thousands of entries are written without one. */
function write(value: unknown, depth: number): Result<string, Unwritable> {
  if (depth > DEEPEST) return fail({ code: 'too-deep', path: '' });
  if (value === null) return ok('null');
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return ok(JSON.stringify(value));
    case 'number':
      return Number.isFinite(value) ? ok(JSON.stringify(value)) : fail({ code: 'not-finite', path: '' });
    case 'object':
      if (Array.isArray(value)) return writeList(value, depth);
      return isPlain(value) ? writeMembers(value, depth) : fail({ code: 'not-json', path: '' });
    default:
      return fail({ code: 'not-json', path: '' });
  }
}

function writeList(list: readonly unknown[], depth: number): Result<string, Unwritable> {
  const parts: string[] = [];
  for (const [index, item] of list.entries()) {
    const part = write(item, depth + 1);
    if (!part.ok) return under(String(index), part.error);
    parts.push(part.value);
  }
  return ok(`[${parts.join(',')}]`);
}

function writeMembers(object: object, depth: number): Result<string, Unwritable> {
  const parts: string[] = [];
  const members: [string, unknown][] = Object.entries(object);
  for (const [key, value] of members.sort(byKey)) {
    if (value === undefined) continue;
    if (key === '__proto__') return under(key, { code: 'forbidden-key', path: '' });
    const part = write(value, depth + 1);
    if (!part.ok) return under(key, part.error);
    parts.push(`${JSON.stringify(key)}:${part.value}`);
  }
  return ok(`{${parts.join(',')}}`);
}

/** By UTF-16 code units, as strings compare. */
const byKey = ([a]: readonly [string, unknown], [b]: readonly [string, unknown]): number => (a < b ? -1 : 1);

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

const under = (key: string, { code, path }: Unwritable): Result<string, Unwritable> =>
  fail({ code, path: `/${key.replaceAll('~', '~0').replaceAll('/', '~1')}${path}` });
