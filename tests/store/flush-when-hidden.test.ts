import { expect, test } from 'vitest';
import { flushWhenHidden } from '../../src/store/flush-when-hidden';

/** A page and its document, as far as they are looked at. */
function page() {
  const view = Object.assign(new EventTarget(), { visibilityState: 'visible' });
  const window = new EventTarget();
  const flushes: string[] = [];
  const writer = { flush: async () => void flushes.push(view.visibilityState) };
  // Only these members of Document are used.
  const off = flushWhenHidden(writer, window, view as unknown as Document);
  return { view, window, flushes, off };
}

test('what waits is stored when the page goes out of sight, not when it comes back', () => {
  const { view, flushes } = page();
  view.visibilityState = 'hidden';
  view.dispatchEvent(new Event('visibilitychange'));
  view.visibilityState = 'visible';
  view.dispatchEvent(new Event('visibilitychange'));
  expect(flushes).toEqual(['hidden']);
});

test('what waits is stored when the page is left', () => {
  const { window, flushes } = page();
  window.dispatchEvent(new Event('pagehide'));
  expect(flushes).toHaveLength(1);
});

test('nothing is listened for after it was stopped', () => {
  const { view, window, flushes, off } = page();
  off();
  view.visibilityState = 'hidden';
  view.dispatchEvent(new Event('visibilitychange'));
  window.dispatchEvent(new Event('pagehide'));
  expect(flushes).toEqual([]);
});
