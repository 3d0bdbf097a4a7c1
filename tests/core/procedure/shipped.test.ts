import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { checkDocument } from '../../../src/cli/check-document';
import { editorSchema } from '../../../src/cli/editor-schema/editor-schema';
import { MILESTONES, type Pass, type Procedure, type Step } from '../../../src/core/procedure/procedure';

const read = (file: string): string => readFileSync(`procedures/${file}`, 'utf8');
const files = readdirSync('procedures').filter((file) => file.endsWith('.yaml'));

function shipped(file: string): Procedure {
  const checked = checkDocument(read(file), file);
  if (!checked.ok) throw new Error(JSON.stringify(checked.error, null, 1));
  return checked.value;
}

const stepsOf = ({ phases }: Procedure): readonly Step[] => phases.flatMap(({ steps }) => steps);
const passesOf = (step: Step): readonly Pass[] =>
  step.kind === 'tighten' || step.kind === 'slacken' ? step.passes : [];

describe.each(files)('%s', (file) => {
  test('has no errors and no warnings', () => {
    const checked = checkDocument(read(file), file);
    expect(checked.ok ? [] : checked.error).toEqual([]);
    expect(checked.warnings).toEqual([]);
  });

  test('names its editor schema, and is called as its file is', () => {
    expect(read(file)).toMatch(/^# yaml-language-server: \$schema=\.\/procedure\.schema\.json\n/);
    expect(`${shipped(file).id}.yaml`).toBe(file);
  });

  test('says that it is a demonstration and where its figures come from', () => {
    const procedure = shipped(file);
    expect(procedure.demonstration).toBe(true);
    expect(procedure.source).toMatch(/invent/i);
  });

  test('an angle is never applied twice by rule', () => {
    const angles = stepsOf(shipped(file))
      .flatMap(passesOf)
      .filter(({ kind }) => kind === 'angle');
    const actions = angles.flatMap(({ recovery }) => Object.values(recovery).map(({ action }) => action));
    expect(actions).not.toContain('redo-bolt');
    expect(actions).not.toContain('repeat-pass');
  });
});

test('the editor schema on disk is the one the checker uses', () => {
  expect(JSON.parse(read('procedure.schema.json'))).toEqual(JSON.parse(editorSchema()));
});

describe('the slice', () => {
  const slice = shipped('tarnbeck-head-slice.yaml');

  test('eases the cap before it opens the drain, with the warnings of both', () => {
    const steps = stepsOf(slice);
    const ids = steps.map(({ id }) => id);
    expect(ids.indexOf('cold-check')).toBeLessThan(ids.indexOf('cap-off'));
    expect(ids.indexOf('cap-off')).toBeLessThan(ids.indexOf('coolant-out'));
    for (const id of ['cold-check', 'cap-off', 'coolant-out'])
      expect(steps.find((step) => step.id === id)?.warnings).not.toEqual([]);
  });

  test('tightens ten bolts in three torque passes and one angle pass, in the order of the document', () => {
    const passes = stepsOf(slice).flatMap(passesOf);
    expect(passes.map(({ kind }) => kind)).toEqual(['torque', 'torque', 'torque', 'angle']);
    for (const pass of passes) expect(pass.order).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  });
});

describe('the whole job', () => {
  const job = shipped('tarnbeck-head-gasket.yaml');
  const steps = stepsOf(job);
  const step = (id: string): Step => {
    const found = steps.find((candidate) => candidate.id === id);
    if (!found) throw new Error(`no step ${id}`);
    return found;
  };
  const before = (...ids: readonly string[]): void => {
    const places = ids.map((id) => steps.indexOf(step(id)));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  };

  test('goes through every phase of a top-end job, in more than a hundred steps', () => {
    expect(job.phases.map(({ id }) => id)).toEqual([
      'diagnose',
      'parts-and-tools',
      'strip',
      'measure',
      'clean',
      'rebuild',
      'refit',
      'fill',
      'first-start',
      'verify',
      'record',
    ]); // prettier-ignore
    expect(steps.length).toBeGreaterThan(100);
  });

  test.each(['left', 'right'])('the %s head has seven passes over large and small bolts, in turn', (side) => {
    const passes = passesOf(step(`tighten-${side}`)).map(({ kind, order }) => `${kind} ${order.length}`);
    expect(passes).toEqual(['torque 10', 'torque 4', 'torque 10', 'torque 10', 'repeat 4', 'angle 10', 'torque 4']);
  });

  test.each(['left', 'right'])(
    'a soft gasket on the %s head is bedded, left, slackened in reverse and tightened anew',
    (side) => {
      const passes = passesOf(step(`tighten-composite-${side}`));
      expect(passes.map(({ kind }) => kind).slice(0, 5)).toEqual(['torque', 'torque', 'wait', 'slacken', 'torque']);
      expect(passes[3]?.order).toEqual(passes[1]?.order.toReversed());
    },
  );

  test('the right head is drawn as the left one turned round, with the same numbers at the same words', () => {
    const words = (id: string) => job.patterns.get(id)?.fasteners.map(({ number, say }) => `${number} ${say}`);
    expect(words('head-right')).toEqual(words('head-left'));
    const first = job.patterns.get('head-left')?.fasteners.map(({ at }) => at.x) ?? [];
    expect(job.patterns.get('head-right')?.fasteners.map(({ at }) => 420 - at.x)).toEqual(first);
  });

  test.each([
    ['codes are read before the battery goes off', ['read-codes', 'battery-off']],
    ['fuel pressure is relieved before the lines open', ['fuel-relieve', 'battery-off', 'fuel-lines-off']],
    [
      'cold, cap, radiator, block, then the heads',
      ['cold-again', 'cap-off', 'drain-radiator', 'drain-block-left', 'drain-block-right', 'lift-left'],
    ],
    ['the cause is found before the rebuild', ['why-failed', 'gasket-left']],
    [
      'a head comes back and is measured before it goes on',
      ['slip-out-left', 'slip-back-left', 'head-flat-again-left', 'head-on-left'],
    ],
    ['lifters have bled down before the crank is turned', ['rockers-on-one', 'bleed-one', 'turn-to-two']],
    ['oil shows at every rocker before the covers go on', ['prime-left', 'prime-right', 'cover-on-left']],
    ['milky oil is changed before the engine turns', ['oil-out', 'oil-in', 'crank-for-oil']],
    ['the earth lead is last before cranking', ['plug-in-right', 'battery-on', 'crank-for-oil']],
    ['the watch list is heard before firing', ['watch-list', 'hand-on-stop', 'fire']],
    ['it cools right down before the re-check', ['cool-wait', 'cold-levels', 'cold-nip']],
  ])('%s', (_rule, ids) => before(...ids));

  test('every milestone is met, in its order', () => {
    const met = steps.flatMap(({ milestone }) => milestone ?? []);
    expect([...new Set(met)]).toEqual([...MILESTONES]);
  });

  test('each lifter, rocker and push rod has one place of its own, by bank, cylinder and valve', () => {
    const places = steps
      .filter(({ id }) => /^(?:valve-gear|lifters)-out-/.test(id))
      .flatMap(({ stow }) => stow.map(({ where, what }) => `${where}: ${what}`));
    expect(places).toHaveLength(6 * 6);
    expect(new Set(places).size).toBe(places.length);
    expect(places).toContain('right rack, slot four, exhaust: exhaust push rod, upper end up');
  });

  test('rags taken out are as many as were put in', () => {
    const rags = [...job.looseEnds.values()].filter(({ kind, id }) => kind === 'rag' && id.includes('rag'));
    for (const { id } of rags) {
      expect(steps.filter(({ opens }) => opens.includes(id))).toHaveLength(1);
      expect(steps.filter(({ closes }) => closes.includes(id))).toHaveLength(1);
    }
    expect(job.parts.get('clean-rag')?.quantity).toBe(13);
  });

  test('the sealant has two clocks, and oil waits for the longer', () => {
    expect(step('valley-bead').startsTimers).toEqual(['sealant-skin']);
    expect(step('inlet-tighten').startsTimers).toEqual(['sealant-cure']);
    expect(step('oil-level').needsTimers).toEqual(['sealant-cure']);
  });

  test('lengths and sealer are given for every head bolt', () => {
    const bolts = job.patterns.get('head-left')?.fasteners ?? [];
    expect(bolts.every(({ length, hole }) => length !== undefined && hole !== undefined)).toBe(true);
    expect(bolts.filter(({ sealer }) => sealer !== undefined).map(({ number }) => number)).toEqual([1, 3, 5, 7]);
  });
});

test('the flange follows the cross order, then goes round the circle at the same torque', () => {
  // Order from memory of ASME PCC-1; rounds of 30, 60 and 100 per cent and the closing circle from published guides.
  const flange = stepsOf(shipped('flange-eight-bolt.yaml')).find(({ id }) => id === 'tighten-flange');
  const passes = flange ? passesOf(flange) : [];
  expect(passes.slice(0, 3).map(({ order }) => order)).toEqual(Array(3).fill([1, 5, 3, 7, 2, 6, 4, 8]));
  expect(
    passes.map((pass) => (pass.kind === 'torque' || pass.kind === 'repeat' ? pass.target.value / 1.2 : 0)),
  ).toEqual([30, 60, 100, 100]);
  expect(passes.at(-1)).toMatchObject({ kind: 'repeat', order: [1, 2, 3, 4, 5, 6, 7, 8] });
});

test('the wheel has its final torque on the ground, and again after a short run (common practice)', () => {
  const ids = stepsOf(shipped('wheel-five-stud.yaml')).map(({ id }) => id);
  const wanted = ['seats', 'snug', 'lower', 'tighten-wheel', 'run', 'check-wheel'];
  expect(ids.filter((id) => wanted.includes(id))).toEqual(wanted);
});
