import { fliteForNode } from '../../src/cli/flite-host';
import type { Flite } from '../../src/voice/flite/flite';
import { decodeWav, encodeWav, type Sound } from '../../src/voice/flite/wav';

/** Voices recorded from people, never the app's own. */
export type TestSpeaker = 'rms' | 'awb' | 'kal16';

let flite: Promise<Flite> | undefined;

/** A sentence spoken by a test speaker: 16 kHz mono. */
export async function spoken(text: string, speaker: TestSpeaker = 'rms', rate = 1): Promise<Sound> {
  flite ??= fliteForNode();
  const rendered = (await flite).render({ text, speaker, rate });
  if (!rendered.ok) throw new Error(`${text}: ${rendered.error.code}`);
  const sound = decodeWav(rendered.value.wav);
  if (!sound.ok) throw new Error(`${text}: ${sound.error.code}`);
  return sound.value;
}

/** Faint noise of a real room, repeatable: digital silence is nothing a microphone ever gives. */
export function room(seconds: number, rateHz: number, amplitude = 0.001): Float32Array<ArrayBuffer> {
  let seed = 7;
  return Float32Array.from({ length: Math.round(seconds * rateHz) }, () => {
    seed = (seed * 48_271) % 2_147_483_647;
    return amplitude * (seed / 1_073_741_823.5 - 1);
  });
}

/** Sounds one after the other with room noise between and under them. */
export function inRoom(parts: readonly (Sound | number)[], rateHz: number): Uint8Array {
  const pieces = parts.map((p) => (typeof p === 'number' ? new Float32Array(Math.round(p * rateHz)) : p.samples));
  const length = pieces.reduce((n, p) => n + p.length, 0);
  const all = room(length / rateHz, rateHz);
  let at = 0;
  for (const piece of pieces) {
    for (let i = 0; i < piece.length; i++) all[at + i] = (all[at + i] ?? 0) + (piece[i] ?? 0);
    at += piece.length;
  }
  return encodeWav({ samples: all, rateHz });
}
