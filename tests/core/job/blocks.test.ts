import { describe, expect, test } from 'vitest';
import { readTongue } from '../../../src/cli/tongue-files';
import { blockLine, blocksTold } from '../../../src/core/job/announce/blocks';
import { blocksOf } from '../../../src/core/job/blocks';
import { command } from '../../../src/core/job/command';
import type { EntryBody } from '../../../src/core/job/entry';
import { phraseAll } from '../../../src/core/phrasing/phrase';
import { atFirstPass, bolt, codes, notSure, passes, setAt, shipped, Workbench } from './workbench';

const { replies } = readTongue('en');
const linesOf = (w: Workbench) => blocksOf(w.job, w.now()).map((b) => phraseAll(replies, [blockLine(b)]).shown);
const told = (w: Workbench) => phraseAll(replies, blocksTold(blocksOf(w.job, w.now())));

const END = (n: number): EntryBody => ({
  kind: 'end-opened',
  end: `rag-${n}`,
  what: `rag ${n}`,
  blocks: 'first-start',
  why: 'came-off',
});

/** The practice plate worked to its end. */
function atTheEnd(): Workbench {
  const w = new Workbench(shipped('practice-plate'));
  w.all('done', command('answer', { answer: { kind: 'option', id: 'top-handle' } }), 'done', 'have-time');
  for (const target of [15, 25]) w.all(setAt(target), bolt(1), bolt(3), bolt(2));
  w.all(setAt(45), 'all-marked', bolt(1), bolt(3), bolt(2));
  return w;
}

describe('what blocks closing', () => {
  test('are the steps of every phase, at the beginning', () => {
    const w = new Workbench(shipped('practice-plate'));
    expect(linesOf(w)).toEqual(['Get ready: 3 steps to do', 'Tighten the plate: 1 step to do']);
    expect(told(w).spoken).toBe('Not yet. Four steps left, first in Get ready.');
    expect(codes(w.give('close-job'))).toEqual(['close-refused', 'blocks-steps']);
    expect(w.job.pending).toBeNull();
  });

  test('is everything at once: held and doubtful bolts, steps, loose ends, waits and a question', () => {
    const w = atFirstPass();
    passes(w, 1);
    w.give(setAt(50));
    w.all(bolt(1), notSure(1));
    w.write([END(1), { kind: 'timer-started', timer: 'cure', ms: 1_200_000 }]);
    w.write([{ kind: 'asked', question: { kind: 'hand-over' } }]);
    const lines = linesOf(w);
    expect(lines).toContain('A question waits for its answer');
    expect(lines.some((line) => /: bolt 1 in doubt$/.test(line))).toBe(true);
    expect(lines).toContain('rag 1: still open, due before the first start');
    expect(lines.at(-1)).toMatch(/: 20 min to wait$/);
    expect(blocksOf(w.job, w.now()).map(({ kind }) => kind)).toEqual(
      ['question', 'bolts', ...lines.filter((line) => line.includes('to do')).map(() => 'steps')].concat(
        ...[...w.job.ends].map(() => 'end'),
        'timer',
      ),
    );
  });

  test('is told in counts and the first few by name', () => {
    const w = atTheEnd();
    w.write([1, 2, 3].map(END));
    expect(told(w).spoken).toBe('Not yet. Three loose ends. First rag one and rag two.');
    expect(linesOf(w)).toHaveLength(3);
  });

  test('is nothing at the end: only then is it asked, and once more looked at when it is confirmed', () => {
    const w = atTheEnd();
    expect(linesOf(w)).toEqual([]);
    expect(w.give('close-job').verdict).toBe('asked');
    // The question that closes is none that blocks.
    expect(linesOf(w)).toEqual([]);
    w.write([END(1), { kind: 'asked', question: { kind: 'close-job' } }]);
    expect(codes(w.give('confirm'))).toEqual(['close-refused', 'loose-ends']);
    w.write([{ kind: 'end-closed', end: 'rag-1', how: 'refitted', reason: '' }]);
    w.all('close-job', 'confirm');
    expect(w.job.status).toBe('closed');
  });

  test('is a step put off, until it is done or signed off', () => {
    const w = new Workbench(shipped('practice-plate'));
    w.all('skip-step', 'confirm');
    expect(linesOf(w)[0]).toBe('Get ready: 2 steps to do');
    expect(linesOf(w).at(-1)).toMatch(/^Clamp the plate.*: still open, due before /);
  });
});
