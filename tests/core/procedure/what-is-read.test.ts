import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../../src/cli/check-document';
import type { Pass, Procedure, Step } from '../../../src/core/procedure/procedure';
import { broken, SOUND } from './sound-document';

function readFrom(text: string): Procedure {
  const checked = checkDocument(text, 'sound.yaml');
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  return checked.value;
}
const stepsOf = ({ phases }: Procedure): readonly Step[] => phases.flatMap(({ steps }) => steps);
const idsOf = (procedure: Procedure): readonly string[] => stepsOf(procedure).map(({ id }) => id);
function passes(procedure: Procedure, id: string): readonly Pass[] {
  const step = stepsOf(procedure).find((candidate) => candidate.id === id);
  return step?.kind === 'tighten' || step?.kind === 'slacken' ? step.passes : [];
}

describe('repeats', () => {
  test('one list fills {side} in ids and texts, of entries and of steps', () => {
    const procedure = readFrom(SOUND);
    expect([...procedure.looseEnds.keys()]).toEqual(['hose-left', 'hose-right']);
    const off = stepsOf(procedure).find(({ id }) => id === 'off-right');
    expect(off).toMatchObject({ say: 'Take the right hose off.', opens: ['hose-right'] });
    expect(off?.stow).toEqual([{ where: 'bench', what: 'right hose', quantity: 1 }]);
  });

  const TWO = '- { id: wipe-{side}, say: Wipe. }\n          - { id: look-{side}, say: Look. }';
  test.each([
    [
      'a block is done in full for one side, then for the next',
      `- kind: each\n        for: [left, right]\n        steps:\n          ${TWO.replaceAll(/(wipe|look)-\{side\}/g, "'$1-{side}'")}`,
      ['wipe-left', 'look-left', 'wipe-right', 'look-right'],
    ],
    [
      'a step is done for one side, then for the next',
      "- { id: 'wipe-{side}', for: [left, right], say: Wipe. }\n      - { id: 'look-{side}', for: [left, right], say: Look. }",
      ['wipe-left', 'wipe-right', 'look-left', 'look-right'],
    ],
    [
      'named lists are read side by side',
      "- { id: 'wipe-{side}-{near}', for: { side: [left, right], near: [one, two] }, say: Wipe. }",
      ['wipe-left-one', 'wipe-right-two'],
    ],
    [
      'a step inside a block has the words of both',
      "- kind: each\n        for: [left, right]\n        steps:\n          - { id: 'wipe-{side}-{end}', for: { end: [front, rear] }, say: Wipe. }",
      ['wipe-left-front', 'wipe-left-rear', 'wipe-right-front', 'wipe-right-rear'],
    ],
  ])('%s', (_name, steps, ids) => {
    const procedure = readFrom(broken('      - id: lay\n', `      ${steps}\n      - id: lay\n`));
    expect(idsOf(procedure).filter((id) => /^(?:wipe|look)-/.test(id))).toEqual(ids);
  });
});

describe('patterns', () => {
  test('a grid names each fastener by column and row and gives it its details', () => {
    expect(readFrom(SOUND).patterns.get('lid')?.fasteners).toEqual([
      {
        number: 1,
        at: { x: 0, y: 0 },
        say: 'front, left',
        row: 'left',
        group: 'large',
        hole: 'blind',
        length: { printed: '60 mm', value: 60, unit: 'mm' },
      },
      {
        number: 2,
        at: { x: 100, y: 80 },
        say: 'rear, right',
        row: 'right',
        group: 'large',
        hole: 'blind',
        length: { printed: '60 mm', value: 60, unit: 'mm' },
      },
      { number: 3, at: { x: 100, y: 0 }, say: 'rear, left', row: 'left', group: 'small' },
      { number: 4, at: { x: 0, y: 80 }, say: 'front, right', row: 'right', group: 'small' },
    ]); // prettier-ignore
  });

  const plate = (layout: string, order: string): Procedure =>
    readFrom(
      SOUND.replace(
        'loose-ends:\n',
        `  plate: { say: plate, viewed-from: above, ${layout}, order: ${order} }\nloose-ends:\n`,
      ).replace(
        '      - id: hoses-on',
        '      - { id: plate, kind: tighten, say: Plate., pattern: plate, tool: wrench, passes: [{ id: one, say: one, torque: 20 N·m }] }\n      - id: hoses-on',
      ),
    );

  test('a circle is numbered clockwise from the top and called by the clock', () => {
    const fasteners = plate('circle: { count: 8, diameter: 100 }', 'cross').patterns.get('plate')?.fasteners ?? [];
    expect(fasteners.map(({ say }) => say)).toEqual([
      "twelve o'clock",
      'half past one',
      "three o'clock",
      'half past four',
      "six o'clock",
      'half past seven',
      "nine o'clock",
      'half past ten',
    ]); // prettier-ignore
    expect(fasteners[2]?.at).toEqual({ x: 50, y: 0 });
    expect(new Set(fasteners.map(({ row }) => row)).size).toBe(8);
  });

  test.each([
    // The four and eight bolt cross: from memory of ASME PCC-1. The star of five is common practice.
    ['cross on four', 'circle: { count: 4, diameter: 100 }', 'cross', [1, 3, 2, 4]],
    ['cross on eight', 'circle: { count: 8, diameter: 100 }', 'cross', [1, 5, 3, 7, 2, 6, 4, 8]],
    ['cross on five', 'circle: { count: 5, diameter: 100 }', 'cross', [1, 3, 5, 2, 4]],
    [
      'centre outward',
      'grid: { columns: { say: [a, b, c], at: [0, 50, 100] }, rows: { say: [r], at: [0] }, numbers: [[1, 2, 3]] }',
      'centre-out',
      [2, 1, 3],
    ],
  ])('%s is worked out, and marked as worked out', (_name, layout, order, expected) => {
    expect(passes(plate(layout, order), 'plate')).toEqual([
      expect.objectContaining({ order: expected, generated: true }),
    ]);
  });
});

describe('passes', () => {
  const procedure = readFrom(SOUND);
  const pass = (id: string): Pass | undefined => passes(procedure, 'tighten').find((candidate) => candidate.id === id);

  test('a slackening pass goes through the order from its end', () => {
    expect(passes(procedure, 'ease')[0]).toMatchObject({ kind: 'slacken', degrees: 90, order: [4, 3, 2, 1] });
  });

  test('a subset keeps the order of its pattern', () => {
    expect(pass('again')).toMatchObject({ kind: 'repeat', order: [3, 4] });
  });

  test('printed figures are kept as printed, with the pair beside them', () => {
    expect(pass('low')).toMatchObject({
      target: {
        printed: '20 N·m',
        value: 20,
        unit: 'N·m',
        also: [{ printed: '15 lbf·ft', value: 15, unit: 'lbf·ft' }],
      },
    });
  });

  test('windows come from a line of their own or from behind the angle', () => {
    expect(pass('high')).toMatchObject({ window: { least: 38, most: 42 } });
    expect(pass('turn')).toMatchObject({ degrees: 90, window: { least: 85, most: 95 }, swings: 2 });
  });

  test.each([['90° ± 5°'], ['90° (±5)'], ['85–95°']])('%s is the same window', (angle) => {
    const turned = passes(readFrom(broken('angle: 90° (85–95)', `angle: ${angle}`)), 'tighten').at(-1);
    expect(turned).toMatchObject({ degrees: 90, window: { least: 85, most: 95 } });
  }); // prettier-ignore

  test('turns are degrees', () => {
    const turned = passes(readFrom(broken('angle: 90° (85–95)', 'angle: 1/4 turn, window: 85–95°')), 'tighten').at(-1);
    expect(turned).toMatchObject({ degrees: 90 });
  });

  test('tool and rules of the step are those of its passes, unless they have their own', () => {
    expect(pass('low')).toMatchObject({ tool: 'wrench', recovery: { over: { action: 'restart-all' } } });
    expect(pass('turn')).toMatchObject({ tool: 'bar', recovery: { over: { action: 'restart-all' } } });
  });

  test('a rule of the step that would do an angle again is not taken over into an angle pass', () => {
    const risky = readFrom(
      broken(
        'over: { action: restart-all, say: Start again. }',
        'over: { action: restart-all, say: Start again. }\n          early: { action: redo-bolt, say: Pull again. }',
      ),
    );
    const [first, , , , turn] = passes(risky, 'tighten');
    expect(first?.recovery.early?.action).toBe('redo-bolt');
    expect(turn?.recovery).not.toHaveProperty('early');
  });
});

test('the answers of a read-back stand in the order of their ids, so that their order tells nothing', () => {
  const lay = stepsOf(readFrom(SOUND)).find(({ id }) => id === 'lay');
  expect(lay?.question?.answers.map(({ id, right }) => [id, right])).toEqual([
    ['bright', true],
    ['dull', false],
    ['none', false],
  ]); // prettier-ignore
});

test('a loose end closed on both branches of a question is closed', () => {
  const closes = (answer: string) =>
    `      - { id: on-${answer}, say: On., only-if: { step: look, answers: [${answer}] }, closes: [hose-left] }\n`;
  const text = SOUND.replace('closes: [hose-left, hose-right]', 'closes: [hose-right]');
  const both = text.replace('      - id: oil\n', `${closes('dry')}${closes('wet')}      - id: oil\n`);
  expect(checkDocument(both, 'sound.yaml')).toMatchObject({ ok: true, warnings: [] });
  const one = checkDocument(text.replace('      - id: oil\n', `${closes('dry')}      - id: oil\n`), 'sound.yaml');
  expect(one.ok ? [] : one.error.map(({ code }) => code)).toEqual(['milestone-while-open']);
});

test('waits are minutes, whatever unit they are written in', () => {
  expect(readFrom(broken('time: 30 min', 'time: 2.5 h')).timers.get('cure')?.minutes).toBe(150);
});
