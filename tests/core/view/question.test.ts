import { describe, expect, test } from 'vitest';
import { languages, readTongue } from '../../../src/cli/tongue-files';
import { commandOf } from '../../../src/core/job/command';
import { decide } from '../../../src/core/job/decide/decide';
import { offersOf } from '../../../src/core/job/offers';
import type { Pending } from '../../../src/core/job/pending';
import type { Tongue } from '../../../src/core/tongue';
import { benchView } from '../../../src/core/view/build-bench';
import type { Workbench } from '../job/workbench';
import { ASKED } from './asked';

const look = (w: Workbench, tongue: Tongue) =>
  benchView(w.job, w.now(), {
    show: (replies) => tongue.phrase(replies).shown,
    label: (rule) => rule,
    examples: tongue.teaching(w.job),
  });

type Seen = { readonly line: string; readonly value: string | null; readonly valueAlso?: string };

/** What somebody across the bay must read while each question waits. */
const SEEN: Readonly<Record<Pending['kind'], Seen>> = {
  'skip-step': { line: 'Leave for later? Clamp the plate in the vice with the three holes facing you.', value: null },
  'sign-off': { line: 'Sign off pressure cap, waiting for a part?', value: null },
  'override-order': { line: 'Go ahead against the order?', value: null },
  'repeat-pass': { line: 'First pass again, from its first bolt?', value: null },
  'slacken-all': { line: 'Slacken them all and begin again?', value: null },
  // 3 thou = 3 x 0.0254 mm
  reading: { line: 'Front to back, outside the limit. Is it right?', value: '3 thou', valueAlso: '0.0762 mm' },
  adapter: { line: 'Adapter on, 90° off straight?', value: '2 in', valueAlso: '50.8 mm' },
  'which-bolt': { line: 'Which bolt? Next here is 2.', value: null },
  'out-of-order': { line: 'Bolt 3, out of order? Next was 1.', value: 'Bolt 3' },
  'held-bolt': { line: 'Does the manual say to pull bolt 2 again?', value: 'Bolt 2' },
  mark: { line: 'Bolt 1, mark at 3 o’clock?', value: '3 o’clock' },
  // 85 lbf·ft x 1.3558179483314 = 115.2 N·m (NIST SP 811, appendix B.8)
  floor: { line: 'Bolt 3, not over 90 lbf·ft. Is it right?', value: '85 lbf·ft', valueAlso: '115 N·m' },
  marks: {
    line: 'Look at every mark. 1 bolt at 3 o’clock, the others not turned?',
    value: null,
  },
  'turned-or-not': { line: 'Was bolt 1 turned?', value: 'Bolt 1' },
  'close-job': { line: 'Close the job for good?', value: null },
  'hand-over': { line: 'Hand the job over?', value: null },
};

const kinds = Object.keys(ASKED) as Pending['kind'][];

describe.each(languages().map((code) => ({ code, tongue: readTongue(code) })))(
  'while a question waits, in $code',
  ({ code, tongue }) => {
    test.each(kinds)('%s is the line itself, with what is read back huge', (kind) => {
      const w = ASKED[kind]();
      const view = look(w, tongue);
      expect(w.job.pending?.kind).toBe(kind);
      expect(view.mood).toBe('asking');
      if (code === 'en') expect(view).toMatchObject(SEEN[kind]);
      // Nothing of how to answer is in it, which was wrong for every question that takes other words.
      expect(view.line).not.toMatch(/[“«]/);
      expect(view.value === null).toBe(SEEN[kind].value === null);
    });

    test.each(kinds)('%s is answered by every phrase that is offered', (kind) => {
      const w = ASKED[kind]();
      const { words } = look(w, tongue);
      const live = tongue.liveGrammar(offersOf(w.job), 'now');
      const answers = words.flatMap(({ rule, example }) => {
        const meaning = tongue.interpret(live, example);
        expect(meaning, example).toMatchObject({ kind: 'command', rule });
        const command = meaning.kind === 'command' ? commandOf(meaning.rule, meaning.slots) : undefined;
        if (!command) return expect.unreachable(example);
        // The desk answers these two itself.
        if (rule === 'say-again' || rule === 'tell-words') return [];
        const { verdict, replies } = decide(w.job, command, w.now());
        expect(
          replies.map((r) => r.code),
          example,
        ).not.toContain('not-here');
        return verdict === 'done' || verdict === 'asked' ? [rule] : [];
      });
      expect(answers.length).toBeGreaterThan(1);
    });
  },
);
