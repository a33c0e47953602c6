import { sha256 as digest } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';

/** SHA-256 in hexadecimal. The browser's own answers only later, and only in a secure context. */
export const sha256 = (bytes: Uint8Array): string => bytesToHex(digest(bytes));
