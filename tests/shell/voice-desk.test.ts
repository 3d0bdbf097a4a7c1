import { expect, test } from 'vitest';
import { NoticeBoard } from '../../src/shell/notice-board';
import { VoiceDesk } from '../../src/shell/setup/voice-desk';
import { keepProfile } from '../../src/shell/setup/voice-shelf';
import { SharedEar } from '../../src/shell/sound/shared-ear';
import { memoryStore } from '../../src/store/memory-store';
import { FakeEar, grammar, HandClock, say } from './fakes';
import { keptProfile } from './kept-profile';

const PROFILE = keptProfile('p1', 'Ansel');

function desk(chosen = '') {
  const store = memoryStore();
  const notices = new NoticeBoard(() => undefined);
  const choices: string[] = [];
  const made = new VoiceDesk({
    store,
    notices,
    say,
    newId: () => 'new',
    now: () => 0,
    chosen: () => chosen,
    choose: async (id) => void choices.push(id),
    ear: new SharedEar(new FakeEar()),
    reading: async () => null,
    lines: ['Oil the threads.'],
    grammar: () => grammar('check'),
    after: new HandClock().after,
    changed: () => undefined,
  });
  return { store, notices, choices, desk: made };
}

test('a chosen profile is what the ear gets, and one that is gone is none', async () => {
  const { store, notices, desk: voices } = desk();
  await keepProfile(store, PROFILE);
  expect(await voices.aid('p1')).toEqual(PROFILE);
  expect(await voices.aid('p2')).toBeNull();
  expect(notices.shown).toEqual([]);
});

test('a damaged profile is told of in words, and the ear listens without one', async () => {
  const { store, notices, desk: voices } = desk();
  await store.saveSetting('voice-profiles', [{ ...PROFILE, voiceDb: 'loud' }]);
  expect(await voices.aid('p1')).toBeNull();
  expect(notices.shown).toMatchObject([{ kind: 'news', text: expect.stringContaining('1') }]);
});

test.each([
  { chosen: 'p1', choices: [''] },
  { chosen: 'another', choices: [] },
])('a profile that is taken out is no longer the one chosen: $chosen', async ({ chosen, choices: expected }) => {
  const { store, choices, desk: voices } = desk(chosen);
  await keepProfile(store, PROFILE);
  await voices.look();
  await voices.answer({ type: 'delete-voice', id: 'p1' });
  expect(voices.lines).toEqual([]);
  expect(choices).toEqual(expected);
});
