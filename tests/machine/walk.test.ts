import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { blocksOf } from '../../src/core/job/blocks';
import { command } from '../../src/core/job/command';
import { decide } from '../../src/core/job/decide/decide';
import type { Job } from '../../src/core/job/job';
import { offersOf } from '../../src/core/job/offers';
import { placeOf } from '../../src/core/job/place';
import { nodeOf, planOf } from '../../src/core/job/plan';
import { leavesOf, nodesOf } from '../../src/machine/nodes';
import { shipped } from '../core/job/workbench';
import { MUCH_LATER, moment } from './attempts';
import type { Sabotage } from './driver';
import { mayClose, owed, workOwed } from './owed';
import { type Stretch, stretchesOf } from './small-procedure';
import { type Walked, walk } from './walk';

// Reaching the limit makes the walk throw: a state space that has grown past it is looked at, not cut off.
const LIMIT = 100_000;

const NAMES = readdirSync('procedures')
  .filter((file) => file.endsWith('.yaml'))
  .map((file) => file.slice(0, -'.yaml'.length));

describe.each(NAMES)('%s', (name) => {
  const walked = { states: 0, edges: 0, leaves: new Set<string>() };
  test.each(stretchesOf(shipped(name)))('$name: no way past it with anything owed', (stretch) => {
    const { states, edges, broken } = walk(stretch, LIMIT);
    walked.states += states.length;
    walked.edges += edges;
    for (const { id } of leavesOf(nodesOf(planOf(stretch.procedure)))) walked.leaves.add(id);
    expect(broken).toEqual([]);
    expect(states.filter((s) => placeOf(s.job).kind === 'closing').flatMap((s) => workOwed(s.job))).toEqual([]);
    expect(states.filter((s) => s.job.status === 'closed').flatMap((s) => owed(s.job))).toEqual([]);
    expect(states.filter((s) => s.node !== nodeOf(s.job.plan, placeOf(s.job)))).toEqual([]);
    expect(states.flatMap(waysOut)).toEqual([]);
    expect(states.flatMap(closing)).toEqual([]);
    expect(neverReached(states)).toEqual([]);
  });

  test('every place of the procedure is in some stretch', () => {
    console.log(`${name}: ${walked.states} states, ${walked.edges} edges`);
    const all = leavesOf(nodesOf(planOf(shipped(name)))).map((leaf) => leaf.id);
    expect(all.filter((id) => !walked.leaves.has(id))).toEqual([]);
  });
});

/** The list of what blocks closing is empty just where nothing is owed, and the job can be closed just where it is empty. */
function closing({ job, node }: Walked): readonly string[] {
  if (job.status !== 'open') return [];
  return [moment(0), moment(MUCH_LATER)].flatMap((now) => {
    const isFree = blocksOf(job, now).length === 0;
    const { verdict, entries } = decide(job, command('close-job'), now);
    const isClosed = entries.some(({ kind }) => kind === 'closed');
    return [
      ...(isFree === mayClose(job, now) ? [] : [`list ${isFree ? 'empty' : 'not empty'} at ${node}`]),
      ...((verdict === 'asked') === (isFree && !job.paused) && !isClosed ? [] : [`${verdict} at ${node}`]),
    ];
  });
}

/** Every state lets itself be asked about, stopped and undone; a question instead can be answered. */
function waysOut({ job, node }: Walked): readonly string[] {
  const rules = new Set(offersOf(job).map((o) => o.rule));
  const wanted = ['stop', 'say-again', 'tell-words', ...undoing(job)];
  return wanted.filter((rule) => !rules.has(rule)).map((rule) => `no ${rule} at ${node} ${job.pending?.kind ?? ''}`);
}

function undoing(job: Job): readonly string[] {
  if (job.status === 'closed') return [];
  if (job.pending) return job.pending.kind === 'turned-or-not' ? ['turned', 'not-turned'] : ['cancel'];
  return job.paused ? ['im-back', 'tell-place'] : ['take-back', 'tell-place'];
}

/** Leaves no path came to. Only the last stretch can close a job whose document leaves ends open between stretches. */
function neverReached(states: readonly Walked[]): readonly string[] {
  const [first] = states;
  if (!first) throw new Error('nothing walked');
  const reached = new Set(states.map((s) => s.node));
  const { looseEnds } = first.job.plan.procedure;
  const leaves = leavesOf(nodesOf(first.job.plan)).map((leaf) => leaf.id);
  return leaves.filter((id) => !reached.has(id) && !(id === 'closed' && looseEnds.size > 0));
}

// A check that cannot fail is no check: with a guard taken away the walk must find the hole.
const SABOTAGE: readonly [string, RegExp, Sabotage][] = [
  [
    'a job closed with a loose end',
    /^closed with end /,
    (job, c) => (c.rule === 'close-job' && job.status === 'open' ? [{ kind: 'closed' }] : []),
  ],
  [
    'a hold point passed without its read-back',
    /^done with read-back /,
    (job, c) => {
      const place = placeOf(job);
      const isHold = place.kind === 'step' && job.plan.steps.get(place.step)?.step.question !== undefined;
      return c.rule === 'done' && isHold ? [{ kind: 'step-done', step: place.step }] : [];
    },
  ],
  [
    'a held or unknown bolt called done',
    /^bolt done while (held|unknown)/,
    (job, c) => {
      const place = placeOf(job);
      const bolt = c.slots.bolt;
      if (c.rule !== 'bolt-done' || place.kind !== 'pass' || place.part !== 'work') return [];
      return bolt?.kind === 'integer' && bolt.value < 99
        ? [{ kind: 'bolt-done', step: place.step, pass: place.pass, bolt: bolt.value, inOrder: true }]
        : [];
    },
  ],
];

test.each(SABOTAGE)('the walk finds %s', (_, found, sabotage) => {
  const holes = stretchesOf(shipped('practice-plate')).flatMap(
    (stretch) => walk(withEnd(stretch), LIMIT, sabotage).broken,
  );
  expect(holes.some((hole) => found.test(hole))).toBe(true);
});

/** The practice plate opens nothing of its own. */
const withEnd = (stretch: Stretch): Stretch => ({
  ...stretch,
  before: [
    ...stretch.before,
    { kind: 'end-opened', end: 'clamp', what: 'clamp', blocks: 'hand-back', why: 'came-off' },
  ],
});
