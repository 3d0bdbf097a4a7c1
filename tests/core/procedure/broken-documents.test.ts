import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../../src/cli/check-document';
import { ISSUE_CODES } from '../../../src/core/procedure/issue';
import { broken, marked, SOUND } from './sound-document';
import { expectTold } from './told';

test('the document that the cases break has nothing wrong with it', () => {
  expect(checkDocument(SOUND, 'sound.yaml')).toMatchObject({ ok: true, warnings: [] });
});

/** name, code, the piece of the sound document, what stands there instead; ▮ is where the finding must point. */
type Case = readonly [name: string, code: string, piece: string, instead: string];

const FILE_FAULTS: readonly Case[] = [
  ['a bracket left open', 'yaml-syntax', 'parts: [seal, bolt]', 'parts: [seal, bolt\n        ▮oops: 1'],
  ['an indent that fits nowhere', 'yaml-syntax', 'language: en\n', 'language: ▮en\n   id2: x\n'],
  ['a key given twice', 'duplicate-key', 'title: A sound', '▮id: again\ntitle: A sound'],
  ['an alias', 'alias', 'say: Strip', 'say: ▮*word'],
  ['a tag of its own', 'yaml-tag', 'say: Strip', 'say: ▮!cmd Strip'],
  ['a second document', 'several-documents', 'say: Crank it.', 'say: Crank it.\n▮---\nmore: 1\n'],
  ['a bell in the text', 'control-character', 'Lay the seal.', 'Lay ▮\u0007the seal.'],
  ['a mark that turns reading direction', 'control-character', 'Lay the seal.', 'Lay ▮\u202ethe seal.'],
  ['the same mark written as an escape', 'control-character', 'say: Lay the seal.', 'say: ▮"Lay \\u202e the seal."'],
  ['a zero-width space', 'control-character', 'say: Strip', 'say: Str▮\u200bip'],
  ['an id that objects already carry', 'reserved-name', '  seal: {', '  ▮constructor: {'],
  ['the prototype key', 'reserved-name', '  seal: {', '  ▮__proto__: {'],
];

const SHAPE_FAULTS: readonly Case[] = [
  [
    'a missing title',
    'missing-key',
    'format: 1\nlanguage: en\nid: sound\ntitle: A sound document\n',
    '▮format: 1\nlanguage: en\nid: sound\n',
  ],
  [
    'a step without words',
    'missing-key',
    'id: hoses-on\n        kind: refit\n        say: Both hoses on.',
    '▮id: hoses-on\n        kind: refit',
  ],
  ['a newer format', 'not-one-of', 'format: 1', 'format: ▮2'],
  ['a language by its name', 'bad-id', 'language: en', 'language: ▮English'],
  ['a kind nobody knows', 'not-one-of', 'kind: refit', 'kind: ▮refitt'],
  ['a misspelt key', 'unknown-key', 'viewed-from: above', 'viewed-from: above\n    ▮vewed: above'],
  ['a comma that splits a text', 'unknown-key', 'say: Start again. }', 'say: Stop, ▮start again }'],
  ['words where a number belongs', 'wrong-type', 'quantity: 1, use', 'quantity: ▮one, use'],
  ['a number where words belong', 'wrong-type', 'length: 60 mm', 'length: ▮60'],
  ['an endless number', 'not-finite', 'between: [0, 1]', 'between: [0, ▮.inf]'],
  ['no number at all', 'not-finite', 'at: [0, 100]', 'at: [▮.nan, 100]'],
  ['a fraction of a seal', 'wrong-type', 'quantity: 1, use', 'quantity: ▮1.5, use'],
  ['no seals', 'out-of-range', 'quantity: 1, use', 'quantity: ▮0, use'],
  ['a fastener numbered in the thousands', 'out-of-range', 'numbers: [[1, 3]', 'numbers: [[1, ▮3000]'],
  ['a blank text', 'blank-text', 'say: Lay the seal.', "say: ▮'  '"],
  ['an id in capitals', 'bad-id', 'id: lay', 'id: ▮Lay'],
  ['an id with a dot as a key', 'bad-id', '  cure: {', '  ▮cu.re: {'],
  ['an empty list', 'too-few', 'parts: [seal, bolt]', 'parts: ▮[]'],
  ['an order that is neither list nor words', 'wrong-type', 'order: [1, 2, 3, 4]', 'order: ▮{ a: 1 }'],
  ['an order with a word among its numbers', 'wrong-type', 'order: [1, 2, 3, 4]', 'order: [1, ▮two, 3, 4]'],
  ['a text of a thousand letters', 'too-many', 'say: Lay the seal.', `say: ▮${'very '.repeat(200)}`],
];

const REPEAT_FAULTS: readonly Case[] = [
  [
    'lists of unequal length',
    'unequal-lists',
    "for: [left, right], say: '{side} hose'",
    "for: ▮{ side: [left, right], far: [right] }, say: '{side} hose'",
  ],
  ['a repeat that gives one id twice', 'repeat-not-in-id', 'id: off-{side}', 'id: ▮off'],
  ['a placeholder in the id of an answer', 'unknown-placeholder', 'none: [cannot tell]', "'{side}': ▮[cannot tell]"],
  ['a pass named like a thing objects have', 'bad-id', '{ id: high', '{ id: ▮constructor'],
  ['a document id with a placeholder', 'bad-id', 'id: sound', 'id: ▮sound-{side}'],
  ['a placeholder nothing fills', 'unknown-placeholder', 'say: Both hoses on.', 'say: ▮Both {side} hoses on.'],
  [
    'a word that makes no id',
    'bad-id',
    'id: off-{side}\n        for: [left, right]',
    'id: ▮off-{side}\n        for: [Left Side, right]',
  ],
];

const REFERENCE_FAULTS: readonly Case[] = [
  ['a tool not listed', 'unknown-tool', 'tool: bar', 'tool: ▮bra'],
  ['a part not listed', 'unknown-part', 'parts: [seal, bolt]', 'parts: [seal, ▮boltt]'],
  ['a pattern not listed', 'unknown-pattern', 'pattern: lid\n        tool', 'pattern: ▮lit\n        tool'],
  [
    'a loose end not listed',
    'unknown-loose-end',
    'closes: [hose-left, hose-right]',
    'closes: [hose-left, hose-right, ▮hose-middle]',
  ],
  ['a timer not listed', 'unknown-timer', 'needs-timers: [cure]', 'needs-timers: [▮curing]'],
  ['a rule not listed', 'unknown-rule', 'limit: gap', 'limit: gap\n        works-out: [▮gape]'],
  ['a limit not listed', 'unknown-limit', 'limit: gap', 'limit: ▮gape'],
  ['a step not there', 'unknown-step', 'step: look', 'step: ▮loook'],
  ['an answer nobody can give', 'unknown-answer', 'answers: [wet]', 'answers: [▮damp]'],
  ['a step id used twice', 'duplicate-id', 'id: hoses-on', 'id: ▮tighten'],
  ['a pass id used twice', 'duplicate-id', '{ id: high', '{ id: ▮low'],
  [
    'a branch on a question that comes later',
    'branch-before-question',
    'say: Measure the gap.',
    'only-if: { step: ▮lay, answers: [bright] }\n        say: Measure the gap.',
  ],
  ['a branch on a wrong answer', 'unknown-answer', '{ step: look, answers: [wet] }', '{ step: lay, answers: [▮dull] }'],
];

const QUANTITY_FAULTS: readonly Case[] = [
  ['a torque without a unit', 'bad-quantity', 'torque: 40 N·m, window: 38–42 N·m', "torque: ▮'40'"],
  ['pounds of no kind', 'bad-quantity', 'torque: 40 N·m, window: 38–42 N·m', 'torque: ▮40 pounds'],
  ['a comma that reads two ways', 'bad-quantity', 'torque: 40 N·m, window: 38–42 N·m', "torque: ▮'1,250 N·m'"],
  ['a size without a coarse pitch', 'bad-thread', 'group: small }', 'group: small, thread: ▮M11 }'],
  ['a torque in millimetres', 'wrong-unit', 'torque: 40 N·m, window: 38–42 N·m', 'torque: ▮40 mm'],
  ['oil by the degree', 'wrong-unit', 'amount: 4.5 L', 'amount: ▮4.5°'],
  ['a reading in no unit', 'bad-quantity', 'unit: mm', 'unit: ▮mmm'],
  [
    'a limit of another kind than its reading',
    'wrong-unit',
    'unit: mm\n        between: [0, 1]\n        decimals: 2\n        limit: gap',
    'unit: bar\n        between: [0, 1]\n        decimals: 2\n        limit: ▮gap',
  ],
  ['a window beside its target', 'window-without-target', 'window: 38–42 N·m', 'window: ▮41–45 N·m'],
  ['an angle outside its own window', 'window-without-target', 'angle: 90° (85–95)', 'angle: ▮90° (95–100)'],
  ['a window in another unit', 'wrong-unit', 'window: 38–42 N·m', 'window: ▮28–31 lbf·ft'],
  ['an angle without a window', 'window-missing', 'angle: 90° (85–95)', 'angle: ▮90°'],
  ['a window from high to low', 'bounds-reversed', 'window: 38–42 N·m', 'window: ▮42–38 N·m'],
  ['a plausible range from high to low', 'bounds-reversed', 'between: [0, 1]', 'between: ▮[1, 0]'],
  [
    'a limit that limits nothing',
    'limit-without-bound',
    'gap: { say: gap, whose: the test, most: 0.05 mm (0.002 in) }',
    'gap: ▮{ say: gap, whose: the test }',
  ],
  [
    'a least above the most',
    'bounds-reversed',
    'gap: { say: gap, whose: the test, most: 0.05 mm (0.002 in) }',
    'gap: ▮{ say: gap, whose: the test, least: 1 mm, most: 0.05 mm }',
  ],
  ['a torque of nothing', 'out-of-range', 'torque: 40 N·m, window: 38–42 N·m', 'torque: ▮0 N·m'],
  ['a wait of nothing', 'out-of-range', 'time: 30 min', 'time: ▮0 min'],
  ['a wrench with one setting', 'bad-quantity', 'range: 10–100 N·m', 'range: ▮100 N·m'],
  [
    'a measured part without its rule',
    'rule-missing',
    '{ say: bolt, quantity: 4, use: measured, rule: Below 50 mm. }',
    '▮{ say: bolt, quantity: 4, use: measured }',
  ],
];

const PATTERN_FAULTS: readonly Case[] = [
  [
    'two layouts',
    'pattern-layout',
    'lid:\n    say: lid',
    'lid:\n    ▮say: lid\n    circle: { count: 4, diameter: 50 }',
  ],
  [
    'a grid with a number too few',
    'pattern-layout',
    'grid:\n      columns: { say: [front, rear], at: [0, 100] }',
    'grid:\n      ▮columns: { say: [front], at: [0, 100] }',
  ],
  [
    'a number used twice',
    'duplicate-fastener',
    'lid:\n    say: lid\n    joint: head\n    viewed-from: above\n    grid:\n      columns: { say: [front, rear], at: [0, 100] }\n      rows: { say: [left, right], at: [0, 80] }\n      numbers: [[1, 3], [4, 2]]',
    'lid:\n    ▮say: lid\n    joint: head\n    viewed-from: above\n    grid:\n      columns: { say: [front, rear], at: [0, 100] }\n      rows: { say: [left, right], at: [0, 80] }\n      numbers: [[1, 3], [4, 1]]',
  ],
  [
    'two fasteners in one place',
    'fasteners-overlap',
    'lid:\n    say: lid\n    joint: head\n    viewed-from: above\n    grid:\n      columns: { say: [front, rear], at: [0, 100] }',
    'lid:\n    ▮say: lid\n    joint: head\n    viewed-from: above\n    grid:\n      columns: { say: [front, rear], at: [0, 0] }',
  ],
  ['details of a fastener not there', 'unknown-fastener', 'numbers: [3, 4]', 'numbers: [3, ▮5]'],
  ['an order that leaves one out', 'order-not-permutation', 'order: [1, 2, 3, 4]', 'order: ▮[1, 2, 3]'],
  ['an order that names one twice', 'order-not-permutation', 'order: [1, 2, 3, 4]', 'order: ▮[1, 2, 3, 3]'],
  ['an order with a stranger', 'unknown-fastener', 'order: [1, 2, 3, 4]', 'order: [1, 2, 3, ▮9]'],
  [
    'an order reaching outside its subset',
    'order-not-permutation',
    '{ id: again, say: again, repeat: 20 N·m (15 lbf·ft), of: small }',
    '{ id: again, say: again, repeat: 20 N·m (15 lbf·ft), of: small, order: ▮[3, 2] }',
  ],
  ['a worked-out order on a head', 'generated-order-on-head', 'order: [1, 2, 3, 4]', 'order: ▮centre-out'],
  ['a way of ordering nobody knows', 'not-one-of', 'order: [1, 2, 3, 4]', 'order: ▮clockwise'],
  ['a pattern in reverse of itself', 'not-one-of', 'order: [1, 2, 3, 4]', 'order: ▮reverse'],
  ['the reverse of a pass not there', 'unknown-pass', 'order: reverse }', 'order: ▮reverse of nothing }'],
  ['a group nobody is in', 'unknown-group', 'window: 38–42 N·m, of: large', 'window: 38–42 N·m, of: ▮huge'],
];

const PASS_FAULTS: readonly Case[] = [
  [
    'a pass that does nothing',
    'pass-kind',
    '{ id: high, say: high, torque: 40 N·m, window: 38–42 N·m, of: large }',
    '▮{ id: high, say: high, of: large }',
  ],
  [
    'a pass that does two things',
    'pass-kind',
    '{ id: high, say: high, torque: 40 N·m, window: 38–42 N·m, of: large }',
    '▮{ id: high, say: high, torque: 40 N·m, slacken: 90°, of: large }',
  ],
  [
    'swings in a torque pass',
    'stray-key',
    'window: 38–42 N·m, of: large }',
    'window: 38–42 N·m, of: large, swings: ▮2 }',
  ],
  [
    'a repeat of another torque',
    'repeat-without-torque',
    'repeat: 20 N·m (15 lbf·ft), of: small',
    'repeat: ▮25 N·m, of: small',
  ],
  [
    'a torque repeated after an angle',
    'repeat-after-angle',
    'tool: bar, swings: 2 }',
    'tool: bar, swings: 2 }\n          - ▮{ id: late, say: late, repeat: 40 N·m, of: large }',
  ],
  [
    'an angle turned twice by rule',
    'angle-applied-twice',
    'tool: bar, swings: 2 }',
    'tool: bar, recovery: { over: { action: ▮redo-bolt, say: Again. } } }',
  ],
  [
    'a torque in a slackening step',
    'pass-kind',
    '{ id: ease, say: ease, slacken: 90°, order: reverse }',
    '▮{ id: ease, say: ease, torque: 20 N·m }',
  ],
  [
    'a head left slack',
    'left-slack',
    'tool: bar, swings: 2 }',
    'tool: bar, swings: 2 }\n          - ▮{ id: undo, say: undo, slacken: 90° }',
  ],
];

const QUESTION_FAULTS: readonly Case[] = [
  [
    'one wrong answer',
    'too-few-wrong-answers',
    'wrong: { dull: [dull face], none: [cannot tell] }',
    'wrong: ▮{ dull: [dull face] }',
  ],
  ['an answer in figures', 'answer-unspeakable', 'none: [cannot tell]', 'none: [▮face 2]'],
  ['two answers in the same words', 'duplicate-answer', 'none: [cannot tell]', 'none: [▮dull face]'],
  ['an answer right and wrong', 'duplicate-id', 'none: [cannot tell]', 'bright: ▮[cannot tell]'],
  [
    'a hold point that asks nothing',
    'hold-without-read-back',
    'id: gaps\n        kind: measure\n        say: Measure the gap.\n        readings: { front: front gap, rear: rear gap }\n        unit: mm\n        between: [0, 1]\n        decimals: 2\n        limit: gap',
    '▮id: gaps\n        kind: hold\n        say: Stop.',
  ],
  [
    'two questions in one step',
    'question-twice',
    'finding:\n          ask: What is it like?\n          answers: { dry: [dry], wet: [wet] }',
    'finding:\n          ▮ask: What is it like?\n          answers: { dry: [dry], wet: [wet] }\n        read-back: { ask: Which?, right: { a: [upper] }, wrong: { b: [lower], c: [middle] }, if-wrong: Look. }',
  ],
];

const WALK_FAULTS: readonly Case[] = [
  [
    'closed before it is opened',
    'closed-before-opened',
    'say: Look at the lid.',
    'say: Look at the lid.\n        closes: [▮hose-left]',
  ],
  ['closed twice', 'closed-before-opened', 'what: oil\n', 'what: oil\n        closes: [▮hose-left]\n'],
  ['opened twice', 'opened-twice', 'say: Slacken the lid.', 'say: Slacken the lid.\n        opens: [▮hose-left]'],
  [
    'a milestone with something still open',
    'milestone-while-open',
    'say: Both hoses on.\n        closes: [hose-left, hose-right]',
    'say: Both hoses on.\n        milestone: ▮crank\n        closes: [hose-left, hose-right]',
  ],
  [
    'a timer nobody starts',
    'timer-never-started',
    'say: Measure the gap.',
    'say: Measure the gap.\n        needs-timers: [▮cure]',
  ],
  [
    'a timer waited for twice',
    'timer-already-over',
    'of: large, tool: bar, swings: 2 }',
    'of: large, tool: bar, swings: 2 }\n          - { id: rest-again, say: rest, wait: ▮cure }',
  ],
];

const DOUBTS: readonly Case[] = [
  ['a pair that disagrees', 'unit-pair-disagrees', 'most: 0.05 mm (0.002 in)', 'most: ▮0.15 mm (0.014 in)'],
  ['a tool nothing uses', 'never-used', '  bar: {', '  spare: ▮{ say: spare }\n  bar: {'],
  [
    'a setting no listed wrench reaches',
    'setting-outside-wrenches',
    '{ id: high, say: high, torque: 40 N·m, window: 38–42 N·m',
    '▮{ id: high, say: high, torque: 140 N·m',
  ],
  [
    'an angle without a rule for too far',
    'angle-without-over-rule',
    '        recovery:\n          over: { action: restart-all, say: Start again. }\n        passes:\n          - { id: low, say: low, torque: 20 N·m (15 lbf·ft) }\n          - { id: again, say: again, repeat: 20 N·m (15 lbf·ft), of: small }\n          - { id: high, say: high, torque: 40 N·m, window: 38–42 N·m, of: large }\n          - { id: rest, say: rest, wait: cure }\n          - {',
    '        passes:\n          - { id: low, say: low, torque: 20 N·m (15 lbf·ft) }\n          - { id: again, say: again, repeat: 20 N·m (15 lbf·ft), of: small }\n          - { id: high, say: high, torque: 40 N·m, window: 38–42 N·m, of: large }\n          - { id: rest, say: rest, wait: cure }\n          - ▮{',
  ],
  [
    'a loose end left open',
    'loose-end-never-closed',
    'hose-{side}: { for: [left, right]',
    'bolt-bag: ▮{ say: bolt bag, kind: removed, blocks: hand-back }\n  hose-{side}: { for: [left, right]',
  ],
  [
    'a sentence of thirteen words',
    'sentence-too-long',
    'say: Lay the seal.',
    'say: ▮Lay the seal on the lid with the bright face up and wait.',
  ],
  ['a text of more than forty words', 'text-too-long', 'say: Lay the seal.', `say: ▮${'Lay the seal. '.repeat(14)}`],
  [
    'a warning in a note',
    'warning-after-action',
    'say: Slacken the lid.',
    'say: Slacken the lid.\n        notes: [▮Never on a hot engine.]',
  ],
  [
    'a warning behind its action',
    'warning-after-action',
    'say: Slacken the lid.',
    'say: ▮Slacken the lid. Never on a hot engine.',
  ],
  [
    'a second hold point in ten steps',
    'too-many-holds',
    'id: hoses-on\n',
    '▮id: hoses-on\n        read-back: { ask: How many?, right: { two: [two] }, wrong: { one: [one], none: [none] }, if-wrong: Look. }\n',
  ],
];

const GROUPS = {
  'the file': FILE_FAULTS,
  'its shape': SHAPE_FAULTS,
  repeats: REPEAT_FAULTS,
  references: REFERENCE_FAULTS,
  quantities: QUANTITY_FAULTS,
  'patterns and orders': PATTERN_FAULTS,
  passes: PASS_FAULTS,
  questions: QUESTION_FAULTS,
  'the walk through the job': WALK_FAULTS,
};

describe.each(Object.entries(GROUPS))('in %s', (_group, cases) => {
  test.each(cases)('%s is %s, at its place', (_name, code, piece, instead) => {
    const { text, line, column } = marked(broken(piece, instead));
    const checked = checkDocument(text, 'sound.yaml');
    const issues = checked.ok ? [] : checked.error;
    const places = issues.map((issue) => `${issue.code} ${issue.line}:${issue.column}`);
    expect(places).toContain(`${code} ${line}:${column}`);
    for (const issue of issues) expectTold(issue, 'sound.yaml');
  });
});

describe('what is doubtful is a warning, and the document is accepted', () => {
  test.each(DOUBTS)('%s is %s, at its place', (_name, code, piece, instead) => {
    const doubtful = broken(piece, instead).replace('say: Look at the lid.', OPENS_BAG(code));
    const { text, line, column } = marked(doubtful);
    const checked = checkDocument(text, 'sound.yaml');
    expect(checked.ok).toBe(true);
    expect(checked.warnings).toContainEqual(expect.objectContaining({ code, line, column, severity: 'warning' }));
  });
});

/** A loose end can only be left open by a document that also opens it. */
const OPENS_BAG = (code: string): string =>
  code === 'loose-end-never-closed' ? 'say: Look at the lid.\n        opens: [bolt-bag]' : 'say: Look at the lid.';

test('a fastener in no pass is told at its pattern', () => {
  const text = SOUND.replace(/ {10}- \{ id: low.*\n {10}- \{ id: again.*\n/, '').replace(
    'lid:\n    say',
    'lid:\n    ▮say',
  );
  const { text: unmarked, line, column } = marked(text);
  const checked = checkDocument(unmarked, 'sound.yaml');
  expect(checked.warnings).toContainEqual(
    expect.objectContaining({ code: 'fastener-in-no-pass', given: '3, 4', line, column }),
  );
});

test.each([
  ['a file too long to be a procedure', 'too-large', `${SOUND}${'# more\n'.repeat(60_000)}`],
  ['brackets inside brackets', 'too-deep', '['.repeat(5000)],
  ['a list inside a list inside a list', 'too-deep', '- '.repeat(5000)],
  ['steps without end', 'too-many-steps', manySteps()],
])('%s is %s', (_name, code, text) => {
  const checked = checkDocument(text, 'sound.yaml');
  expect(checked.ok ? [] : checked.error.map((issue) => issue.code)).toEqual([code]);
});

function manySteps(): string {
  const words = (prefix: string): string =>
    Array.from({ length: 24 }, (_, i) => `${prefix}${'abcdefghijklmnopqrstuvwxyz'[i]}`).join(', ');
  const steps = ['x', 'y'].map(
    (id) => `          - { id: '${id}-{side}-{part}', for: { part: [${words('p')}] }, say: Go. }`,
  );
  return SOUND.replace(
    '      - id: hoses-on',
    `      - kind: each\n        for: [${words('s')}]\n        steps:\n${steps.join('\n')}\n      - id: hoses-on`,
  );
}

test('every code has a case here', () => {
  const alone = ['order-missing', 'fastener-in-no-pass', 'too-large', 'too-deep', 'too-many-steps'];
  const tried = [...Object.values(GROUPS).flat(), ...DOUBTS].map(([, code]) => code);
  expect(new Set([...tried, ...alone])).toEqual(new Set(ISSUE_CODES));
});

test('a pass without an order of its own, on a pattern without one, is told where the pass stands', () => {
  const orderless = SOUND.replace('    order: [1, 2, 3, 4]\n', '').replace('{ id: low', '▮{ id: low');
  const { text, line, column } = marked(orderless);
  const checked = checkDocument(text, 'sound.yaml');
  expect(checked.ok ? [] : checked.error).toContainEqual(
    expect.objectContaining({ code: 'order-missing', line, column }),
  );
});

test('all that is wrong is told at once, from the top of the file', () => {
  const text = broken('tool: bar', 'tool: bra').replace('parts: [seal, bolt]', 'parts: [seel, bolt]');
  const checked = checkDocument(text, 'sound.yaml');
  expect(checked.ok ? [] : checked.error.map(({ code }) => code)).toEqual(['unknown-part', 'unknown-tool']);
});
