import { crc32 as nodeCrc32, deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import * as inBrowser from '../../src/xlsx/zip/deflate-in-browser.ts';
import * as onNode from '../../src/xlsx/zip/deflate.ts';

const anyBytes = fc.oneof(
  fc.uint8Array({ maxLength: 5000 }),
  fc.string({ maxLength: 400 }).map((text) => new TextEncoder().encode(text.repeat(30))),
);

describe.each([
  ['on Node', onNode],
  ['in the browser', inBrowser],
])('packing %s', (_, { crc32, deflate, inflate }) => {
  it('unpacks what either packed, to the byte', () => {
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        for (const packed of [onNode.deflate(bytes), inBrowser.deflate(bytes), deflate(bytes)])
          expect(Buffer.from(inflate(packed, bytes.length)).equals(Buffer.from(bytes))).toBe(true);
      }),
    );
  });

  it('takes the checksum that the format asks for', () => {
    // The check value of CRC-32/ISO-HDLC: "123456789" gives CBF43926 (the catalogue of CRC parameters).
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        expect(crc32(bytes)).toBe(nodeCrc32(bytes));
      }),
    );
  });

  it('never unpacks more than was said', () => {
    const bomb = deflateRawSync(new Uint8Array(50_000_000));
    expect(() => inflate(bomb, 1000)).toThrow();
  });

  it('throws on damage, or gives no more than was asked', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.nat(500), (packed, size) => {
        try {
          expect(inflate(packed, size).length).toBeLessThanOrEqual(Math.max(size, 1));
        } catch (problem) {
          expect(problem).toBeInstanceOf(Error);
        }
      }),
    );
  });
});
