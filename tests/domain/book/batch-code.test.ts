import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { batchCode, misreadHint } from '../../../src/domain/book/batch-code.ts';
import { hasGoodCheck } from '../../../src/domain/kernel/check-character.ts';
import { readDay } from '../../../src/domain/kernel/day.ts';

const letters = '0123456789abcdefghjkmnpqrstvwxyz';
const tokens = fc
  .array(fc.constantFrom(...letters), { minLength: 10, maxLength: 10 })
  .map((drawn) => drawn.join(''));
const days = fc.integer({ min: readDay('2024-01-01') ?? 0, max: readDay('2083-12-31') ?? 0 });

describe('batchCode', () => {
  it('is eight characters that are hard to misread, the last of them their check', () => {
    fc.assert(
      fc.property(days, tokens, (day, token) => {
        const code = batchCode(day, token);
        expect(code).toMatch(/^[A-HJKMNP-TV-Z][0-9A-HJKMNP-TV-Z]{3}-[0-9A-HJKMNP-TV-Z]{4}$/u);
        expect(hasGoodCheck(code.replace('-', ''))).toBe(true);
        expect(misreadHint(code)).toBe('');
      }),
    );
  });

  it('is never the same on two days, and on one day goes by the token', () => {
    fc.assert(
      fc.property(days, days, tokens, tokens, fc.nat(9), (one, other, token, another, at) => {
        if (one !== other) expect(batchCode(one, token)).not.toBe(batchCode(other, another));
        const letter = letters[(letters.indexOf(token[at] ?? '') + 1) % letters.length] ?? '';
        const turned = [...token].with(at, letter).join('');
        // The last character of chance may give way to one with a check of ours.
        if (at % 4 < 3) expect(batchCode(one, token)).not.toBe(batchCode(one, turned));
      }),
    );
  });

  it('takes any text of chance for a token', () => {
    expect(batchCode(45292, 'LOUI§')).toMatch(/^A00[0-9A-Z]-/u);
  });
});

describe('misreadHint', () => {
  it('says so of a code with one character misread, and of no other name', () => {
    const code = batchCode(46000, '7kq2m9xd4r');
    const misread = `${code.startsWith('A') ? 'B' : 'A'}${code.slice(1)}`;
    expect(misreadHint(misread)).toMatch(/misread or mistyped/u);
    for (const name of ['B-050', 'L-1', 'Tide Pool', '', '2026-1128X'])
      expect(misreadHint(name)).toBe('');
  });
});
