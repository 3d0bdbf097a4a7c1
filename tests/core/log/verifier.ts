import { createHash } from 'node:crypto';

// A reader of job files written from src/core/log/README.md alone: it uses nothing of the program, so that whoever writes
// another one from that page can rely on it.

type Members = Readonly<Record<string, unknown>>;

export type Verdict = 'whole' | { readonly entry: number; readonly why: string };

const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');

/** Step 2 of "How the seal is made". */
function canonical(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const members = Object.entries(value).toSorted(([a], [b]) => (a < b ? -1 : 1));
  return `{${members.map(([name, member]) => `${JSON.stringify(name)}:${canonical(member)}`).join(',')}}`;
}

/** "How to check a file". `entry` is the number of the first one that is not good, 0 for the file itself. */
export function verified(text: string): Verdict {
  const file = membersOf(text);
  if (file?.format !== 'wrenchside-job' || file.version !== 1) return { entry: 0, why: 'format' };
  const texts = Array.isArray(file.entries) ? file.entries.map(String) : [];
  let last = { seq: 0, hash: '0'.repeat(64) };
  for (const stored of texts) {
    const why = wrongIn(stored, last);
    if (why) return { entry: last.seq + 1, why };
    const { seq, hash } = membersOf(stored) ?? {};
    last = { seq: Number(seq), hash: String(hash) };
  }
  const head = typeof file.head === 'object' ? (file.head as Members | null) : null;
  if (head?.seq !== last.seq || head.hash !== last.hash) return { entry: last.seq + 1, why: 'head' };
  const first = membersOf(texts[0] ?? '');
  return first?.textHash === sha256(String(first?.text)) ? 'whole' : { entry: 1, why: 'document' };
}

function wrongIn(stored: string, last: { readonly seq: number; readonly hash: string }): string | null {
  const entry = membersOf(stored);
  if (!entry) return 'not an object';
  if (canonical(entry) !== stored) return 'not canonical';
  const { hash, ...rest } = entry;
  if (sha256(canonical(rest)) !== hash) return 'seal';
  if (entry.seq !== last.seq + 1) return 'number';
  return entry.prev === last.hash ? null : 'chain';
}

function membersOf(text: string): Members | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Members) : null;
  } catch {
    return null;
  }
}
