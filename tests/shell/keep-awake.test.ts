import { expect, test } from 'vitest';
import { awakeKeeper } from '../../src/shell/keep-awake';

/** A page that counts what is asked of it; each request ends as told. */
function page(answer: () => Promise<WakeLockSentinel> = () => new Promise(() => undefined)) {
  const asked: string[] = [];
  const listeners: (() => void)[] = [];
  const document = {
    visibilityState: 'visible' as DocumentVisibilityState,
    addEventListener: (_type: string, listener: () => void) => void listeners.push(listener),
  };
  const wakeLock = {
    request: (type: WakeLockType = 'screen') => {
      asked.push(type);
      return answer();
    },
  };
  const turns = (to: DocumentVisibilityState): void => {
    document.visibilityState = to;
    for (const listener of listeners) listener();
  };
  return { asked, listeners, turns, wakeLock, document: document as unknown as Document };
}

test('the screen is kept on again each time the page comes back into sight', () => {
  const at = page();
  awakeKeeper(at)();
  expect(at.asked).toEqual(['screen']);
  at.turns('hidden');
  expect(at.asked).toHaveLength(1);
  at.turns('visible');
  at.turns('hidden');
  at.turns('visible');
  expect(at.asked).toHaveLength(3);
});

test('asked at each vain try to open the sound, it listens once', () => {
  const at = page();
  const keep = awakeKeeper(at);
  for (let tries = 0; tries < 5; tries++) keep();
  expect(at.listeners).toHaveLength(1);
  at.turns('visible');
  expect(at.asked).toHaveLength(6);
});

test('a browser that refuses, or has none to give, changes nothing else', async () => {
  const refusing = page(() => Promise.reject(new Error('low battery')));
  awakeKeeper(refusing)();
  refusing.turns('visible');
  await Promise.resolve();
  expect(refusing.asked).toHaveLength(2);
  const { document, turns } = page();
  awakeKeeper({ wakeLock: undefined, document })();
  expect(() => turns('visible')).not.toThrow();
});
