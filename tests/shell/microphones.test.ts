import { describe, expect, test } from 'vitest';
import { NoticeBoard } from '../../src/shell/notice-board';
import { MicrophoneList } from '../../src/shell/setup/microphone-list';
import { DEFAULT_SETTINGS } from '../../src/shell/setup/settings';
import { microphoneWatch } from '../../src/shell/sound/microphone-watch';
import { type MicrophoneWish, Sound, type SoundMakers } from '../../src/shell/sound/sound';
import type { Settings } from '../../src/ui/setup/settings';
import { silentVoice } from '../../src/voice/silent';
import { FakeEar, say } from './fakes';

const clock = { wall: () => 0, mono: () => 0 };
const headset = { id: 'a1', name: 'Headset' };

function sounding(settings: Settings) {
  const box = { settings };
  const wishes: MicrophoneWish[] = [];
  const ears: FakeEar[] = [];
  const reopened: string[] = [];
  const makers: SoundMakers = {
    ear: (_aid, wish) => {
      const recogniser = new FakeEar();
      ears.push(recogniser);
      wishes.push(wish);
      return { recogniser, microphone: () => null, reopen: () => reopened.push(wish.wanted()), reading: null };
    },
    ownEar: () => Promise.reject(new Error('not asked for')),
    voice: () => silentVoice(clock, { pace: 'none' }),
    systemVoice: () => silentVoice(clock, { pace: 'none' }),
  };
  const sound = new Sound(
    {
      open: async () => ({ ok: true, value: makers }),
      typed: () => new FakeEar(),
      silent: () => silentVoice(clock, { pace: 'none' }),
      systemVoices: async () => [],
    },
    () => box.settings,
    () => undefined,
  );
  const change = (some: Partial<Settings>): void => {
    box.settings = { ...box.settings, ...some };
    sound.apply();
  };
  return { sound, change, wishes, ears, reopened };
}

describe('a microphone of the settings', () => {
  test('is the one that the ear asks for from the start, and it is opened once', async () => {
    const { sound, wishes, reopened } = sounding({ ...DEFAULT_SETTINGS, microphone: 'a1' });
    await sound.open();
    expect(wishes.map(({ wanted }) => wanted())).toEqual(['a1']);
    expect(reopened).toEqual([]);
  });

  test('changed, it is opened at once by the same ear, and by nothing else that is set', async () => {
    const { sound, change, ears, reopened } = sounding(DEFAULT_SETTINGS);
    await sound.open();
    await sound.reading();
    change({ microphone: 'a1', microphoneName: 'Headset' });
    change({ speechRate: 1.2 });
    change({ microphone: '', microphoneName: '' });
    expect(reopened).toEqual(['a1', '']);
    expect(ears).toHaveLength(1);
  });
});

describe('a chosen microphone that is gone', () => {
  function watched() {
    const notices = new NoticeBoard(() => undefined);
    const said: string[] = [];
    const settings = { microphone: 'a1', microphoneName: 'Headset' };
    const told = microphoneWatch({ settings: () => settings, say, notices, speak: ({ code }) => said.push(code) });
    return { notices, said, settings, told };
  }

  test('is said and shown once, however often another is opened for it', () => {
    const { notices, said, told } = watched();
    told(true);
    told(true);
    expect(said).toEqual(['microphone-other']);
    expect(notices.shown.map(({ text }) => text)).toEqual([say('microphone-gone', { name: 'Headset' })]);
  });

  test('is said to listen again when it is back', () => {
    const { notices, said, told } = watched();
    told(true);
    told(false);
    expect(said).toEqual(['microphone-other', 'microphone-chosen']);
    expect(notices.shown).toEqual([]);
  });

  test("given up for the machine's own choice, it is no longer missed, and nothing is said", () => {
    const { notices, said, settings, told } = watched();
    told(true);
    settings.microphone = '';
    told(false);
    expect(said).toEqual(['microphone-other']);
    expect(notices.shown).toEqual([]);
  });

  test('is not missed while it is there', () => {
    const { said, told } = watched();
    told(false);
    expect(said).toEqual([]);
  });
});

describe('the list that Setup shows', () => {
  test('is read anew when a microphone comes or goes, and when the first one is allowed', async () => {
    const ear = new FakeEar();
    const box = { named: false, found: [] as (typeof headset)[] };
    let plug = (): void => undefined;
    const microphones = {
      here: async () => ({ ...box }),
      onChange: (changed: () => void) => {
        plug = changed;
      },
    };
    const list = new MicrophoneList({ microphones, ear, changed: () => undefined });
    await list.look();
    expect(list.now?.named).toBe(false);
    box.named = true;
    ear.tell({ type: 'ready', msToLoad: 0 });
    await expect.poll(() => list.now?.named).toBe(true);
    box.found.push(headset);
    plug();
    await expect.poll(() => list.now?.found).toEqual([headset]);
  });
});
