import type { ModelFile } from './adapting/acoustics';
import type { Engine, EngineDecoder } from './engine';

export type AdaptedMeans = { readonly means: Uint8Array; readonly file: ModelFile };

/** The model's means are loaded from these bytes, and its other figures from their files, when the decoder is initialised. */
export function useMeans(engine: Engine, decoder: EngineDecoder, { means, file }: AdaptedMeans): void {
  decoder.load_gmm = async () => {
    const [variances, weights] = await Promise.all([file('variances'), file('sendump')]);
    const held = (bytes: Uint8Array): number => {
      // The engine wants a zero behind the last byte, and keeps the memory.
      const at = engine._malloc(bytes.length + 1);
      engine.HEAPU8.set(bytes, at);
      engine.HEAPU8[at + bytes.length] = 0;
      return engine._s3file_init(at, bytes.length);
    };
    if (engine._load_gmm(decoder.cdecoder, held(means), held(variances), 0, held(weights)) < 0)
      throw new Error('the engine refused the adapted means');
  };
}
