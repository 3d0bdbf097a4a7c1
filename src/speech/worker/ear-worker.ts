import rnnoise from '@jitsi/rnnoise-wasm/dist/rnnoise.wasm?url';
import { serveEar } from './serve-ear';

// The worker's own global; the libraries of this project type it as a window's.
serveEar(self as unknown as DedicatedWorkerGlobalScope, {
  denoiserWasm: () => fetched(rnnoise),
  modelFile: async (address) => new Uint8Array(await fetched(address)),
});

async function fetched(address: string): Promise<ArrayBuffer> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address} answered ${response.status}`);
  return response.arrayBuffer();
}
