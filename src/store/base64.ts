/** Bytes as base64 (RFC 4648 section 4), by way of the browser's own binary strings. */
export function toBase64(bytes: Uint8Array): string {
  let binary = '';
  // In pieces: a whole photo is more arguments than one call may have.
  for (let at = 0; at < bytes.length; at += PIECE) {
    binary += String.fromCharCode(...bytes.subarray(at, at + PIECE));
  }
  return btoa(binary);
}

/** The text must be base64: `checkJobFile` has checked it. */
export function fromBase64(text: string): Uint8Array {
  const binary = atob(text);
  const bytes = new Uint8Array(binary.length);
  for (let at = 0; at < binary.length; at += 1) bytes[at] = binary.charCodeAt(at);
  return bytes;
}

const PIECE = 0x8000;
