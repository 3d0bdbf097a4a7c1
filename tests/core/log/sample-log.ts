import { createHash } from 'node:crypto';
import { EMPTY, sealAfter } from '../../../src/core/log/chain';
import type { SealedText } from '../../../src/core/log/envelope';
import type { Hash } from '../../../src/core/ports';

/** The tests' own hash: Node's, so that ours is never held against itself. */
export const nodeHash: Hash = (text) => createHash('sha256').update(text, 'utf8').digest('hex');

export type SampleBody =
  | { readonly kind: 'job-started'; readonly job: string }
  | { readonly kind: 'bolt-done'; readonly step: string; readonly bolt: number }
  | { readonly kind: 'heard'; readonly words: string; readonly score: number };

export const BODIES: readonly SampleBody[] = [
  { kind: 'job-started', job: 'tarnbeck-left-bank' },
  { kind: 'heard', words: 'bolt one done', score: 0.91 },
  { kind: 'bolt-done', step: 'tighten-head', bolt: 1 },
  { kind: 'heard', words: 'bolt two done', score: 0.5 },
  { kind: 'bolt-done', step: 'tighten-head', bolt: 2 },
];

/** The bodies as one job's sealed entries, a second apart. */
export function sealedLog(bodies: readonly SampleBody[] = BODIES, hash: Hash = nodeHash): SealedText[] {
  const log: SealedText[] = [];
  for (const [index, body] of bodies.entries()) {
    const moment = { at: 1_700_000_000_000 + index * 1000, mono: index * 1000.5, session: 's1', who: 'Mechanic' };
    log.push(...sealAfter(log.at(-1) ?? EMPTY, [body], moment, hash).map(({ sealed }) => sealed));
  }
  return log;
}

export const textsOf = (log: readonly SealedText[]): string[] => log.map(({ text }) => text);
