import { describe, expect, test } from 'vitest';
import { headOf } from '../../src/core/log/chain';
import { checkingJobFile, checkJobFile } from '../../src/core/log/job-file';
import { atOnce, eachOf, type Pieces } from '../../src/core/pieces';
import { decoding, printing } from '../../src/store/hand-over';
import { BODIES, nodeHash, sealedLog, textsOf } from './log/sample-log';

const log = sealedLog(Array.from({ length: 20 }, () => BODIES).flat());
const last = log.at(-1);
if (!last) throw new Error('an empty log');
const card = { id: 'a', title: 'Left bank', procedure: 'top-end', created: 1, who: 'Mechanic', closed: false };
const clips = [1, 2, 3].map((n) => ({ id: `c${n}`, mime: 'image/jpeg', bytes: Uint8Array.of(n) }));
const job = { card, head: headOf(last), texts: textsOf(log) };
const text = atOnce(printing(job, clips));

function sharesOf(work: Pieces<unknown>): number[] {
  const shares: number[] = [];
  for (const share of work) shares.push(share);
  return shares;
}

describe('work in pieces', () => {
  test.each<[string, number, () => Pieces<unknown>]>([
    ['reading a job file', log.length, () => checkingJobFile(JSON.parse(text), nodeHash)],
    ['making one', clips.length, () => printing(job, clips)],
    [
      'decoding its clips',
      clips.length,
      () => {
        const file = checkJobFile(JSON.parse(text), nodeHash);
        if (!file.ok) throw new Error(JSON.stringify(file.error));
        return decoding(file.value);
      },
    ],
  ])('%s: each piece adds its share, and the last makes it whole', (_, pieces, work) => {
    const shares = sharesOf(work());
    expect(shares).toHaveLength(pieces);
    expect(shares).toEqual(Array.from({ length: pieces }, (_, n) => (n + 1) / pieces));
  });

  test('of nothing has no share, and a result', () => {
    expect(sharesOf(eachOf([], () => 1))).toEqual([]);
    expect(atOnce(eachOf([], () => 1))).toEqual([]);
  });
});
