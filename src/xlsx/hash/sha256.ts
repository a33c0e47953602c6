import { createHash } from 'node:crypto';

/** SHA-256 on Node, in hexadecimal; `sha256-in-browser.ts` gives the same where there is no Node. */
export const sha256 = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('hex');
