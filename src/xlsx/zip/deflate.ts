import { crc32, deflateRawSync, inflateRawSync } from 'node:zlib';

/** Packing and unpacking on Node; `deflate-in-browser.ts` does the same where there is no Node. */
export { crc32 };

/** Packs bytes; the same bytes pack the same. */
export const deflate = (bytes: Uint8Array): Uint8Array => deflateRawSync(bytes, { level: 6 });

/** Unpacks bytes. Never makes room for more than `size`; throws where there are more, or damage. */
export const inflate = (packed: Uint8Array, size: number): Uint8Array =>
  inflateRawSync(packed, { maxOutputLength: Math.max(size, 1) });
