/**
 * Stands in for the package "blob-polyfill", which the recogniser engine imports and which touches `document` on
 * loading, so that no worker can load it. Every browser that runs this app has Blob.
 */
const NativeBlob = globalThis.Blob;

export { NativeBlob as Blob };
