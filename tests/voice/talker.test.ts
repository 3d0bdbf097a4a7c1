import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { SpeechRequest, Voice } from '../../src/core/ports';
import { fail, ok } from '../../src/core/result';
import type { Mouth } from '../../src/voice/mouth';
import { silentMouth, silentVoice } from '../../src/voice/silent';
import { LONGEST_HOLD_MS, Talker } from '../../src/voice/talker';

const clock = { mono: () => Date.now() };

beforeEach(() => {
  vi.useFakeTimers({ now: 0 });
});
afterEach(() => {
  vi.useRealTimers();
});

/** What a voice tells, a line an event, with the time it was told. */
function diaryOf(voice: Voice) {
  const lines: { at: number; line: string }[] = [];
  voice.on((event) => {
    if (event.type === 'ready') return;
    const about = 'id' in event ? ` ${event.id}` : 'code' in event ? ` ${event.code}` : '';
    lines.push({ at: Date.now(), line: event.type + about });
  });
  return {
    lines: () => lines.map(({ line }) => line),
    at: (wanted: string) => lines.filter(({ line }) => line === wanted).map(({ at }) => at),
  };
}

function speaking(mouth: Partial<Mouth> = {}) {
  const said: string[] = [];
  const voice = new Talker({ ...silentMouth({ pace: 'as-spoken', said: (text) => said.push(text) }), ...mouth }, clock);
  return { voice, said, diary: diaryOf(voice) };
}

const request = (id: string, text: string, priority: SpeechRequest['priority'] = 'normal'): SpeechRequest => ({
  id,
  text,
  priority,
});

const LONG = 'Pass three of four, angle, ninety degrees. Mark every head against the casting. Then say all marked.';

describe('one reply', () => {
  test('is told from its first sound to the quiet after it', async () => {
    const { voice, diary, said } = speaking();
    voice.say(request('a', 'Seven done.'));
    await vi.runAllTimersAsync();
    expect(said).toEqual(['Seven done.']);
    expect(diary.lines()).toEqual(['sound-on', 'started a', 'finished a', 'sound-off', 'quiet']);
  });

  test('with nothing in it still ends', async () => {
    const { voice, diary } = speaking();
    voice.say(request('a', '  '));
    await vi.runAllTimersAsync();
    expect(diary.lines()).toEqual(['started a', 'finished a', 'quiet']);
  });

  test('that cannot be made is told and ends as cut, and the next is said', async () => {
    const good = silentMouth({ pace: 'none' });
    const { voice, diary } = speaking({
      make: async (text) => (text === 'bad' ? fail({ code: 'voice-crashed', detail: 'on purpose' }) : good.make(text)),
    });
    voice.say(request('a', 'bad'));
    voice.say(request('b', 'good'));
    await vi.runAllTimersAsync();
    expect(diary.lines()).toContain('failed voice-crashed');
    expect(diary.lines().filter((line) => / [ab]$/.test(line))).toEqual(['cut a', 'started b', 'finished b']);
  });
});

describe('listening gaps', () => {
  test('a long reply lets the ear open for 600 ms before each further stretch', async () => {
    const { voice, diary, said } = speaking();
    voice.say(request('a', LONG));
    await vi.runAllTimersAsync();
    expect(said.join(' ')).toBe(LONG);
    const [on, off] = [diary.at('sound-on'), diary.at('sound-off')];
    expect(on).toHaveLength(said.length);
    expect(on.slice(1).map((at, i) => at - (off[i] ?? 0))).toEqual(said.slice(1).map(() => 600));
  });

  test('replies queued behind each other do not add up to a longer stretch', async () => {
    const { voice, diary } = speaking();
    for (const id of ['a', 'b', 'c', 'd']) voice.say(request(id, 'Heater hose, left side, is still off.'));
    await vi.runAllTimersAsync();
    const off = diary.at('sound-off');
    for (const [i, on] of diary.at('sound-on').entries()) expect((off[i] ?? 0) - on).toBeLessThanOrEqual(4000);
    expect(diary.lines().filter((line) => line.startsWith('finished'))).toHaveLength(4);
  });

  test('a piece that measures longer than it looked is halved', async () => {
    const slow = silentMouth({ pace: 'none' });
    const made: string[] = [];
    const { voice } = speaking({
      make: async (text) => {
        made.push(text);
        const piece = await slow.make(text);
        return piece.ok ? ok({ ...piece.value, ms: 700 * text.split(' ').length }) : piece;
      },
    });
    voice.say(request('a', 'one, two, three four five six'));
    await vi.runAllTimersAsync();
    // 4.2 s for six words at 700 ms each; 1.4 and 2.8 s when broken at the second comma.
    expect(made.slice(0, 3)).toEqual(['one, two, three four five six', 'one, two,', 'three four five six']);
  });

  test('someone who begins to speak in the gap is let finish', async () => {
    const { voice, diary } = speaking();
    voice.say(request('a', LONG));
    await vi.advanceTimersByTimeAsync(100);
    while (diary.at('sound-off').length === 0) await vi.advanceTimersByTimeAsync(10);
    voice.hold();
    await vi.advanceTimersByTimeAsync(2000);
    expect(diary.at('sound-on')).toHaveLength(1);
    voice.resume();
    await vi.advanceTimersByTimeAsync(1);
    expect(diary.at('sound-on')).toHaveLength(2);
  });

  test('but not for ever', async () => {
    const { voice, diary } = speaking();
    voice.hold();
    voice.say(request('a', 'Seven done.'));
    await vi.runAllTimersAsync();
    expect(diary.at('sound-on')).toEqual([LONGEST_HOLD_MS]);
  });

  test('nor when the talk around it never ends', async () => {
    const { voice, diary } = speaking();
    const radio = setInterval(() => voice.hold(), 300);
    voice.hold();
    voice.say(request('a', 'Seven done.'));
    await vi.advanceTimersByTimeAsync(2 * LONGEST_HOLD_MS);
    clearInterval(radio);
    expect(diary.lines()).toContain('finished a');
  });

  test('and an urgent warning does not wait for it', async () => {
    const { voice, diary } = speaking();
    voice.hold();
    voice.say(request('a', 'Seven done.'));
    voice.say(request('u', 'Stand clear.', 'urgent'));
    await vi.advanceTimersByTimeAsync(10);
    expect(diary.at('started u')).toEqual([0]);
  });
});

describe('interruption', () => {
  test('hush cuts what is said, forgets what waits, and is quiet at once', async () => {
    const { voice, diary, said } = speaking();
    voice.say(request('a', 'Seven done.'));
    voice.say(request('b', 'Eight.'));
    await vi.advanceTimersByTimeAsync(300);
    voice.hush();
    await vi.advanceTimersByTimeAsync(0);
    expect(diary.lines().slice(-4)).toEqual(['cut a', 'cut b', 'sound-off', 'quiet']);
    await vi.runAllTimersAsync();
    expect(said).toEqual(['Seven done.']);
  });

  test('hush while a reply is being rendered leaves nothing to be heard later', async () => {
    const { voice, diary, said } = speaking();
    voice.say(request('a', 'Seven done.'));
    voice.hush();
    await vi.runAllTimersAsync();
    expect(said).toEqual([]);
    expect(diary.lines()).toEqual(['cut a', 'quiet']);
  });

  test('hush in a gap ends the reply', async () => {
    const { voice, diary, said } = speaking();
    voice.say(request('a', LONG));
    while (diary.at('sound-off').length === 0) await vi.advanceTimersByTimeAsync(10);
    voice.hush();
    await vi.runAllTimersAsync();
    expect(said).toHaveLength(1);
    expect(diary.lines().at(-1)).toBe('quiet');
  });

  test('urgent speech cuts in and what waited comes after it', async () => {
    const { voice, diary } = speaking();
    voice.say(request('a', 'Seven done.'));
    voice.say(request('b', 'Eight.'));
    await vi.advanceTimersByTimeAsync(300);
    voice.say(request('u', 'Stand clear.', 'urgent'));
    await vi.runAllTimersAsync();
    const ids = diary.lines().filter((line) => / [abu]$/.test(line));
    expect(ids).toEqual(['started a', 'cut a', 'started u', 'finished u', 'started b', 'finished b']);
  });

  test('a listener may answer an event with more speech or with silence', async () => {
    const { voice, diary } = speaking();
    voice.on((event) => {
      if (event.type === 'finished' && event.id === 'a') voice.say(request('b', 'Eight.'));
      if (event.type === 'started' && event.id === 'b') voice.hush();
    });
    voice.say(request('a', 'Seven done.'));
    await vi.runAllTimersAsync();
    expect(diary.lines().filter((line) => / [ab]$/.test(line))).toEqual([
      'started a',
      'finished a',
      'started b',
      'cut b',
    ]);
    expect(diary.at('sound-on').length).toBe(diary.at('sound-off').length);
  });
});

describe('earcons', () => {
  test('do not hold up the answer they announce, however much was said before the last quiet', async () => {
    const { voice, diary } = speaking();
    voice.say(request('a', 'Heater hose, left side, is still off.'));
    await vi.runAllTimersAsync();
    await vi.advanceTimersByTimeAsync(2000);
    const asked = Date.now();
    voice.play('heard');
    voice.say(request('b', 'Heater hose, left side, is still off.'));
    await vi.runAllTimersAsync();
    expect(diary.at('started b').map((at) => at - asked)).toEqual([0]);
  });

  test('close the ear while they sound', async () => {
    const { voice, diary } = speaking();
    voice.play('heard');
    await vi.runAllTimersAsync();
    expect(diary.lines()).toEqual(['sound-on', 'sound-off', 'quiet']);
  });

  test('over speech they open nothing: the ear stays closed until both are over', async () => {
    const { voice, diary } = speaking();
    voice.say(request('a', 'Seven done.'));
    await vi.advanceTimersByTimeAsync(300);
    voice.play('timer-up');
    await vi.runAllTimersAsync();
    expect([diary.at('sound-on').length, diary.at('sound-off').length]).toEqual([1, 1]);
  });

  test('the ear opens only after the sound has left the speaker', async () => {
    const { voice, diary } = speaking({ tailMs: () => 180 });
    voice.say(request('a', 'Seven done.'));
    await vi.runAllTimersAsync();
    expect((diary.at('sound-off')[0] ?? 0) - (diary.at('finished a')[0] ?? 0)).toBe(180);
  });
});

test('the silent voice keeps every turn and takes no time', async () => {
  const said: string[] = [];
  const voice = silentVoice(clock, { pace: 'none', said: (text) => said.push(text) });
  const diary = diaryOf(voice);
  voice.say(request('a', LONG));
  voice.say(request('b', 'Eight.'));
  await vi.runAllTimersAsync();
  expect(said.join(' ')).toBe(`${LONG} Eight.`);
  expect(diary.at('quiet')[0]).toBeLessThan(20);
  voice.close();
});
