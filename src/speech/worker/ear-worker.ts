import rnnoise from '@jitsi/rnnoise-wasm/dist/rnnoise.wasm?url';
import { extendable, interpret } from '../../core/language/interpret';
import { toJsgf } from '../../core/language/lower-jsgf';
import { serveEar } from './serve-ear';

serveEar(self as unknown as DedicatedWorkerGlobalScope, {
  denoiserWasm: async () => (await fetch(rnnoise)).arrayBuffer(),
  language: {
    toJsgf: (live, { filler, decoys }) => toJsgf(live, { ...(filler ? { filler } : {}), decoys }),
    interpret,
    extendable,
  },
  decoys: [],
});
