import type { Lesson } from '../../core/voice-profile/reading-aloud';
import type { Ear } from '../../speech/ear/ear';
import { inNoise, seeded } from './mixing';

/** A line, and how it sounds when it is read. */
export type LineSound = { readonly words: readonly string[]; readonly sound: Float32Array };

const BLOCK = 480;

/** Reads some lines to an ear, as Setup has them read, and answers what it learned; null where too few were good. */
export async function readTo(ear: Ear, lines: readonly LineSound[]): Promise<Lesson | null> {
  await ear.listen(16_000);
  for (const { words, sound } of lines) {
    const asked = await ear.read(words, () => undefined);
    if (!asked.ok) throw new Error(asked.error);
    // The end of a line is a second of quiet.
    const read = Float32Array.from({ length: sound.length + 8_000 }, (_, n) => sound[n] ?? 0);
    const stream = inNoise(read, new Float32Array(1), null, seeded(3));
    for (let at = 0; at < stream.length; at += BLOCK) ear.push(stream.subarray(at, at + BLOCK));
  }
  const lesson = ear.learn();
  ear.endReading();
  return lesson;
}

/** Lone words joined to lines of so many, with pauses that end no line. */
export function inLines(words: readonly LineSound[], each: number): readonly LineSound[] {
  const lines = Array.from({ length: Math.floor(words.length / each) }, (_, n) =>
    words.slice(n * each, (n + 1) * each),
  );
  return lines.map((line) => ({
    words: line.flatMap((one) => one.words),
    sound: Float32Array.from(line.flatMap(({ sound }) => [...sound, ...new Float32Array(3_200)])),
  }));
}
