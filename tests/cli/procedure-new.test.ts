import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../src/cli/check-document';
import { EXIT } from '../../src/cli/procedure/check';
import { newDocument } from '../../src/cli/procedure/new';
import type { Pass, Procedure } from '../../src/core/procedure/procedure';
import { recordedIo } from './recorded-io';

async function write(...flags: readonly string[]) {
  const run = recordedIo();
  const code = await newDocument(['new.yaml', ...flags], run.io);
  return { ...run, code, text: run.written.get('new.yaml') };
}

const NAMED = ['--machine', 'Tarnbeck 32V6', '--title', 'Rocker cover'];

/** The procedure a document reads as; fails the test with the issues of a broken one. */
function read(text: string | undefined): Procedure {
  const checked = checkDocument(text ?? '', 'new.yaml');
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  return checked.value;
}

function passesIn(text: string | undefined): readonly Pass[] {
  const step = read(text)
    .phases.flatMap(({ steps }) => steps)
    .find(({ kind }) => kind === 'tighten');
  return step?.kind === 'tighten' ? step.passes : [];
}

describe('a document that is written passes the check', () => {
  test.each([
    ['a circle crossed', ['--circle', '8,160', '--order', 'cross', '--passes', '30 N·m (22 lbf·ft), 50 N·m, 90°, 90°']],
    ['an odd circle', ['--circle', '5,114.3', '--order', 'cross', '--passes', '60 Nm, 110 Nm']],
    ['a grid along its rows', ['--grid', '4x2,120x90', '--order', 'centre-out', '--passes', '10 ft-lb; 20 ft-lb']],
    [
      'a grid as pictured',
      ['--grid', '4x2,120x90', '--numbers', '5 1 3 7 / 8 4 2 6', '--order', '1 2 3 4 5 6 7 8', '--passes', '25 N·m'],
    ],
    ['one bolt', ['--at', '0,0', '--order', '1', '--passes', '200 lbf·in']],
    ['places', ['--at', '0,0 60,0 30,50', '--order', '1 3 2', '--passes', '12.5 N·m (111 lbf·in), 1/4 turn']],
    ['a window printed', ['--circle', '4,80', '--order', 'cross', '--passes', '38–42 N·m, 90° (85–95), 90 ± 4°']],
    [
      'pass and repeat, slackening and a wait',
      [
        '--circle',
        '4,80',
        '--order',
        '1 3 2 4',
        '--passes',
        '20 N·m, repeat, wait 10 min, slacken 180°, 20 N·m, again',
      ],
    ],
    [
      'subsets, the kinds in turn',
      [
        ...['--grid', '3x2,50x50', '--order', '1 2 3 4 5 6', '--subset', 'large=1-4', '--subset', 'small=5,6'],
        ...['--passes', '50 N·m of large, 10 N·m of small, 70 N·m of large, repeat 10 N·m of small, 90° of large'],
      ],
    ],
    [
      'a head with its maker’s order',
      ['--grid', '2x2,50x50', '--joint', 'head', '--order', '1 4 2 3', '--passes', '30 N·m', '--over', 'restart-all'],
    ],
    [
      'a head with a rule agreed to',
      ['--grid', '2x2,50x50', '--joint', 'head', '--order', 'centre-out', '--generated', '--passes', '30 N·m'],
    ],
    [
      'words that YAML could misread',
      [
        ...['--circle', '3,50', '--order', 'cross', '--passes', '9 N·m', '--name', 'lid: #1', '--lubrication', 'no'],
        ...['--source', '"quoted", [bracketed] & {curly}', '--viewed-from', 'true', '--edition', '2026-11-25'],
      ],
    ],
    ['only an angle', ['--circle', '3,50', '--order', 'cross', '--passes', '45°', '--over', 'accept']],
  ])('%s', async (_name, flags) => {
    const { code, complaints, text } = await write(...NAMED, ...flags);
    expect(complaints.filter((line) => !line.includes(' warning angle-without-over-rule '))).toEqual([]);
    expect(code).toBe(EXIT.fine);
    read(text);
  });

  const torque = fc.tuple(
    fc.integer({ min: 1, max: 400 }),
    fc.constantFrom(' N·m', ' Nm', ' lbf·ft', ' ft-lb', ' lbf·in'),
  );
  const pass = fc.oneof(
    torque.map(([value, unit]) => `${value}${unit}`),
    fc.integer({ min: 10, max: 200 }).map((degrees) => `${degrees}°`),
    fc.integer({ min: 1, max: 90 }).map((minutes) => `wait ${minutes} min`),
  );
  const layout = fc.oneof(
    fc
      .tuple(fc.integer({ min: 3, max: 48 }), fc.integer({ min: 1, max: 900 }))
      .map(([n, d]) => ['--circle', `${n},${d}`]),
    fc
      .tuple(fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 8 }), fc.integer({ min: 1, max: 300 }))
      .map(([c, r, p]) => ['--grid', `${c}x${r},${p}x${p}`]),
  );
  // A torque first: a joint that is only turned or only waited for is not what this is about.
  const passes = fc
    .tuple(torque, fc.array(pass, { maxLength: 7 }))
    .map(([[v, u], more]) => [`${v}${u}`, ...more].join(', '));

  test('whatever figures, layout and words are typed', async () => {
    await fc.assert(
      fc.asyncProperty(
        layout,
        passes,
        fc.constantFrom('cross', 'centre-out'),
        fc.constantFrom('plain', 'flange'),
        fc.string({ minLength: 1, maxLength: 60 }).filter((words) => /\S/.test(words)),
        async (where, figures, order, joint, title) => {
          const flags = [...where, '--order', order, '--joint', joint, '--passes', figures];
          const { code, text } = await write('--machine', 'Tarnbeck', `--title=${title}`, ...flags);
          expect(code).toBe(EXIT.fine);
          expect(read(text).title).toBe(title.trim());
        },
      ),
      { numRuns: 150 },
    );
  });
});

test('no words, however strange, make a document that is broken: it is whole, or not written', async () => {
  const words = fc.string({ unit: 'binary', minLength: 1, maxLength: 120 }).filter((text) => !text.startsWith('-'));
  const flag = fc.constantFrom('title', 'machine', 'name', 'viewed-from', 'source', 'lubrication', 'edition', 'passes');
  await fc.assert(
    fc.asyncProperty(words, flag, async (text, name) => {
      const base = [...NAMED, '--circle', '4,80', '--order', 'cross', '--passes', '30 N·m'];
      const { code, text: written, complaints } = await write(...base, `--${name}=${text}`);
      if (code === EXIT.fine) read(written);
      else expect([written, complaints.length > 0]).toEqual([undefined, true]);
    }),
    { numRuns: 200 },
  );
});

describe('what was typed is what stands there', () => {
  test('figures stay as the manual prints them, and an angle gets the usual window', async () => {
    const { text } = await write(
      ...NAMED,
      '--circle',
      '4,80',
      '--order',
      '1 3 2 4',
      '--passes',
      '30 N·m (22 lbf·ft), +90°',
    );
    const [first, second] = passesIn(text);
    expect(first).toMatchObject({
      kind: 'torque',
      order: [1, 3, 2, 4],
      target: { printed: '30 N·m', also: [{ printed: '22 lbf·ft' }] },
    });
    expect(second).toMatchObject({ kind: 'angle', degrees: 90, window: { least: 85, most: 95 } });
    expect(text).toMatch(/usual five degrees/);
  });

  test('a subset keeps the order of the whole, and a slackening turns it round', async () => {
    const flags = ['--circle', '6,80', '--order', '1 4 2 5 3 6', '--subset', 'upper=1,2,6'];
    const { text } = await write(...NAMED, ...flags, '--passes', '20 N·m, slacken 90° of upper, 25 N·m of upper');
    expect(passesIn(text).map(({ order }) => order)).toEqual([
      [1, 4, 2, 5, 3, 6],
      [6, 2, 1],
      [1, 2, 6],
    ]);
  });

  test('no rule of recovery is made up; the checker then says so', async () => {
    const { text, complaints } = await write(
      ...NAMED,
      '--circle',
      '4,80',
      '--order',
      'cross',
      '--passes',
      '30 N·m, 90°',
    );
    expect(passesIn(text).map(({ recovery }) => recovery)).toEqual([{}, {}]);
    expect(complaints.join()).toContain('angle-without-over-rule');
  });
});

describe('what cannot be written is told with its flag and column', () => {
  const CIRCLE = ['--circle', '4,80', '--order', 'cross'];
  test.each([
    ['pounds of no kind', [...CIRCLE, '--passes', '20 N·m, 30 lb'], '--passes:1:9 error bad-figure'],
    ['a figure without a unit', [...CIRCLE, '--passes', '20'], '--passes:1:1 error bad-figure'],
    ['a torque of nothing', [...CIRCLE, '--passes', '0 N·m'], '--passes:1:1 error bad-figure'],
    ['a repeat of nothing', [...CIRCLE, '--passes', 'repeat'], '--passes:1:1 error bad-pass'],
    ['a subset nobody named', [...CIRCLE, '--passes', '20 N·m of small'], '--passes:1:11 error bad-subset'],
    [
      'a fastener that is not there',
      ['--circle', '4,80', '--order', '1 2 3 5', '--passes', '9 N·m'],
      '--order:1:7 error bad-order',
    ],
    [
      'an order with a gap',
      ['--circle', '4,80', '--order', '1 2 3', '--passes', '9 N·m'],
      '--order:1:1 error bad-order',
    ],
    [
      'a rule for a head',
      ['--circle', '4,80', '--joint', 'head', '--order', 'cross', '--passes', '9 N·m'],
      '--order:1:1 error generated-order-on-head',
    ],
    [
      'two bolts on a circle',
      ['--circle', '2,80', '--order', 'cross', '--passes', '9 N·m'],
      '--circle:1:1 error bad-layout',
    ],
    [
      'a hundred bolts',
      ['--grid', '10x10,9x9', '--order', 'cross', '--passes', '9 N·m'],
      '--grid:1:1 error bad-layout',
    ],
    [
      'a place taken twice',
      ['--at', '0,0 5,5 0,0', '--order', '1 2 3', '--passes', '9 N·m'],
      '--at:1:9 error bad-layout',
    ],
    ['two layouts', ['--at', '0,0', '--circle', '4,80', '--order', '1', '--passes', '9 N·m'], 'One of --circle'],
    ['a joint nobody knows', [...CIRCLE, '--joint', 'lid', '--passes', '9 N·m'], '--joint:1:1 error not-one-of'],
    [
      'a subset that shares a bolt',
      [...CIRCLE, '--subset', 'a=1-2', '--subset', 'b=2-3', '--passes', '9 N·m'],
      '--subset:1:1 error bad-subset',
    ],
    ['a joint left slack', [...CIRCLE, '--passes', '9 N·m, slacken 90°'], 'error left-slack'],
    ['a flag nobody knows', [...CIRCLE, '--passses', '9 N·m'], 'Usage: new FILE'],
    ['no passes and nobody to ask', CIRCLE, '--passes is needed'],
  ])('%s', async (_name, flags, complaint) => {
    const { code, complaints, written } = await write(...NAMED, ...flags);
    expect(complaints.join('\n')).toContain(complaint);
    expect([code, written.size]).toEqual([EXIT.misused, 0]);
  });

  test('a file that is there already is left as it is', async () => {
    const { io, complaints } = recordedIo({ 'old.yaml': 'mine' });
    const code = await newDocument(['old.yaml', ...NAMED, ...CIRCLE, '--passes', '9 N·m'], io);
    expect([code, complaints.at(-1)]).toEqual([EXIT.misused, expect.stringContaining('is there already')]);
    expect(await io.readText('old.yaml')).toBe('mine');
  });
});

test('on a terminal what is missing is asked for, and asked again after a slip', async () => {
  const answers = ['Tarnbeck 32V6', 'Cover', 'round', 'circle 4,80', 'cross', '30 lb', '30 N·m'];
  const { io, questions, written, complaints } = recordedIo({}, answers);
  expect(await newDocument(['asked.yaml'], io)).toBe(EXIT.fine);
  expect(questions).toHaveLength(answers.length);
  expect(complaints.map((line) => line.split(' ').slice(0, 3).join(' '))).toEqual([
    '--circle, --grid or',
    '--passes:1:1 error bad-figure',
  ]);
  expect(read(written.get('asked.yaml')).title).toBe('Cover');
});
