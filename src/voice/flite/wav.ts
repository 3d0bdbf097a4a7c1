import { fail, ok, type Result } from '../../core/result';

/** Mono sound as samples from -1 to 1. */
export type Sound = { readonly samples: Float32Array<ArrayBuffer>; readonly rateHz: number };

export type WavFault = { readonly code: 'not-a-wav' | 'not-mono-16-bit'; readonly detail: string };

type Layout = { readonly rateHz: number; readonly dataStart: number; readonly dataBytes: number };

/** The length of a mono 16-bit WAV in milliseconds, without decoding it. */
export function wavMs(wav: Uint8Array): Result<number, WavFault> {
  const layout = layoutOf(wav);
  return layout.ok ? ok((layout.value.dataBytes / 2 / layout.value.rateHz) * 1000) : layout;
}

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
