import { expect, test } from 'vitest';
import { DEFAULT_SETTINGS, rateStepped, readSettings, saveSettings, withVoice } from '../../src/shell/setup/settings';
import { memoryStore } from '../../src/store/memory-store';

test('what was saved comes back', async () => {
  const store = memoryStore();
  const mine = { ...DEFAULT_SETTINGS, theme: 'dim' as const, people: ['Ansel'] };
  await saveSettings(store, mine);
  expect(await readSettings(store)).toEqual(mine);
});

test.each([
  [null],
  ['nonsense'],
  [{ theme: 'pink', people: 'Ansel', speechRate: 'fast', talk: 7 }],
  [{ recogniser: 'other' }],
])('%j is no setting and changes nothing', async (saved) => {
  const store = memoryStore();
  await store.saveSetting('settings', saved);
  expect(await readSettings(store)).toEqual(DEFAULT_SETTINGS);
});

test.each([
  { rate: 1, steps: 1, to: 1.1 },
  { rate: 1.1, steps: -1, to: 1 },
  { rate: 1.3, steps: 1, to: 1.3 },
  { rate: 0.7, steps: -1, to: 0.7 },
])('$rate by $steps steps is $to', ({ rate, steps, to }) => {
  expect(rateStepped(rate, steps)).toBe(to);
});

test('the first voice of the machine stands in until one is chosen', () => {
  const system = { ...DEFAULT_SETTINGS, voice: 'system' as const };
  expect(withVoice(system, [{ uri: 'a' }, { uri: 'b' }]).systemVoice).toBe('a');
  expect(withVoice({ ...system, systemVoice: 'b' }, [{ uri: 'a' }, { uri: 'b' }]).systemVoice).toBe('b');
  expect(withVoice(DEFAULT_SETTINGS, [{ uri: 'a' }])).toEqual(DEFAULT_SETTINGS);
});
