import type { Hash } from '../ports';
import { fail, ok, type Result } from '../result';
import { canonical, type Unwritable } from './bytes';
import { LOG_VERSION } from './version';

/**
 * What the log itself knows of an entry. `seq` counts 1, 2, 3… in a job and is the entry's id; `prev` is the hash of the
 * entry before, or `NO_PREVIOUS`; `at` is UTC wall time in ms; `mono` is ms on a clock that never jumps, comparable only
 * inside one `session`; `who` is the person at work.
 */
export type Stamp = {
  readonly v: number;
  readonly seq: number;
  readonly prev: string;
  readonly at: number;
  readonly mono: number;
  readonly session: string;
  readonly who: string;
};

/** What an entry says. It may not use the envelope's own names. */
export type Body = { readonly kind: string } & { readonly [name in keyof Stamp | 'hash']?: never };

/** When and by whom an entry is made. */
export type Moment = Pick<Stamp, 'at' | 'mono' | 'session' | 'who'>;

export type Entry<B extends Body> = Stamp & { readonly hash: string } & B;

/** An entry as it lies in storage. The text is kept to the byte; the other fields say where in the chain it belongs. */
export type SealedText = {
  readonly seq: number;
  readonly prev: string;
  readonly hash: string;
  readonly text: string;
};

/** An entry read back and found whole, in the version it was written in, its body not looked at yet. */
export type StoredEntry = Stamp & {
  readonly hash: string;
  readonly kind: string;
  readonly [field: string]: unknown;
};

export type EntryFault =
  | { readonly code: 'too-big'; readonly length: number; readonly most: number }
  | { readonly code: 'not-an-entry'; readonly field: string | null }
  | { readonly code: 'newer-log'; readonly given: number; readonly known: number }
  /** An entry all right, but not in the bytes that we would have written: someone has edited it. */
  | { readonly code: 'not-canonical' }
  | { readonly code: 'bad-hash'; readonly stated: string; readonly found: string };

/** What `prev` holds in the first entry of a job. */
export const NO_PREVIOUS = '0'.repeat(64);

/** In UTF-16 code units. An entry that holds a whole procedure stays far below it. */
export const LONGEST_ENTRY = 1 << 22;

/**
 * Closes an entry: the hash is SHA-256 over the canonical text without `hash`, and `hash` then takes its place in it.
 * Throws where the body cannot be written (NaN, a function, a cycle, over `LONGEST_ENTRY`): that is a fault of the program, not of the job.
 */
export function seal<B extends Body>(
  body: B,
  { v, seq, prev, at, mono, session, who }: Stamp,
  hash: Hash,
): { readonly entry: Entry<B>; readonly sealed: SealedText } {
  const place = { v, seq, prev, at, mono, session, who };
  const digest = hash(mustWrite({ ...body, ...place }));
  const entry = { ...body, ...place, hash: digest };
  const text = mustWrite(entry);
  if (text.length > LONGEST_ENTRY) throw new Error(`entry of ${text.length} characters could not be read again`);
  return { entry, sealed: { seq, prev, hash: digest, text } };
}

function mustWrite(value: unknown): string {
  const text = canonical(value);
  if (text.ok) return text.value;
  throw new Error(`entry cannot be written: ${text.error.code} at ${text.error.path}`);
}

/** Reads one stored text and holds it against its own hash. Its place in the chain is not looked at here. */
export function unseal(text: string, hash: Hash, known: number = LOG_VERSION): Result<StoredEntry, EntryFault> {
  if (text.length > LONGEST_ENTRY) return fail({ code: 'too-big', length: text.length, most: LONGEST_ENTRY });
  const value = parsed(text);
  if (!isObject(value)) return fail({ code: 'not-an-entry', field: null });
  if (isCount(value.v) && value.v > known) return fail({ code: 'newer-log', given: value.v, known });
  const wrong = FIELDS.find(([name, fits]) => !Object.hasOwn(value, name) || !fits(value[name]));
  if (wrong) return fail({ code: 'not-an-entry', field: wrong[0] });
  // The table has just looked at every named field, which the compiler cannot follow.
  const entry = value as StoredEntry;
  const whole = canonical(entry);
  if (!whole.ok) return fail(unwritable(whole.error));
  if (whole.value !== text) return fail({ code: 'not-canonical' });
  const { hash: stated } = entry;
  // The canonical text without the hash. It is never the last member, since "kind" follows it.
  const found = hash(text.replace(`"hash":"${stated}",`, ''));
  return found === stated ? ok(entry) : fail({ code: 'bad-hash', stated, found });
}

const unwritable = (fault: Unwritable): EntryFault => ({ code: 'not-an-entry', field: fault.path });

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined; // Not an object, so the caller answers `not-an-entry`.
  }
}

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && Number(value) >= 1;
const isNumber = (value: unknown) => Number.isFinite(value);
const isDigest = (value: unknown) => typeof value === 'string' && /^[0-9a-f]{64}$/.test(value);
const isText = (value: unknown) => typeof value === 'string';
const isName = (value: unknown) => isText(value) && value !== '';

const FIELDS: readonly (readonly [string, (value: unknown) => boolean])[] = [
  ['v', isCount],
  ['seq', isCount],
  ['prev', isDigest],
  ['hash', isDigest],
  ['at', isNumber],
  ['mono', isNumber],
  ['session', isText],
  ['who', isText],
  ['kind', isName],
];
