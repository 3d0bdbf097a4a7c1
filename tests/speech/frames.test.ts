import { describe, expect, test } from 'vitest';
import { EAR_FRAME, type EarFrame } from '../../src/speech/ear/front-end';
import { type Level, LevelMeter } from '../../src/speech/ear/level-meter';
import { SampleQueue } from '../../src/speech/ear/sample-queue';
import { sanitise } from '../../src/speech/ear/sanitise';
import { SpeechGate } from '../../src/speech/ear/speech-gate';
import { Utterance } from '../../src/speech/ear/utterance';

test('samples that would poison the decoder are made harmless, the others are left alone', () => {
  const samples = Float32Array.of(0.25, Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 3, -0.5);
  expect([...sanitise(samples)]).toEqual([0.25, 0, 0, 0, 1, -0.5]);
});

test('a queue gives whole blocks in order and keeps the rest', () => {
  const queue = new SampleQueue();
  queue.push(Float32Array.of(1, 2));
  expect(queue.take(3)).toBeNull();
  queue.push(Float32Array.of(3, 4));
  expect([...(queue.take(3) ?? [])]).toEqual([1, 2, 3]);
  expect(queue.length).toBe(1);
});

describe('the level meter', () => {
  const frame = (height: number): Float32Array =>
    Float32Array.from({ length: 160 }, (_, n) => height * Math.sin((2 * Math.PI * n) / 16));

  test('reads a full-scale sine as -3 dB and clipped (AES17 without its 3 dB offset)', () => {
    const level = new LevelMeter().push(frame(1));
    expect(level.db).toBeCloseTo(-3.01, 1);
    expect(level.clipped).toBe(true);
  });

  test('the floor is the room, not the words in it', () => {
    const meter = new LevelMeter();
    for (let n = 0; n < 100; n += 1) meter.push(frame(0.001));
    let level: Level = meter.push(frame(0.3));
    for (let n = 0; n < 50; n += 1) level = meter.push(frame(0.3));
    expect(level.db - level.floorDb).toBeGreaterThan(40);
  });

  test('a louder room becomes the floor within a few seconds', () => {
    const meter = new LevelMeter();
    for (let n = 0; n < 100; n += 1) meter.push(frame(0.001));
    let level: Level = meter.push(frame(0.1));
    for (let n = 0; n < 400; n += 1) level = meter.push(frame(0.1));
    expect(level.floorDb).toBeCloseTo(level.db, 0);
  });

  test('digital silence has a finite level', () => {
    expect(new LevelMeter().push(new Float32Array(160)).db).toBe(-100);
  });
});

describe('the speech gate', () => {
  const gate = (): SpeechGate =>
    new SpeechGate({
      voiceAtLeast: 0.5,
      aboveFloorDb: 3,
      mostRemovedDb: 9,
      startFrames: 3,
      windowFrames: 5,
      quietFrames: 4,
      rangeDb: 25,
      rise: 6,
      fall: 0.02,
    });
  const loud: Level = { db: -20, floorDb: -60, clipped: false };
  const at = (voice: number, loudness = -20, removedDb = 0) => ({ voice, loudness, removedDb });

  test('opens on enough voiced frames and closes after the pause it is given', () => {
    const g = gate();
    expect([0.9, 0.9, 0.9, 0.9].map((voice) => g.push(at(voice), loud, 4))).toEqual([
      'quiet',
      'quiet',
      'opened',
      'speaking',
    ]);
    expect([0, 0, 0, 0].map((voice) => g.push(at(voice), loud, 4))).toEqual([
      'speaking',
      'speaking',
      'speaking',
      'closed',
    ]);
  });

  test('a voice no louder than the room opens nothing', () => {
    const g = gate();
    const level: Level = { db: -58, floorDb: -60, clipped: false };
    expect(Array.from({ length: 50 }, () => g.push(at(1), level, 4))).not.toContain('opened');
  });

  test('a voice that the denoiser took most of opens nothing', () => {
    const g = gate();
    expect(Array.from({ length: 50 }, () => g.push(at(1, -20, 12), loud, 4))).not.toContain('opened');
    expect([1, 1, 1].map((voice) => g.push(at(voice), loud, 4))).toContain('opened');
  });

  test('a click opens nothing', () => {
    const g = gate();
    expect([1, 1, 0, 0, 0, 1, 0].map((voice) => g.push(at(voice), loud, 4))).not.toContain('opened');
  });

  test('a speaker to be ignored is waited out, but not for ever', () => {
    const g = gate();
    g.ignoreSpeaker(30);
    expect([1, 1, 1, 1, 1, 0, 0, 0, 0].map((voice) => g.push(at(voice), loud, 4))).not.toContain('opened');
    expect([1, 1, 1].map((voice) => g.push(at(voice), loud, 4))).toContain('opened');
    g.ignoreSpeaker(30);
    expect(Array.from({ length: 30 }, () => g.push(at(1), loud, 4))).not.toContain('opened');
    expect([1, 1, 1].map((voice) => g.push(at(voice), loud, 4))).toContain('opened');
  });

  test('what is far quieter than the speaker does not hold it open, however much a voice', () => {
    const g = gate();
    for (let n = 0; n < 20; n += 1) g.push(at(1), loud, 4);
    expect([1, 1, 1, 1].map((voice) => g.push(at(voice, -46), loud, 4))).toContain('closed');
    for (let n = 0; n < 20; n += 1) g.push(at(1), loud, 4);
    expect(Array.from({ length: 40 }, () => g.push(at(1, -44), loud, 4))).not.toContain('closed');
  });

  test('one knock does not make the speaker quiet', () => {
    const g = gate();
    for (let n = 0; n < 20; n += 1) g.push(at(1, -40), loud, 4);
    g.push(at(1, 0), loud, 4);
    expect(Array.from({ length: 40 }, () => g.push(at(1, -40), loud, 4))).not.toContain('closed');
  });

  test('the pause may be lengthened while it lasts', () => {
    const g = gate();
    for (let n = 0; n < 3; n += 1) g.push(at(1), loud, 4);
    expect(Array.from({ length: 8 }, () => g.push(at(0), loud, 9))).not.toContain('closed');
    expect(g.push(at(0), loud, 9)).toBe('closed');
  });
});

describe('an utterance', () => {
  const frame = (voice: number, loudness: number, mark: number, removedDb = 0): EarFrame => ({
    raw: new Float32Array(EAR_FRAME),
    clean: new Float32Array(EAR_FRAME).fill(mark),
    voice,
    loudness,
    removedDb,
  });
  const level: Level = { db: -20, floorDb: -60, clipped: false };
  const trim = { lead: 3, tail: 2, rangeDb: 20, mostRemovedDb: 9 };

  /** Taps that pass for a voice, quiet, words, quiet, and taps again. */
  const noisy = (): Utterance => {
    const utterance = new Utterance(100, trim);
    const parts: [number, number, number][] = [
      [10, 0.9, -60],
      [10, 0, -80],
      [20, 1, -25],
      [10, 0, -80],
      [10, 0.8, -58],
    ];
    let at = 0;
    for (const [frames, voice, loudness] of parts)
      for (let n = 0; n < frames; n += 1) {
        const heard = frame(voice, loudness, at);
        utterance.push(heard, heard.clean, level);
        at += 1;
      }
    return utterance;
  };

  test('is trimmed to the speaker, with a little quiet on both sides', () => {
    const sound = noisy().trimmed();
    expect([sound.length / EAR_FRAME, sound[0], sound.at(-1)]).toEqual([25, 17, 41]);
  });

  test('counts as voiced only what is as loud as the speaker', () => {
    const utterance = noisy();
    expect([utterance.voicedFrames, utterance.voice]).toEqual([20, 1]);
    expect(utterance.voiceIn(3, 20)).toEqual({ mean: 1, voicedFrames: 20 });
    expect(utterance.voiceIn(0, 3)).toEqual({ mean: 0, voicedFrames: 0 });
  });

  const removed = (...all: readonly number[]): Utterance => {
    const utterance = new Utterance(0, trim);
    for (const removedDb of all) {
      const heard = frame(1, -30, 0, removedDb);
      utterance.push(heard, heard.clean, level);
    }
    return utterance;
  };

  test('does not count as voiced what the denoiser took most of', () => {
    expect(removed(2, 2, 12).voicedFrames).toBe(2);
  });

  test('tells how much the denoiser took of the voice and what lies close around it', () => {
    expect(removed(2, 2, 2).removedDb).toBeCloseTo(2, 9);
    // Two frames of equal loudness as cleaned: (1 + 10) / (1 + 1) of the power came in.
    expect(removed(0, 10).removedDb).toBeCloseTo(10 * Math.log10(5.5), 9);
    expect(removed(12, 12).removedDb).toBe(Number.POSITIVE_INFINITY);
  });
});
