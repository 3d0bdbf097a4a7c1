import { expect, test } from 'vitest';
import { assertNever } from '../../src/core/result';

test('an unhandled case names the offending value', () => {
  expect(() => assertNever('stray' as never)).toThrow('stray');
});
