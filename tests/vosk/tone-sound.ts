import type { Sound } from '../../src/voice/flite/wav';
import { toneHz, tonesOf } from './tone-words';

const TONE_SECONDS = 0.15;
const AMPLITUDE = 0.3;

/** Words of the tone model one after the other, a short breath between them and silence round them. */
export function toneSpeech(text: string, rateHz: number, quietBefore = 0.3, quietAfter = 1.5): Sound {
  const parts = text
    .split(' ')
    .flatMap((word) => [...tonesOf(word).map((tone) => sine(toneHz(tone), rateHz)), silence(0.05, rateHz)]);
  return { rateHz, samples: joined([silence(quietBefore, rateHz), ...parts, silence(quietAfter, rateHz)]) };
}

const silence = (seconds: number, rateHz: number): Float32Array => new Float32Array(Math.round(seconds * rateHz));

function sine(hz: number, rateHz: number): Float32Array {
  const count = Math.round(TONE_SECONDS * rateHz);
  return Float32Array.from({ length: count }, (_, n) => AMPLITUDE * Math.sin((2 * Math.PI * hz * n) / rateHz));
}

function joined(parts: readonly Float32Array[]): Float32Array<ArrayBuffer> {
  const all = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}
