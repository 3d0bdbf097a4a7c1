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
  return write(value, '', 0);
}

function write(value: unknown, path: string, depth: number): Result<string, Unwritable> {
  if (depth > DEEPEST) return fail({ code: 'too-deep', path });
  if (value === null) return ok('null');
  switch (typeof value) {
    case 'string':
    case 'boolean':
      return ok(JSON.stringify(value));
    case 'number':
      return Number.isFinite(value) ? ok(JSON.stringify(value)) : fail({ code: 'not-finite', path });
    case 'object':
      if (Array.isArray(value)) return writeList(value, path, depth);
      return isPlain(value) ? writeMembers(value, path, depth) : fail({ code: 'not-json', path });
    default:
      return fail({ code: 'not-json', path });
  }
}

function writeList(list: readonly unknown[], path: string, depth: number): Result<string, Unwritable> {
  const parts: string[] = [];
  for (const [index, item] of list.entries()) {
    const part = write(item, `${path}/${index}`, depth + 1);
    if (!part.ok) return part;
    parts.push(part.value);
  }
  return ok(`[${parts.join(',')}]`);
}

function writeMembers(object: object, path: string, depth: number): Result<string, Unwritable> {
  const members = new Map(Object.entries(object));
  const parts: string[] = [];
  for (const key of [...members.keys()].sort()) {
    const value: unknown = members.get(key);
    if (value === undefined) continue;
    const at = `${path}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    if (key === '__proto__') return fail({ code: 'forbidden-key', path: at });
    const part = write(value, at, depth + 1);
    if (!part.ok) return part;
    parts.push(`${JSON.stringify(key)}:${part.value}`);
  }
  return ok(`{${parts.join(',')}}`);
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
