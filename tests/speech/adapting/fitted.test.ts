import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { earForNode } from '../../../src/cli/ear-host';
import { fliteForNode } from '../../../src/cli/flite-host';
import { readTongue } from '../../../src/cli/tongue-files';
import { isTransform } from '../../../src/core/voice-profile/read-profile';
import { type Lesson, type LineHeard, wordsOfLine } from '../../../src/core/voice-profile/reading-aloud';
import { LINES_TO_READ } from '../../../src/shell/setup/setup-desk';
import type { Ear } from '../../../src/speech/ear/ear';
import { earLanguage } from '../../../src/speech/ear/ear-language';
import { Resampler } from '../../../src/speech/ear/resampler';
import type { Flite } from '../../../src/voice/flite/flite';
import { listed } from '../listed';
import { noise, samplesOf } from '../sound';

/** A recorded voice, and how much smaller its owner is made: the model fits nobody of that size. */
const SPEAKER = 'slt';
const SMALLER = 1.1;

const texts: Readonly<Record<string, string>> = parse(readFileSync('grammars/en/screen.yaml', 'utf8'));
const LINES = LINES_TO_READ.map((key) => texts[key] ?? '');

/** Nothing that was read aloud. */
const COMMANDS = [
  'bolt seven done',
  'next step',
  'say again',
  'what torque now',
  'skip this step',
  'bolt four replaced',
];
const BENCH = listed('r1', Object.fromEntries(COMMANDS.map((words) => [words, 'progress' as const])));

const language = earLanguage(readTongue('en'));
let flite: Flite;
let ear: Ear;
let heard: LineHeard[];

const said = (text: string, gain = 0.5): Float32Array => {
  const rendered = flite.render({ text, speaker: SPEAKER, rate: 1 });
  if (!rendered.ok) throw new Error(rendered.error.detail);
  const smaller = new Resampler(16_000 * SMALLER, 16_000).push(samplesOf(rendered.value.wav));
  return smaller.map((sample) => Math.max(-1, Math.min(1, gain * sample)));
};

function play(into: Ear, sound: Float32Array, room = 0.002): string[] {
  const under = noise(sound.length / 16_000 + 3, room);
  const stream = under.map((sample, n) => sample + (sound[n - 24_000] ?? 0));
  const words: string[] = [];
  for (let at = 0; at < stream.length; at += 480)
    for (const event of into.push(stream.subarray(at, at + 480))) if (event.type === 'heard') words.push(event.words);
  return words;
}

beforeAll(async () => {
  flite = await fliteForNode();
  ear = await earForNode(language);
}, 60_000);

async function read(text: string, sound: Float32Array, room?: number): Promise<LineHeard | undefined> {
  heard = [];
  await ear.listen(16_000);
  expect(await ear.read(wordsOfLine(text), (line) => heard.push(line))).toEqual({ ok: true, value: undefined });
  play(ear, sound, room);
  return heard.at(-1);
}

describe('a line read aloud', () => {
  const [line = ''] = LINES;

  test.each([
    { what: 'as it stands', verdict: 'good', sound: () => said(line) },
    { what: 'as another', verdict: 'unlike', sound: () => said(LINES[1] ?? '') },
    { what: 'in part', verdict: 'unlike', sound: () => said(line.split(' ').slice(0, 4).join(' ')) },
    { what: 'into the microphone', verdict: 'too-loud', sound: () => said(line, 20) },
    { what: 'beside a machine', verdict: 'too-noisy', sound: () => said(line, 0.2), room: 0.05 },
  ])(
    '$what is $verdict',
    async ({ verdict, sound, room }) => {
      expect(await read(line, sound(), room)).toMatchObject({ verdict });
    },
    60_000,
  );

  test('that never comes is no line, and no command is heard meanwhile', async () => {
    ear.arm(BENCH);
    expect(await read(line, new Float32Array(48_000))).toBeUndefined();
    ear.endReading();
  });

  test('with a word that nobody can pronounce is refused by name', async () => {
    expect(await ear.read(['zzyzx'], () => undefined)).toMatchObject({
      ok: false,
      error: expect.stringContaining('zzyzx'),
    });
  });
});

describe('an ear that was read to', () => {
  let lesson: Lesson | null;

  beforeAll(async () => {
    ear.endReading();
    for (const text of LINES) await read(text, said(text));
    lesson = ear.learn();
    ear.endReading();
  }, 120_000);

  test('knows a voice it does not fit, and by how much it was louder than the room', () => {
    if (!lesson?.means) throw new Error('nothing was learned');
    expect(isTransform(lesson.means)).toBe(true);
    expect(lesson.voiceDb - lesson.noiseDb).toBeGreaterThan(20);
    expect(lesson.model.folder).toBe('en-us');
  });

  test('hears commands again, and one that is fitted hears no fewer of them, nor any other', async () => {
    const fitted = await earForNode(language, undefined, undefined, lesson);
    expect(fitted.isAided).toBe(true);
    const rights: number[] = [];
    for (const one of [ear, fitted]) {
      await one.listen(16_000);
      one.arm(BENCH);
      const answers = COMMANDS.map((words) => play(one, said(words), 0.02));
      expect(answers.flat().filter((words) => !COMMANDS.includes(words))).toEqual([]);
      rights.push(answers.filter(([first], n) => first === COMMANDS[n]).length);
    }
    const [plain = 0, aided = 0] = rights;
    expect(aided).toBeGreaterThanOrEqual(plain);
    expect(plain).toBeGreaterThan(0);
  }, 120_000);

  test('and is given a profile of another model listens as it is', async () => {
    if (!lesson) throw new Error('nothing was learned');
    for (const model of [
      { folder: 'fr-fr', checksum: lesson.model.checksum },
      { folder: 'en-us', checksum: 7 },
    ]) {
      const strange = await earForNode(language, undefined, undefined, { ...lesson, model });
      expect(strange.isAided).toBe(false);
    }
  }, 60_000);
});
