/** The characters of ISO/IEC 7064 MOD 37-2 in the order of their values; only a check character may be the last. */
const CHARACTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*';
const MODULUS = CHARACTERS.length;

/**
 * The check character of ISO/IEC 7064 MOD 37-2 for letters and digits: any one character misread, and any
 * two neighbours that changed places, are caught. Undefined where the text holds anything else.
 */
export function checkCharacter(text: string): string | undefined {
  const sum = weighed(text);
  return sum === undefined ? undefined : CHARACTERS[(MODULUS + 1 - sum) % MODULUS];
}

/** Whether a text ends in its own check character. */
export const hasGoodCheck = (text: string): boolean =>
  text !== '' && checkCharacter(text.slice(0, -1)) === text.at(-1)?.toUpperCase();

/** Horner's way: each character is added, then the sum doubled, all to the modulus. */
function weighed(text: string): number | undefined {
  let sum = 0;
  for (const character of text.toUpperCase()) {
    const value = CHARACTERS.indexOf(character);
    if (value < 0 || value === MODULUS - 1) return undefined;
    sum = ((sum + value) * 2) % MODULUS;
  }
  return sum;
}
