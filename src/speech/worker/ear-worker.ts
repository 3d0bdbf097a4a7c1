import rnnoise from '@jitsi/rnnoise-wasm/dist/rnnoise.wasm?url';
import { serveEar } from './serve-ear';

// The worker's own global; the libraries of this project type it as a window's.
serveEar(self as unknown as DedicatedWorkerGlobalScope, {
  denoiserWasm: async () => {
    const response = await fetch(rnnoise);
    if (!response.ok) throw new Error(`${rnnoise} answered ${response.status}`);
    return response.arrayBuffer();
  },
  decoys: [],
});
