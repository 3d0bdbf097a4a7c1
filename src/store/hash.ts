import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import type { Hash } from '../core/ports';

/** SHA-256 (FIPS 180-4) of UTF-8 text, in lower-case hex. */
export const sha256Hex: Hash = (text) => bytesToHex(sha256(utf8ToBytes(text)));
