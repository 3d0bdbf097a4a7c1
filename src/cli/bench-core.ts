import { command } from '../core/job/command';
import { decide } from '../core/job/decide/decide';
import { offersOf } from '../core/job/offers';
import { placeOf } from '../core/job/place';
import { planOf } from '../core/job/plan';
import { onward } from './authoring/onward';
import { beginTrial, type give, momentOf, type Trial } from './authoring/trial';
import { checkDocument } from './check-document';

// npm run bench:core: how long the core takes on a document far larger than a job is. Printed, never asserted.

const STEPS = 500;
const COLUMNS = 20;
const ROWS = 10;
const BOLTS = COLUMNS * ROWS;

const numbered = (many: number, of: (n: number) => string): string =>
  Array.from({ length: many }, (_, i) => of(i + 1)).join(', ');

/** A document of so many steps: plain ones with hazards, parts and loose ends, then one tightening of two hundred bolts. */
function document(): string {
  const rows = Array.from({ length: ROWS }, (_, row) => `[${numbered(COLUMNS, (n) => String(row * COLUMNS + n))}]`);
  const plain = Array.from({ length: STEPS - 1 }, (_, i) => {
    const n = i + 1;
    const half = Math.floor((STEPS - 1) / 2);
    const end = n <= half ? `opens: [end-${n}]` : n <= 2 * half ? `closes: [end-${n - half}]` : 'parts: [seal]';
    return `      - { id: step-${n}, say: Do the next thing., warnings: [It is hot.], cautions: [Go gently.], ${end} }`;
  });
  const ends = Array.from(
    { length: Math.floor((STEPS - 1) / 2) },
    (_, i) => `  end-${i + 1}: { say: thing ${i + 1}, kind: removed, blocks: hand-back }`,
  );
  return `format: 1
language: en
id: bench
title: Bench
edition: bench
demonstration: true
source: made up for measuring
machine: a machine
tools:
  wrench: { say: torque wrench, range: 10–100 N·m }
parts:
  seal: { say: seal, quantity: 1, use: new }
patterns:
  plate:
    say: plate
    joint: plain
    viewed-from: above
    grid:
      columns: { say: [${numbered(COLUMNS, (n) => `column ${n}`)}], at: [${numbered(COLUMNS, (n) => String(n * 40))}] }
      rows: { say: [${numbered(ROWS, (n) => `row ${n}`)}], at: [${numbered(ROWS, (n) => String(n * 40))}] }
      numbers: [${rows.join(', ')}]
    order: centre-out
loose-ends:
${ends.join('\n')}
phases:
  - id: work
    say: Work
    steps:
${plain.slice(0, 250).join('\n')}
  - id: more
    say: More
    steps:
${plain.slice(250).join('\n')}
      - id: tighten
        kind: tighten
        say: Tighten it.
        pattern: plate
        tool: wrench
        recovery:
          over: { action: restart-bolt, say: Take it through again. }
        passes:
          - { id: one, say: one, torque: 20 N·m }
          - { id: two, say: two, torque: 40 N·m }
          - { id: three, say: three, angle: 90° (85–95) }
`;
}

/** Milliseconds of each run, the middle one and the slowest. */
function timed(runs: number, run: () => unknown): { readonly middle: string; readonly slowest: string } {
  const all = Array.from({ length: runs }, () => {
    const began = performance.now();
    run();
    return performance.now() - began;
  }).toSorted((a, b) => a - b);
  const ms = (value: number | undefined): string => `${(value ?? 0).toFixed(3)} ms`;
  return { middle: ms(all[Math.floor(runs / 2)]), slowest: ms(all.at(-1)) };
}

function at(trial: Trial, there: (trial: Trial) => boolean): Trial {
  let now: Trial | undefined = trial;
  while (now && !there(now)) now = onward(now, new Map());
  if (!now) throw new Error('the bench document cannot be worked');
  return now;
}

const text = document();
const checked = checkDocument(text, 'bench.yaml');
if (!checked.ok) throw new Error(JSON.stringify(checked.error[0]));
const isInPass = (pass: string) => (trial: Trial) => {
  const place = placeOf(trial.job);
  return place.kind === 'pass' && place.pass === pass && place.part === 'work';
};
const first = at(beginTrial(planOf(checked.value)), isInPass('one'));
const last = at(first, isInPass('three'));
const say = (trial: Trial, c: Parameters<typeof give>[1]) => () =>
  decide(trial.job, typeof c === 'string' ? command(c) : c, momentOf(trial));

console.table({
  [`check a document of ${STEPS} steps and ${BOLTS} bolts`]: timed(15, () => checkDocument(text, 'bench.yaml')),
  [`decide "done" in the first pass, ${first.job.entries.length} entries`]: timed(500, say(first, 'done')),
  [`decide "done" in the last pass, ${last.job.entries.length} entries`]: timed(500, say(last, 'done')),
  'decide "where am i"': timed(500, say(last, 'tell-place')),
  'decide "brief me"': timed(500, say(last, 'tell-brief')),
  'decide "take that back"': timed(500, say(last, 'take-back')),
  'what can be said now': timed(200, () => offersOf(last.job)),
});
