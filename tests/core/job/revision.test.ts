import { expect, test } from 'vitest';
import type { EntryBody } from '../../../src/core/job/entry';
import { revisionOf } from '../../../src/core/job/revision';
import { atFirstPass, bolt, setAt } from './workbench';

test.each<[string, EntryBody]>([
  ['words heard', { kind: 'heard', words: 'next', score: 0.9, by: 'voice', command: 'tell-next' }],
  ['words turned away', { kind: 'rejected', words: 'uh', score: 0.2, why: 'score' }],
  ['something said', { kind: 'said', code: 'step', text: 'Done.' }],
  ['a note', { kind: 'noted', blob: 'b', step: 'bolts-in' }],
  ['a picture', { kind: 'pictured', blob: 'b', step: 'bolts-in' }],
])('%s changes no meaning, so an answer in the air still counts', (_, body) => {
  const w = atFirstPass();
  const before = revisionOf(w.job);
  w.write([body]);
  expect(revisionOf(w.job)).toBe(before);
});

test('every piece of work, question, doubt and break makes another revision', () => {
  const w = atFirstPass();
  w.give(setAt(30));
  const seen = [revisionOf(w.job)];
  const turns = [
    bolt(1),
    bolt(3),
    'cancel',
    'clicked-early',
    'hold-on',
    'im-back',
    'done',
    'cancel',
    'take-back',
  ] as const;
  for (const c of turns) {
    w.give(c);
    seen.push(revisionOf(w.job));
  }
  expect(new Set(seen).size).toBe(seen.length);
});
