/** Samples of a 16-bit mono WAV file, -1..1. The header's chunks are walked, since writers put others before the data. */
export function samplesOf(wav: Uint8Array): Float32Array {
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  let at = 12;
  while (view.getUint32(at, false) !== 0x64617461) at += 8 + view.getUint32(at + 4, true);
  const bytes = Math.min(view.getUint32(at + 4, true), wav.byteLength - at - 8);
  return Float32Array.from({ length: bytes >> 1 }, (_, n) => view.getInt16(at + 8 + 2 * n, true) / 32_768);
}

export function joined(...parts: readonly Float32Array[]): Float32Array {
  const whole = new Float32Array(parts.reduce((length, part) => length + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

/** Repeatable white noise at 16 kHz; the default height is a quiet room. */
export function noise(seconds: number, height = 0.002, seed = 1): Float32Array {
  let state = seed;
  return Float32Array.from({ length: Math.round(seconds * 16_000) }, () => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return height * (state / 0x3fffffff - 1);
  });
}
