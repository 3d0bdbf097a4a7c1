import type { Pass, Procedure, Recovery } from '../../../src/core/procedure/procedure';
import { ESTIMATES } from '../../../src/core/sums/estimates';

type Stage =
  | { readonly torque: number; readonly of?: readonly number[]; readonly recovery?: Recovery }
  | { readonly angle: number; readonly of?: readonly number[]; readonly recovery?: Recovery }
  | { readonly slacken: number; readonly of?: readonly number[] }
  | { readonly wait: string };

/** A procedure that is nothing but one tightening, passes numbered p1, p2, ...: for rules no shipped document needs. */
export function joint(stages: readonly Stage[], bolts = 3): Procedure {
  const all = Array.from({ length: bolts }, (_, i) => i + 1);
  const passes = stages.map((stage, i) => passOf(stage, `p${i + 1}`, all));
  return {
    format: 1,
    language: 'en',
    id: 'joint',
    title: 'joint',
    edition: 'test',
    demonstration: true,
    source: 'made up for a test',
    machine: 'a joint',
    tools: new Map([['wrench', { id: 'wrench', say: 'torque wrench' }]]),
    parts: new Map(),
    patterns: new Map([
      [
        'joint',
        {
          id: 'joint',
          say: 'joint',
          viewedFrom: 'above',
          outline: [],
          landmarks: [],
          fasteners: all.map((number) => ({ number, at: { x: number, y: 0 }, say: `place ${number}`, row: 'one' })),
        },
      ],
    ]),
    looseEnds: new Map(),
    timers: new Map([['settling', { id: 'settling', say: 'settling', minutes: 10 }]]),
    limits: new Map(),
    rules: new Map(),
    estimates: ESTIMATES,
    phases: [
      {
        id: 'work',
        say: 'Work',
        steps: [
          {
            id: 'joint',
            say: 'Tighten it.',
            kind: 'tighten',
            pattern: 'joint',
            passes,
            warnings: [],
            cautions: [],
            notes: [],
            tools: [],
            parts: [],
            opens: [],
            closes: [],
            startsTimers: [],
            needsTimers: [],
            stow: [],
          },
        ],
      },
    ],
  };
}

function passOf(stage: Stage, id: string, all: readonly number[]): Pass {
  if ('wait' in stage) return { kind: 'wait', id, say: id, order: [], recovery: {}, timer: stage.wait };
  const order = stage.of ?? all;
  if ('slacken' in stage) return { kind: 'slacken', id, say: id, order, recovery: {}, degrees: stage.slacken };
  const recovery = stage.recovery ?? {};
  if ('torque' in stage) {
    const target = { printed: `${stage.torque} N·m`, value: stage.torque, unit: 'N·m' as const };
    return { kind: 'torque', id, say: id, order, recovery, tool: 'wrench', target };
  }
  const window = { least: stage.angle - 5, most: stage.angle + 5 };
  return { kind: 'angle', id, say: id, order, recovery, degrees: stage.angle, window, swings: 1 };
}
