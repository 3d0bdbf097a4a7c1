import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { chartOf } from '../../src/cli/procedure/chart';
import { planOf } from '../../src/core/job/plan';
import { leavesOf, nodesOf } from '../../src/machine/nodes';
import { shipped } from '../core/job/workbench';

const documents = readdirSync('procedures').flatMap((file) =>
  file.endsWith('.yaml') ? [file.replace('.yaml', '')] : [],
);

const arrows = (chart: string) =>
  [...chart.matchAll(/^ {2}(\S+) --> (\S+?)(?: : (.+))?$/gm)].map(([, from = '', to = '', label = '']) => ({
    from,
    to,
    label,
  }));

describe.each(documents)('the chart of %s', (document) => {
  const procedure = shipped(document);
  const chart = chartOf(procedure);
  const declared = [...chart.matchAll(/state "[^"]*" as (\w+)/g)].map(([, name]) => name);

  test('is a state diagram, line by line', () => {
    const [first, ...lines] = chart.trimEnd().split('\n');
    expect(first).toBe('stateDiagram-v2');
    const known = /^ +(?:state "[^"#;:{}]+" as \w+(?: \{)?|\}|(?:\w+|\[\*\]) --> (?:\w+|\[\*\])(?: : [^"#;:{}]+)?)$/;
    expect(lines.filter((line) => !known.test(line))).toEqual([]);
  });

  test('declares every state once, and no arrow goes to another', () => {
    expect(new Set(declared).size).toBe(declared.length);
    const ends = arrows(chart).flatMap(({ from, to }) => [from, to]);
    expect(ends.filter((name) => name !== '[*]' && !declared.includes(name))).toEqual([]);
  });

  test('every place of the work can be come to from the start', () => {
    const reached = new Set(['[*]']);
    for (let before = 0; before < reached.size; ) {
      before = reached.size;
      for (const { from, to } of arrows(chart)) if (reached.has(from)) reached.add(to);
    }
    const names = leavesOf(nodesOf(planOf(procedure))).map(({ id }) => id.replaceAll('-', '_').replaceAll('.', '_X_'));
    expect(names.filter((name) => name !== 'paused' && !reached.has(name))).toEqual([]);
  });
});

test('a step that an answer may leave out has a way past it, with the answer on its own', () => {
  const ways = arrows(chartOf(shipped('tarnbeck-head-gasket'))).filter(({ to }) =>
    to.startsWith('rebuild_X_second_eye_left'),
  );
  expect(ways.map(({ from }) => from.split('_X_')[1])).toEqual(
    expect.arrayContaining(['tighten_left', 'tighten_composite_left']),
  );
});
