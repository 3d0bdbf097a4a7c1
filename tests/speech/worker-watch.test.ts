import { expect, test } from 'vitest';
import { WATCH, WorkerWatch } from '../../src/speech/worker-watch';

test('a worker that answers is asked again and never given up', () => {
  const watch = new WorkerWatch(0);
  watch.loaded();
  for (let now = 0; now < 100_000; now += WATCH.every) {
    expect(watch.tick(now)).toBe('ask');
    watch.answered();
  }
});

test('a worker that stops answering is given up after the silence allowed', () => {
  const watch = new WorkerWatch(0);
  watch.loaded();
  expect(watch.tick(1000)).toBe('ask');
  expect(watch.tick(1000 + WATCH.silence)).toBe('wait');
  expect(watch.tick(1001 + WATCH.silence)).toBe('silent');
});

test('a page that was frozen asks again before it gives a worker up', () => {
  const watch = new WorkerWatch(0);
  watch.loaded();
  expect(watch.tick(1000)).toBe('ask');
  const thawed = 1000 + 60 * WATCH.silence;
  expect(watch.tick(thawed)).toBe('ask');
  watch.answered();
  expect(watch.tick(thawed + WATCH.every)).toBe('ask');
});

test('a worker that is silent still after the thaw is given up, however seldom the page is woken', () => {
  const watch = new WorkerWatch(0);
  watch.loaded();
  watch.tick(1000);
  const minute = 60_000;
  expect(watch.tick(1000 + minute)).toBe('ask');
  expect(watch.tick(1000 + 2 * minute)).toBe('silent');
});

test('loading may take longer than an answer, but not for ever', () => {
  const watch = new WorkerWatch(0);
  for (let now = 0; now <= WATCH.loading; now += WATCH.every) expect(watch.tick(now)).toBe('wait');
  expect(watch.tick(WATCH.loading + 1)).toBe('silent');
});

test('restarts wait longer each time and end', () => {
  const watch = new WorkerWatch(0);
  const waits = Array.from({ length: WATCH.backoff.length + 1 }, () => watch.restart(0));
  expect(waits).toEqual([...WATCH.backoff, null]);
});

test('a worker that has heard something earns its restarts back', () => {
  const watch = new WorkerWatch(0);
  for (let n = 0; n < WATCH.backoff.length; n += 1) watch.restart(0);
  watch.proven();
  expect(watch.restart(0)).toBe(WATCH.backoff[0]);
});
