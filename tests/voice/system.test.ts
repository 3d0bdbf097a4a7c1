import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { PLAIN_BREATH } from '../../src/core/phrasing/breath';
import type { VoiceEvent } from '../../src/core/ports';
import { silentMouth } from '../../src/voice/silent';
import { systemVoice } from '../../src/voice/system';
import { systemVoices } from '../../src/voice/system-voices';

type Behaviour = 'well' | 'never-begins' | 'never-ends' | 'error';

class Utterance {
  voice: unknown = null;
  rate = 1;
  lang = '';
  onstart = () => {};
  onend = () => {};
  onerror = (_event: { error: string }) => {};
  constructor(readonly text: string) {}
}

const VOICES = [
  { voiceURI: 'near', name: 'Near', lang: 'en-GB', localService: true },
  { voiceURI: 'far', name: 'Far', lang: 'en-US', localService: false },
  { voiceURI: 'other', name: 'Other', lang: 'de-DE', localService: true },
];

/** A speechSynthesis that behaves as it is told to, with a queue that can be found stuck. */
class Synth extends EventTarget {
  speaking = false;
  pending = false;
  voices: readonly unknown[] = VOICES;
  readonly done: string[] = [];
  constructor(readonly behave: Behaviour) {
    super();
  }
  getVoices = () => this.voices;
  cancel = () => {
    this.speaking = false;
    this.done.push('cancel');
  };
  speak = (utterance: Utterance) => {
    this.done.push(`speak ${utterance.text} at ${utterance.rate}`);
    if (this.behave === 'error') setTimeout(() => utterance.onerror({ error: 'synthesis-failed' }), 10);
    if (this.behave === 'never-ends' || this.behave === 'well') setTimeout(() => utterance.onstart(), 10);
    if (this.behave === 'well') setTimeout(() => utterance.onend(), 500);
  };
}

// The typed edge of the browser: the stand-in has the members that are used and no others.
const asBrowser = (synth: Synth) => synth as unknown as SpeechSynthesis;

const ENGLISH = { code: 'en', breath: PLAIN_BREATH };

const clock = { mono: () => Date.now() };

beforeEach(() => {
  vi.useFakeTimers({ now: 0 });
  vi.stubGlobal('SpeechSynthesisUtterance', Utterance);
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function speaking(behave: Behaviour) {
  const synth = new Synth(behave);
  const instead: string[] = [];
  const embedded = silentMouth({ pace: 'as-spoken', said: (text) => instead.push(text) });
  const voice = systemVoice(clock, () => ({ voiceUri: 'near', rate: 1.2 }), ENGLISH, embedded, asBrowser(synth));
  const events: VoiceEvent[] = [];
  voice.on((event) => events.push(event));
  const say = async (id: string) => {
    voice.say({ id, text: `Bolt ${id}.`, priority: 'normal' });
    await vi.runAllTimersAsync();
  };
  return { synth, voice, say, instead, events };
}

test('a voice that works says it, at the pace chosen', async () => {
  const { synth, say, instead, events } = speaking('well');
  await say('one');
  expect(synth.done).toEqual(['speak Bolt one. at 1.2']);
  expect(instead).toEqual([]);
  expect(events.at(-1)).toEqual({ type: 'quiet' });
});

describe.each<Behaviour>(['never-begins', 'never-ends', 'error'])('a voice that %s', (behave) => {
  test('is reported, and the embedded one says it all the same', async () => {
    const { say, instead, events } = speaking(behave);
    await say('one');
    expect(instead).toEqual(['Bolt one.']);
    expect(events).toContainEqual(expect.objectContaining({ type: 'failed', code: 'system-voice-stalled' }));
    expect(events.filter(({ type }) => type === 'finished')).toEqual([{ type: 'finished', id: 'one' }]);
  });

  test('twice in a row is not asked a third time', async () => {
    const { synth, say, instead } = speaking(behave);
    for (const id of ['one', 'two', 'three']) await say(id);
    expect(instead).toEqual(['Bolt one.', 'Bolt two.', 'Bolt three.']);
    expect(synth.done.filter((act) => act.startsWith('speak'))).toHaveLength(2);
  });
});

test('what is stuck in the system queue is thrown out before speaking', async () => {
  const { synth, say } = speaking('well');
  synth.speaking = true;
  await say('one');
  expect(synth.done).toEqual(['cancel', 'speak Bolt one. at 1.2']);
});

test.each(['well', 'never-ends'] as const)(
  'hush silences a voice that behaves %s, and nothing is said instead',
  async (behave) => {
    const { synth, voice, instead, events } = speaking(behave);
    voice.say({ id: 'one', text: 'Bolt one.', priority: 'normal' });
    await vi.advanceTimersByTimeAsync(100);
    voice.hush();
    expect(synth.done.at(-1)).toBe('cancel');
    await vi.runAllTimersAsync();
    expect(instead).toEqual([]);
    expect(events.filter(({ type }) => type === 'cut' || type === 'finished')).toEqual([{ type: 'cut', id: 'one' }]);
  },
);

describe('a language that the machine has no voice of', () => {
  test('is left to the mouth behind, and no voice of another language reads it', async () => {
    const synth = new Synth('well');
    const instead: string[] = [];
    const behind = silentMouth({ pace: 'as-spoken', said: (text) => instead.push(text) });
    const french = { code: 'fr', breath: PLAIN_BREATH };
    const voice = systemVoice(clock, () => ({ voiceUri: 'near', rate: 1 }), french, behind, asBrowser(synth));
    voice.say({ id: 'un', text: 'Boulon un.', priority: 'normal' });
    await vi.runAllTimersAsync();
    expect(synth.done).toEqual([]);
    expect(instead).toEqual(['Boulon un.']);
  });

  test('has one as soon as it is installed, however its tag is written', async () => {
    const synth = new Synth('well');
    synth.voices = [...VOICES, { voiceURI: 'proche', name: 'Proche', lang: 'fr_CA', localService: true }];
    expect(await systemVoices('fr', asBrowser(synth))).toEqual([{ uri: 'proche', name: 'Proche', language: 'fr-CA' }]);
  });
});

describe('the voices to choose from', () => {
  test('are English ones on this machine', async () => {
    expect(await systemVoices('en', asBrowser(new Synth('well')))).toEqual([
      { uri: 'near', name: 'Near', language: 'en-GB' },
    ]);
  });

  test('may arrive late', async () => {
    const synth = new Synth('well');
    synth.voices = [];
    const found = systemVoices('en', asBrowser(synth));
    synth.voices = VOICES;
    synth.dispatchEvent(new Event('voiceschanged'));
    expect(await found).toHaveLength(1);
  });

  test('may arrive without a word, or not at all', async () => {
    const synth = new Synth('well');
    synth.voices = [];
    const found = systemVoices('en', asBrowser(synth));
    await vi.advanceTimersByTimeAsync(1000);
    expect(await found).toEqual([]);
    expect(await systemVoices('en', undefined)).toEqual([]);
  });
});
