/** The package ships no types; these are the parts we call (emscripten build, names from its own list of exports). */
declare module '@jitsi/rnnoise-wasm/dist/rnnoise.js' {
  const createModule: (options: { readonly wasmBinary: ArrayBuffer }) => Promise<{
    readonly HEAPF32: Float32Array;
    readonly _malloc: (bytes: number) => number;
    readonly _rnnoise_create: () => number;
    readonly _rnnoise_destroy: (state: number) => void;
    readonly _rnnoise_process_frame: (state: number, output: number, input: number) => number;
  }>;
  export default createModule;
}
