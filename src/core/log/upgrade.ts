import { atOnce, type Pieces } from '../pieces';
import type { Hash } from '../ports';
import { fail, ok, type Result } from '../result';
import { type ChainProblem, type Head, verifyChain } from './chain';
import type { Body, Entry, StoredEntry } from './envelope';
import { LOG_VERSION } from './version';

/** Lifts an entry by one version. Pure. `hash` and `prev` stay those of the stored bytes, which are never rewritten. */
export type Upgrade = (entry: StoredEntry) => StoredEntry;

/** Before there were angles every adapter stood straight ahead, and before there were names nobody could be named. */
function v1ToV2(entry: StoredEntry): StoredEntry {
  switch (entry.kind) {
    case 'job-started':
      return { people: [], ...entry, v: 2 };
    case 'adapter-on':
      return { degrees: 0, ...entry, v: 2 };
    case 'asked':
      return { ...entry, question: withDegrees(entry.question), v: 2 };
    default:
      return { ...entry, v: 2 };
  }
}

const withDegrees = (question: unknown): unknown =>
  typeof question === 'object' && question !== null && 'kind' in question && question.kind === 'adapter'
    ? { degrees: 0, ...question }
    : question;

/** `UPGRADES[0]` makes version 2 out of version 1, and so on. */
export const UPGRADES: readonly Upgrade[] = [v1ToV2];

/** Says whether an upgraded entry is one that this program knows: its kind, and that kind's fields. */
export type BodyGuard<B extends Body> = (entry: StoredEntry) => entry is StoredEntry & Entry<B>;

export type LogFormat<B extends Body> = {
  readonly version: number;
  readonly upgrades: readonly Upgrade[];
  readonly isBody: BodyGuard<B>;
};

/** The log format of now, for bodies that the guard knows. */
export const currentFormat = <B extends Body>(isBody: BodyGuard<B>): LogFormat<B> => ({
  version: LOG_VERSION,
  upgrades: UPGRADES,
  isBody,
});

/** A guard that looks at the kind alone: enough for a log of our own, too little for a file from outside. */
export function byKind<B extends Body>(kinds: readonly B['kind'][]): BodyGuard<B> {
  const known: ReadonlySet<string> = new Set(kinds);
  return (entry): entry is StoredEntry & Entry<B> => known.has(entry.kind);
}

export type LogFault<B extends Body> = {
  readonly index: number;
  readonly problem: ChainProblem | { readonly code: 'unknown-entry'; readonly seq: number; readonly kind: string };
  readonly good: readonly Entry<B>[];
};

/** From stored bytes to entries the fold can take: verified as written, then upgraded, then checked by the guard. */
export function readLog<B extends Body>(
  texts: readonly string[],
  hash: Hash,
  format: LogFormat<B>,
  head: Head | null = null,
): Result<readonly Entry<B>[], LogFault<B>> {
  const chain = verifyChain(texts, hash, head, format.version);
  const log = atOnce(upgrading(chain.ok ? chain.value : chain.error.good, format));
  if (chain.ok || !log.ok) return log;
  return fail({ index: chain.error.index, problem: chain.error.problem, good: log.value });
}

/** The same from entries whose seals have been verified, an entry a piece. */
export function* upgrading<B extends Body>(
  stored: readonly StoredEntry[],
  format: LogFormat<B>,
): Pieces<Result<readonly Entry<B>[], LogFault<B>>> {
  const good: Entry<B>[] = [];
  for (const [index, one] of stored.entries()) {
    const entry = upgraded(one, format);
    if (!format.isBody(entry)) {
      return fail({ index, problem: { code: 'unknown-entry', seq: entry.seq, kind: entry.kind }, good });
    }
    good.push(entry);
    yield good.length / stored.length;
  }
  return ok(good);
}

function upgraded<B extends Body>(entry: StoredEntry, { version, upgrades }: LogFormat<B>): StoredEntry {
  return upgrades.slice(entry.v - 1, version - 1).reduce((older, lift) => lift(older), entry);
}
