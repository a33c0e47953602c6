import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCharacter, hasGoodCheck } from '../../../src/domain/kernel/check-character.ts';

const characters = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';
const texts = fc.array(fc.constantFrom(...characters), { minLength: 1, maxLength: 12 });

describe('checkCharacter (ISO/IEC 7064 MOD 37-2)', () => {
  // REFERENCES X4: two digits swapped give another check character.
  it.each([
    ['G123489654321', 'Y'],
    ['G123498654321', 'H'],
  ])('%s: %s', (text, check) => {
    expect(checkCharacter(text)).toBe(check);
  });

  // REFERENCES X7 and X9.
  it('knows a text that ends in its own from one that does not', () => {
    expect(hasGoodCheck('G123489654321Y')).toBe(true);
    expect(hasGoodCheck('g123489654321y')).toBe(true);
    expect(hasGoodCheck('G123489654321H')).toBe(false);
    expect(hasGoodCheck('')).toBe(false);
  });

  it('has none for a text with anything but letters and digits', () => {
    expect(checkCharacter('A-1')).toBeUndefined();
    expect(checkCharacter('A*')).toBeUndefined();
  });

  it('catches any one character misread, and any two neighbours that changed places', () => {
    fc.assert(
      fc.property(texts, fc.nat(), fc.constantFrom(...characters), (text, drawn, other) => {
        const whole = [...text, checkCharacter(text.join('')) ?? ''];
        const at = drawn % text.length;
        const misread = whole.with(at, other).join('');
        expect(hasGoodCheck(misread)).toBe(whole[at] === other);
        const swapped = whole.with(at, whole[at + 1] ?? '').with(at + 1, whole[at] ?? '');
        expect(hasGoodCheck(swapped.join(''))).toBe(whole[at] === whole[at + 1]);
      }),
    );
  });
});
