import type { IssueCode } from '../../core/procedure/issue';

/**
 * One way to make each mistake the checker knows, in the example of the guide: a piece of it, and what is written
 * there instead. `words` is told in place of the piece where that would fill a page.
 */
export type Mistake = {
  readonly code: IssueCode;
  readonly piece: string;
  readonly instead: string;
  readonly words?: string;
  /** A second piece, where one alone is no mistake. */
  readonly also?: readonly [piece: string, instead: string];
};

const mistake = (code: IssueCode, piece: string, instead: string, words?: string): Mistake => ({
  code,
  piece,
  instead,
  ...(words !== undefined && { words }),
});

const SAY = 'say: Both hoses on.';
const under = (line: string): string => `${SAY}\n        ${line}`;

const readBack = (ask: string): string =>
  `read-back: { ask: "${ask}", right: { f: [four] }, wrong: { t: [two], s: [six] }, if-wrong: Look. }`;

/** The example with the mistake made in it; undefined where a piece does not stand in it exactly once. */
export function withMistake(example: string, { piece, instead, also }: Mistake): string | undefined {
  const pairs = [[piece, instead] as const, ...(also ? [also] : [])];
  if (pairs.some(([from]) => example.split(from).length !== 2)) return undefined;
  return pairs.reduce((text, [from, to]) => text.replace(from, () => to), example);
}

export const MISTAKES: readonly Mistake[] = [
  mistake('too-large', SAY, `${SAY}\n${'# more\n'.repeat(60_000)}`, 'a file of more than 400 000 characters'),
  mistake('too-deep', SAY, `say: ${'['.repeat(60)}`, 'sixty brackets, one in the other'),
  mistake('control-character', 'say: Rebuild', 'say: Re\u200bbuild', 'a space without width inside "Rebuild"'),
  mistake('yaml-syntax', 'parts: [pump-gasket, pump-bolt]', 'parts: [pump-gasket, pump-bolt'),
  mistake('duplicate-key', 'title: Water pump', 'title: Pump\ntitle: Water pump'),
  mistake('alias', 'say: Rebuild', 'say: *strip'),
  mistake('yaml-tag', 'say: Rebuild', 'say: !loud Rebuild'),
  mistake('several-documents', 'say: Strip', 'say: Strip\n---'),
  mistake('reserved-name', 'pump-bolt: {', 'constructor: {'),

  mistake('missing-key', 'edition: demonstration 1\n', ''),
  mistake('unknown-key', 'viewed-from: in front', 'viewed-form: in front'),
  mistake('wrong-type', 'quantity: 4', 'quantity: four'),
  mistake('not-finite', 'between: [0, 2]', 'between: [0, .inf]'),
  mistake('not-one-of', 'kind: refit', 'kind: fit'),
  mistake('too-few', 'parts: [pump-gasket, pump-bolt]', 'parts: []'),
  mistake('too-many', SAY, `say: ${'on '.repeat(300)}`, 'a text of 900 characters'),
  mistake('out-of-range', 'quantity: 4', 'quantity: 0'),
  mistake('bad-id', 'id: hoses-on', 'id: Hoses_On'),
  mistake('blank-text', SAY, 'say: "  "'),

  mistake('unequal-lists', 'for: { end: [upper, lower] }\n    say', 'for: { end: [upper, lower], way: [in] }\n    say'),
  mistake('repeat-not-in-id', 'id: hose-{end}-off', 'id: hose-off'),
  mistake('unknown-placeholder', SAY, 'say: The {end} hose on.'),
  mistake('too-many-steps', '      - id: hoses-on', manySteps(), '1 152 steps out of two lists of "for:"'),

  mistake('duplicate-id', 'id: hoses-on', 'id: pump-off'),
  mistake('unknown-tool', 'tools: [dial-gauge]', 'tools: [dial-guage]'),
  mistake('unknown-part', 'parts: [pump-gasket, pump-bolt]', 'parts: [pump-gasket, pump-bolts]'),
  mistake('unknown-pattern', 'pattern: pump\n        tool: ratchet', 'pattern: pomp\n        tool: ratchet'),
  mistake('unknown-loose-end', 'closes: [pressure-cap]', 'closes: [pressure-lid]'),
  mistake('unknown-timer', 'needs-timers: [settle]', 'needs-timers: [settling]'),
  mistake('unknown-limit', 'limit: shaft-play', 'limit: shaft'),
  mistake('unknown-rule', 'limit: shaft-play', 'limit: shaft-play\n        works-out: [play]'),
  mistake('unknown-step', 'step: cap-off', 'step: cap-of'),
  mistake('unknown-pass', 'order: reverse', 'order: reverse of first'),
  mistake('unknown-answer', 'answers: [rusty]', 'answers: [brown]'),
  mistake('unknown-group', 'window: 23–27 N·m, of: long', 'window: 23–27 N·m, of: thick'),
  mistake('unknown-fastener', 'numbers: [3, 4]', 'numbers: [3, 5]'),
  mistake('never-used', '  dial-gauge:', '  hoist: { say: hoist }\n  dial-gauge:'),
  mistake(
    'rule-missing',
    ', rule: Used again while no longer than 80 mm. }',
    ' }',
    '`use: measured` without a `rule:`',
  ),

  mistake('bad-quantity', 'torque: 25 N·m', 'torque: 25 pounds'),
  mistake('wrong-unit', 'torque: 25 N·m', 'torque: 25 mm'),
  mistake('bad-thread', 'numbers: [3, 4]', 'numbers: [3, 4], thread: M11'),
  mistake('unit-pair-disagrees', '0.15 mm (0.006 in)', '0.15 mm (0.014 in)'),
  mistake('window-without-target', 'window: 23–27 N·m', 'window: 27–30 N·m'),
  mistake('window-missing', '45° (40–50)', '45°'),
  mistake('limit-without-bound', ', most: 0.15 mm (0.006 in) }', ' }', 'neither `least:` nor `most:`'),
  mistake('bounds-reversed', 'between: [0, 2]', 'between: [2, 0]'),

  mistake('pattern-layout', 'columns: { say: [left, right]', 'columns: { say: [left]'),
  mistake('duplicate-fastener', '- [4, 2]', '- [3, 2]'),
  mistake('fasteners-overlap', 'at: [0, 120]', 'at: [0, 0]'),
  mistake('order-missing', '    order: [1, 2, 3, 4]\n', ''),
  mistake('order-not-permutation', 'order: [1, 2, 3, 4]', 'order: [1, 2, 3]'),
  {
    ...mistake('generated-order-on-head', 'order: [1, 2, 3, 4]', 'order: cross', '`joint: head` and `order: cross`'),
    also: ['joint: flange', 'joint: head'],
  },
  mistake('pass-kind', 'repeat: 10 N·m (89 lbf·in)', 'repeat: 10 N·m, slacken: 90°'),
  mistake('stray-key', 'window: 23–27 N·m, of: long', 'window: 23–27 N·m, of: long, swings: 2'),
  mistake('repeat-without-torque', 'repeat: 10 N·m (89 lbf·in)', 'repeat: 12 N·m'),
  mistake(
    'repeat-after-angle',
    'tool: ratchet, swings: 1 }',
    'tool: ratchet, swings: 1 }\n          - { id: late, say: once more, repeat: 25 N·m, of: long }',
  ),
  mistake(
    'angle-applied-twice',
    'tool: ratchet, swings: 1 }',
    'tool: ratchet, recovery: { soft: { action: redo-bolt, say: Turn it again. } } }',
  ),
  mistake(
    'fastener-in-no-pass',
    `say: all bolts, torque: 10 N·m (89 lbf·in) }
          - { id: again, say: short bolts once more, repeat: 10 N·m (89 lbf·in), of: short }`,
    'say: long bolts, torque: 10 N·m, of: long }',
    'no pass over the short bolts',
  ),
  mistake(
    'left-slack',
    'tool: ratchet, swings: 1 }',
    'tool: ratchet, swings: 1 }\n          - { id: undo, say: undo, slacken: 90° }',
  ),
  mistake('setting-outside-wrenches', 'range: 8–60 N·m', 'range: 40–200 N·m'),
  mistake('angle-without-over-rule', 'over: {', 'early: {', 'no `over:` under `recovery:`'),

  mistake('too-few-wrong-answers', '\n            none: [nothing is printed]', ''),
  mistake(
    'question-twice',
    'opens: [pressure-cap]',
    'opens: [pressure-cap]\n        read-back: { ask: Cold?, right: { c: [cold] }, wrong: { h: [hot], w: [warm] }, if-wrong: Wait. }',
  ),
  mistake('hold-without-read-back', 'kind: refit', 'kind: hold'),
  mistake('answer-unspeakable', '[rusty coolant]', '[Rusty (brown)]'),
  mistake('duplicate-answer', '[rusty coolant]', '[clean coolant]'),
  {
    ...mistake('too-many-holds', SAY, under(readBack('How many clips?')), 'three read-backs in thirteen steps'),
    also: ['say: Level right, cap on.', `say: Level right, cap on.\n        ${readBack('How many turns?')}`],
  },

  mistake('closed-before-opened', 'opens: [pressure-cap]', 'closes: [pressure-cap]'),
  mistake('opened-twice', SAY, under('opens: [pressure-cap]')),
  mistake('milestone-while-open', SAY, under('milestone: hand-back')),
  mistake('loose-end-never-closed', '        closes: [pressure-cap]\n', ''),
  mistake(
    'timer-never-started',
    'say: Measure the play of the shaft.',
    'say: Measure the play.\n        needs-timers: [settle]',
  ),
  mistake(
    'timer-already-over',
    ', tool: ratchet, swings: 1 }',
    ' }\n          - { id: more, say: again, wait: settle }',
  ),
  mistake('branch-before-question', 'step: cap-off', 'step: fire'),

  mistake('sentence-too-long', SAY, 'say: Both hoses on with their clips turned so that a driver can reach every one.'),
  mistake('text-too-long', SAY, `say: ${'Push the hose right home. '.repeat(9)}`, 'a text of 45 words'),
  mistake('warning-after-action', SAY, 'say: Both hoses on. Never use the old clips.'),
];

function manySteps(): string {
  const words = (first: string): string =>
    Array.from('abcdefghijklmnopqrstuvwx', (letter) => `${first}${letter}`).join(', ');
  const steps = ['x', 'y'].map(
    (id) => `          - { id: "${id}-{end}-{part}", for: { part: [${words('p')}] }, say: Go. }`,
  );
  return `      - kind: each\n        for: { end: [${words('s')}] }\n        steps:\n${steps.join('\n')}\n      - id: hoses-on`;
}
