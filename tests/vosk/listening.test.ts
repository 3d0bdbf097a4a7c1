import { describe, expect, test } from 'vitest';
import { LIMITS } from '../../src/speech/vosk/frame/listening-limits';
import { atWork, RATE_HZ, Rig } from './fake-engine';

describe('what is heard', () => {
  test('reaches the library in chunks of 100 to 200 ms at the rate of the microphone', () => {
    const rig = atWork();
    rig.hear(3);
    const { fed = 0, sampleRate } = rig.latest ?? {};
    expect(sampleRate).toBe(RATE_HZ);
    // Half a second of the four is thrown away.
    expect(3.5 / fed).toBeGreaterThan(0.1);
    expect(3.5 / fed).toBeLessThan(0.2);
  });

  test('is told with its place in the captured stream, as samples since the microphone opened', () => {
    const rig = atWork();
    rig.hear(1);
    rig.latest?.result('stop', 0.2);
    const [{ startFrame, endFrame } = { startFrame: 0, endFrame: 0 }] = rig.of('said');
    // The recogniser's own time begins after the half second that is thrown away.
    expect(startFrame / RATE_HZ).toBeCloseTo(0.5 + 0.2, 1);
    expect((endFrame - startFrame) / RATE_HZ).toBeCloseTo(1 / 3, 2);
  });

  test('never ends later than the stream does', () => {
    const rig = atWork();
    rig.latest?.result('stop', 500);
    const [said] = rig.of('said');
    expect(said?.startFrame).toBeLessThanOrEqual(RATE_HZ);
    expect(said?.endFrame).toBe(said?.startFrame);
  });

  test('is nothing where a result has no words, as after silence', () => {
    const rig = atWork();
    rig.latest?.result('');
    expect(rig.of('said')).toEqual([]);
  });

  test('shows as partial words once each, and other speech does not', () => {
    const rig = atWork();
    for (const words of ['[unk]', '[unk] bolt', '[unk] bolt', 'bolt seven']) rig.latest?.partial(words);
    expect(rig.of('partial').map(({ words }) => words)).toEqual(['bolt', 'bolt seven']);
  });

  test('is marked torn where it began as the ear opened', () => {
    const rig = atWork();
    rig.latest?.result('done', 0.05);
    rig.latest?.result('done', 2);
    expect(rig.of('said').map(({ said }) => said.torn)).toEqual([true, false]);
  });
});

describe('a new grammar', () => {
  test('takes effect at once in a pause, in a new recogniser, and the old one is removed', () => {
    const rig = atWork();
    rig.arm('two');
    rig.hear(0.3);
    expect(rig.of('armed').map(({ revision }) => revision)).toEqual(['one', 'two']);
    expect(rig.sessions.map(({ removed }) => removed)).toEqual([true, false]);
    expect(rig.latest?.phrases).toEqual(['two', '[unk]']);
  });

  test('waits for the end of an utterance, whose answer carries the old revision', () => {
    const rig = atWork();
    rig.latest?.partial('bolt');
    rig.arm('two');
    rig.arm('three');
    expect(rig.of('armed')).toHaveLength(1);
    rig.latest?.result('bolt seven done');
    expect(rig.of('said')).toMatchObject([{ revision: 'one' }]);
    expect(rig.of('armed').map(({ revision }) => revision)).toEqual(['one', 'three']);
  });

  test('is not held up for ever by somebody who goes on talking, and the rest of that talk is marked torn', () => {
    const rig = atWork();
    rig.saying = '[unk]';
    rig.hear(LIMITS.longest + 1);
    rig.arm('two');
    const [first] = rig.sessions;
    expect(first?.finished).toBe(1);
    first?.result('[unk] done');
    expect(rig.of('armed').map(({ revision }) => revision)).toEqual(['one', 'two']);
    rig.saying = '';
    rig.hear(1);
    rig.latest?.result('done', 0.5);
    expect(rig.of('said').map(({ said }) => said.torn)).toEqual([true, true]);
  });

  test('of the same revision is the same grammar, and the recogniser stays', () => {
    const rig = atWork();
    rig.arm('one');
    rig.hear(0.3);
    expect(rig.of('armed')).toHaveLength(2);
    expect(rig.sessions).toHaveLength(1);
  });

  test('that the library refuses is said so once, and the next is tried', () => {
    const rig = atWork();
    rig.latest?.answer({ kind: 'error', detail: 'no' });
    rig.hear(2);
    expect(rig.of('failed')).toEqual([{ type: 'failed', code: 'grammar-refused', detail: 'no' }]);
    expect(rig.sessions).toHaveLength(1);
    rig.arm('two');
    rig.hear(0.3);
    expect(rig.latest?.phrases).toEqual(['two', '[unk]']);
  });
});

describe('while our own voice speaks', () => {
  test('nothing reaches the library, what had begun is dropped, and a short tail after is not heard either', () => {
    const rig = atWork();
    const [first] = rig.sessions;
    first?.partial('bolt seven');
    rig.listening.mute();
    expect(first?.removed).toBe(true);
    first?.result('bolt seven done');
    rig.hear(3);
    rig.listening.unmute();
    rig.hear(LIMITS.afterMute);
    expect(rig.of('said')).toEqual([]);
    expect(rig.sessions).toHaveLength(1);
    rig.hear(0.3);
    expect(rig.sessions).toHaveLength(2);
  });

  test('a new grammar is armed all the same', () => {
    const rig = atWork();
    rig.latest?.partial('bolt');
    rig.arm('two');
    rig.listening.mute();
    expect(rig.of('armed').map(({ revision }) => revision)).toEqual(['one', 'two']);
  });

  test('the level is still shown', () => {
    const rig = atWork();
    const before = rig.of('level').length;
    rig.listening.mute();
    rig.hear(1);
    expect(rig.of('level').length - before).toBe(10);
  });
});

describe('over a long time', () => {
  test('a recogniser is replaced after some minutes, in a pause, and nothing is announced', () => {
    const rig = atWork();
    rig.hear(LIMITS.oldAge + 1);
    expect(rig.sessions.map(({ removed }) => removed)).toEqual([true, false]);
    expect(rig.of('armed')).toHaveLength(1);
  });

  test('and the next hears the end of that pause first: a word that begins as it does is whole, and in its place', () => {
    const rig = atWork();
    while (rig.sessions.length < 2) rig.hear(0.03);
    const [old, next] = rig.sessions;
    expect([old?.removed, next?.fed]).toEqual([true, 1 + Math.ceil(LIMITS.fresh / LIMITS.chunk)]);
    const now = rig.heardSeconds;
    next?.result('done', LIMITS.fresh + 0.05);
    expect(rig.of('said')[0]?.said.torn).toBe(false);
    expect((rig.of('said')[0]?.startFrame ?? 0) / RATE_HZ).toBeCloseTo(now - LIMITS.chunk + 0.05, 1);
  });

  test('but not while somebody may have begun to speak, unless it is never quiet', () => {
    const rig = atWork();
    const soundsOnAndOff = (times: number): void => {
      for (let n = 0; n < times; n += 1) {
        rig.amplitude = 0.1;
        rig.hear(0.3);
        rig.amplitude = 0.01;
        rig.hear(0.3);
      }
    };
    rig.hear(LIMITS.oldAge - 1);
    soundsOnAndOff(200);
    expect(rig.sessions).toHaveLength(1);
    rig.hear(1);
    expect(rig.sessions).toHaveLength(2);
    soundsOnAndOff(700);
    expect(rig.sessions).toHaveLength(3);
  });

  test('but not while somebody speaks', () => {
    const rig = atWork();
    rig.hear(LIMITS.oldAge - 3);
    rig.saying = 'bolt';
    rig.hear(5);
    expect(rig.sessions).toHaveLength(1);
  });

  test('a library that falls behind is given a rest, and what it missed part of is marked torn', () => {
    const rig = atWork();
    const [session] = rig.sessions;
    rig.hear(60, false);
    expect(session?.fed).toBeLessThan(LIMITS.choked + 10);
    session?.result('done', 3);
    expect(rig.of('said')).toMatchObject([{ said: { torn: true } }]);
    for (let n = 0; n < LIMITS.choked; n += 1) session?.partial();
    rig.hear(1);
    expect(rig.sessions.map(({ removed }) => removed)).toEqual([true, false]);
  });

  test('a ping is answered at once, but by a library that is far behind only when it has caught up', () => {
    const rig = atWork();
    rig.listening.ping(1);
    rig.hear(LIMITS.slow * 0.2, false);
    rig.listening.ping(2);
    expect(rig.of('pong').map(({ id }) => id)).toEqual([1]);
    for (let n = 0; n < LIMITS.slow; n += 1) rig.latest?.partial();
    expect(rig.of('pong').map(({ id }) => id)).toEqual([1, 2]);
  });
});

test('nothing is heard before a microphone is open, and nothing poisons it', () => {
  const rig = new Rig();
  rig.arm('one');
  rig.hear(2);
  expect(rig.sessions).toEqual([]);
  rig.listening.listen(RATE_HZ);
  rig.listening.push(Float32Array.of(Number.NaN, Number.POSITIVE_INFINITY));
  rig.hear(1);
  expect(rig.of('level').every(({ db }) => Number.isFinite(db))).toBe(true);
});
