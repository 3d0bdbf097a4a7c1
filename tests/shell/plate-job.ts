import { readFileSync } from 'node:fs';
import type { EntryBody } from '../../src/core/job/entry';
import { EMPTY, headOf, sealAfter } from '../../src/core/log/chain';
import type { StoredJob } from '../../src/core/log/log-store';
import { sha256Hex } from '../../src/store/hash';

const text = readFileSync('procedures/practice-plate.yaml', 'utf8');
const card = { id: 'j', title: 'Plate', procedure: 'practice-plate', created: 1, who: 'me', closed: false };
const moment = { at: 1, mono: 1, session: 's', who: 'me' };

export const STARTED = {
  kind: 'job-started' as const,
  job: 'j',
  procedure: 'practice-plate',
  text,
  textHash: sha256Hex(text),
  machine: 'plate',
  people: [],
} satisfies EntryBody;

/** The first entries of a job on the practice plate. */
export const BEGUN: readonly EntryBody[] = [STARTED, { kind: 'session-opened' }];

/** A job as the store keeps it, with these entries sealed one after the other. */
export function plateJob(bodies: readonly EntryBody[]): StoredJob {
  const sealed = sealAfter(EMPTY, bodies, moment, sha256Hex).map((one) => one.sealed);
  const last = sealed.at(-1);
  return { card, head: last ? headOf(last) : EMPTY, texts: sealed.map((one) => one.text) };
}
