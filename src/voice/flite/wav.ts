import { fail, ok, type Result } from '../../core/result';

/** Mono sound as samples from -1 to 1. */
export type Sound = { readonly samples: Float32Array<ArrayBuffer>; readonly rateHz: number };

export type WavFault = { readonly code: 'not-a-wav' | 'not-mono-16-bit'; readonly detail: string };

type Layout = { readonly rateHz: number; readonly dataStart: number; readonly dataBytes: number };

export const soundMs = ({ samples, rateHz }: Sound): number => (samples.length / rateHz) * 1000;

/** Decodes a mono 16-bit PCM WAV (RIFF, Microsoft and IBM 1991). */
export function decodeWav(wav: Uint8Array): Result<Sound, WavFault> {
  const layout = layoutOf(wav);
  if (!layout.ok) return layout;
  const { rateHz, dataStart, dataBytes } = layout.value;
  const view = new DataView(wav.buffer, wav.byteOffset + dataStart, dataBytes);
  const samples = new Float32Array(dataBytes >> 1);
  for (let i = 0; i < samples.length; i++) samples[i] = view.getInt16(2 * i, true) / 32768;
  return ok({ samples, rateHz });
}

/** Encodes sound as a mono 16-bit PCM WAV; samples beyond -1 to 1 are clipped. */
export function encodeWav({ samples, rateHz }: Sound): Uint8Array<ArrayBuffer> {
  const wav = new Uint8Array(HEADER_BYTES + 2 * samples.length);
  const view = new DataView(wav.buffer);
  new TextEncoder().encodeInto('RIFF    WAVEfmt ', wav);
  view.setUint32(4, wav.length - 8, true);
  view.setUint32(16, 16, true); // bytes of format that follow
  view.setUint16(20, 1, true); // plain PCM
  view.setUint16(22, 1, true); // one channel
  view.setUint32(24, rateHz, true);
  view.setUint32(28, 2 * rateHz, true); // bytes a second
  view.setUint16(32, 2, true); // bytes a sample
  view.setUint16(34, 16, true); // bits a sample
  new TextEncoder().encodeInto('data', wav.subarray(36));
  view.setUint32(40, 2 * samples.length, true);
  samples.forEach((sample, i) => {
    view.setInt16(HEADER_BYTES + 2 * i, Math.round(32767 * Math.max(-1, Math.min(1, sample))), true);
  });
  return wav;
}

const HEADER_BYTES = 44;

function layoutOf(wav: Uint8Array): Result<Layout, WavFault> {
  if (wav.length < 12) return fail({ code: 'not-a-wav', detail: `${wav.length} bytes` });
  const view = new DataView(wav.buffer, wav.byteOffset, wav.byteLength);
  if (tag(view, 0) !== 'RIFF' || tag(view, 8) !== 'WAVE') return fail({ code: 'not-a-wav', detail: 'no RIFF header' });

  let rateHz = 0;
  for (let at = 12; at + 8 <= wav.length; ) {
    const size = view.getUint32(at + 4, true);
    const body = at + 8;
    if (tag(view, at) === 'fmt ' && body + 16 <= wav.length) {
      const [encoding, channels, bits] = [body, body + 2, body + 14].map((offset) => view.getUint16(offset, true));
      if (encoding !== 1 || channels !== 1 || bits !== 16) {
        return fail({ code: 'not-mono-16-bit', detail: `encoding ${encoding}, ${channels} channels, ${bits} bits` });
      }
      rateHz = view.getUint32(body + 4, true);
    }
    if (tag(view, at) === 'data' && rateHz > 0) {
      // A file cut short is read as far as it goes.
      return ok({ rateHz, dataStart: body, dataBytes: Math.min(size, wav.length - body) & ~1 });
    }
    at = body + size + (size & 1);
  }
  return fail({ code: 'not-a-wav', detail: 'no sound in it' });
}

const tag = (view: DataView, at: number): string =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));
