import { expect, test } from 'vitest';
import { newWrenchId } from '../../src/ui/setup/wrench-id';

test.each([
  ['Long half-inch', [], 'long-half-inch'],
  ['1/2 in click', [], 'in-click'],
  ['§§', [], 'wrench'],
  ['Small', ['small'], 'small-2'],
  ['Small', ['small', 'small-2'], 'small-3'],
  ['Schlüssel ', [], 'schlussel'],
])('a wrench called %j, with %j taken, is %s', (say, taken, id) => {
  expect(newWrenchId(say, taken)).toBe(id);
  expect(id).toMatch(/^[a-z][a-z0-9-]*$/);
});
