import { expect, test } from 'vitest';
import { stressArea } from '../../../src/core/fastening/thread';
import { threadNamed } from '../../../src/core/fastening/thread-named';
import { THREAD_NAMES } from '../../../src/core/fastening/thread-names';

// Stress areas as printed: ISO 898-1 for metric threads, SAE J429 (square inches) for unified ones.
test.each([
  ['M6', 20.1],
  ['M8', 36.6],
  ['M8x1', 39.2],
  ['M10', 58],
  ['M10x1.25', 61.2],
  ['M12', 84.3],
  ['M12x1.25', 92.1],
  ['M12x1.5', 88.1],
  ['M14', 115],
  ['M14x1.5', 125],
  ['M16', 157],
  ['3/8-16', 0.0775 * 25.4 ** 2],
  ['7/16-14', 0.1063 * 25.4 ** 2],
  ['1/2-13', 0.1419 * 25.4 ** 2],
])('%s has the stress area of its table', (name, area) => {
  const thread = threadNamed(name);
  expect(thread.ok && Math.abs(stressArea(thread.value) / area - 1)).toBeLessThan(0.006);
});

test('every thread that can be asked about is one', () => {
  expect(THREAD_NAMES.filter((name) => !threadNamed(name).ok)).toEqual([]);
});

test.each(['M11', 'M', '10x1.25', 'M10x', '3/8', '3/0-16', '3/8-0', 'M0', '', 'M10x9'])('"%s" is none', (text) => {
  expect(threadNamed(text).ok).toBe(false);
});
