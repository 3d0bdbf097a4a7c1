import { expect, test } from 'vitest';
import { flushWhenHidden } from '../../src/store/flush-when-hidden';

/** A document, as far as it is looked at. */
function page() {
  const view = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  const flushes: string[] = [];
  const writer = { flush: async () => void flushes.push(view.visibilityState) };
  // Only these members of Document are used.
  const off = flushWhenHidden(writer, view as unknown as Document);
  const become = (state: string) => {
    view.visibilityState = state;
    view.dispatchEvent(new Event('visibilitychange'));
  };
  return { become, flushes, off };
}

test('what waits is stored when the page goes out of sight, not when it comes back', () => {
  const { become, flushes } = page();
  become('hidden');
  become('visible');
  expect(flushes).toEqual(['hidden']);
});

test('nothing is listened for after it was stopped', () => {
  const { become, flushes, off } = page();
  off();
  become('hidden');
  expect(flushes).toEqual([]);
});
