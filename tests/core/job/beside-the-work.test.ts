import { expect, test } from 'vitest';
import { readTongue } from '../../../src/cli/tongue-files';
import { command } from '../../../src/core/job/command';
import { offersOf } from '../../../src/core/job/offers';
import { revisionOf } from '../../../src/core/job/revision';
import { tappableNow } from '../../../src/core/view/tappable';
import { atFirstPass, bolt, setAt, type Workbench } from './workbench';

const BESIDE = ['take-note', 'take-picture'] as const;

const english = readTongue('en');

const rulesOf = (w: Workbench) => offersOf(w.job).map(({ rule }) => rule);

/** A pass that is being worked, then one more command. */
function working(...then: Parameters<Workbench['give']>[0][]): Workbench {
  const w = atFirstPass();
  w.all(setAt(30), bolt(1), ...then);
  return w;
}

const STATES: readonly [string, () => Workbench][] = [
  ['at work', () => working()],
  ['on a break', () => working('hold-on')],
  ['knocked off', () => working('knocking-off')],
  ['while a question waits', () => working(bolt(3), 'repeat-pass')],
  ['with a bolt broken', () => working('snapped')],
];

test.each(STATES)('%s a note and a picture can be taken, and change nothing but the record', (_, at) => {
  for (const rule of BESIDE) {
    const w = at();
    const before = { ...w.job };
    const revision = revisionOf(w.job);
    expect(rulesOf(w)).toContain(rule);
    // Without a voice it is tapped in the list of all words.
    expect(tappableNow(w.job, english).map((one) => one.rule)).toContain(rule);
    const { verdict, entries, effects } = w.give(rule);
    expect({ verdict, entries, effects: effects.length }).toEqual({ verdict: 'told', entries: [], effects: 1 });
    w.write([{ kind: rule === 'take-note' ? 'noted' : 'pictured', blob: 'b', step: 'head-bolts' }]);
    const { entries: _entries, last: _last, past: _past, ...job } = w.job;
    expect(before).toMatchObject(job);
    expect(revisionOf(w.job)).toBe(revision);
  }
});

test('a question is still open after a note, and is answered by its own answer only', () => {
  const w = working(bolt(3), 'repeat-pass');
  expect(w.job.pending?.kind).toBe('repeat-pass');
  w.write([{ kind: 'noted', blob: 'b', step: 'head-bolts' }]);
  expect(w.job.pending?.kind).toBe('repeat-pass');
  w.give('cancel');
  expect(w.job.pending).toBeNull();
});

test('a closed job takes none', () => {
  const w = atFirstPass();
  w.write([{ kind: 'closed' }]);
  for (const rule of BESIDE) {
    expect(rulesOf(w)).not.toContain(rule);
    expect(w.give(command(rule))).toMatchObject({ verdict: 'refused', effects: [] });
  }
});
