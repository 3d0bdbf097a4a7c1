import { expect, test } from 'vitest';
import { fail, ok, type Result } from '../../src/core/result';
import type { Still, StillFault } from '../../src/shell/clips/take-still';
import { CameraTry } from '../../src/shell/setup/camera-check';

const STILL: Still = { mime: 'image/jpeg', bytes: Uint8Array.of(1), camera: 'rear' };

function bench() {
  const answers: ((taken: Result<Still, StillFault>) => void)[] = [];
  const shown: string[] = [];
  const released: string[] = [];
  let asks = false;
  let urls = 0;
  const check: CameraTry = new CameraTry({
    still: (asking) => {
      if (asks) asking();
      return new Promise((resolve) => answers.push(resolve));
    },
    url: () => {
      const url = `blob:${++urls}`;
      return { url, release: () => released.push(url) };
    },
    changed: () => shown.push(check.now.state),
  });
  return { check, answers, shown, released, asks: () => (asks = true) };
}

test('the camera is asked for, its still is shown with its name, and the one before is let go of', async () => {
  const b = bench();
  b.asks();
  const first = b.check.check();
  // A second tap while the browser asks changes nothing.
  await b.check.check();
  expect(b.answers).toHaveLength(1);
  b.answers[0]?.(ok(STILL));
  await first;
  expect(b.shown).toEqual(['checking', 'asking', 'taken']);
  expect(b.check.now).toEqual({ state: 'taken', url: 'blob:1', camera: 'rear' });
  const second = b.check.check();
  expect(b.released).toEqual(['blob:1']);
  b.answers[1]?.(ok(STILL));
  await second;
  expect(b.check.now).toMatchObject({ url: 'blob:2' });
});

test.each<StillFault['code']>(['no-camera', 'refused', 'busy', 'failed'])(
  '%s is shown as such, and can be tried again',
  async (code) => {
    const b = bench();
    const first = b.check.check();
    b.answers[0]?.(fail({ code, detail: '' }));
    await first;
    expect(b.check.now).toEqual({ state: code });
    void b.check.check();
    expect(b.answers).toHaveLength(2);
  },
);
