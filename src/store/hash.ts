import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { Hash } from '../core/ports';

/** One for all: a long log is hashed twenty thousand times in a row. */
const encoder = new TextEncoder();

/** SHA-256 (FIPS 180-4) of UTF-8 text, in lower-case hex. */
export const sha256Hex: Hash = (text) => bytesToHex(sha256(encoder.encode(text)));
