import { checkCharacter, hasGoodCheck } from '../kernel/check-character.ts';
import type { Day } from '../kernel/day.ts';

/** Digits and letters that are hard to misread: no I, L, O or U. */
const LETTERS = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const DAY_LENGTH = 3;
const CHANCE_LENGTH = 4;
const CODE = new RegExp(`^[A-Z][${LETTERS}]{3}-?[${LETTERS}]{4}$`, 'u');

/** 1 January 2024, as a spreadsheet counts days, is A00: a code begins with a letter, so that no sheet takes it for a number or a day. */
const A00 = LETTERS.indexOf('A') * LETTERS.length ** 2;
const FIRST_DAY: Day = 45292;

/**
 * A batch's code, short enough to write on a bar: "AXK7-Q2M9". The day it was begun, four characters of
 * chance from the host's token, and a check character (ISO/IEC 7064 MOD 37-2), so that a slip in reading it is
 * caught. Two copies of a workbook come to the same code once in a million batches begun on one day.
 */
export function batchCode(begun: Day, token: string): string {
  const day = inLetters(A00 + Math.max(0, Math.floor(begun) - FIRST_DAY), DAY_LENGTH);
  const chance = folded(token);
  // Of the 37 check characters five are none of ours: the last letter of chance gives way until one is.
  for (const last of [chance.slice(-1), ...LETTERS]) {
    const text = day + chance.slice(0, -1) + last;
    const check = checkCharacter(text) ?? '';
    if (LETTERS.includes(check)) return `${text.slice(0, 4)}-${text.slice(4)}${check}`;
  }
  throw new Error(`The token "${token}" makes no code.`);
}

/** What to say of a batch's code that nothing bears: whether it was read wrongly; "" where it is no such code. */
export function misreadHint(code: string): string {
  const text = code.trim().toUpperCase();
  if (!CODE.test(text) || hasGoodCheck(text.replace('-', ''))) return '';
  return ' Its last character does not fit the others, so one of them was misread or mistyped.';
}

function inLetters(number: number, length: number): string {
  const letters = [];
  for (let left = number, at = 0; at < length; at += 1, left = Math.floor(left / LETTERS.length)) {
    letters.unshift(LETTERS.charAt(left % LETTERS.length));
  }
  return letters.join('');
}

/** Every character of a token counts: each fourth one is added up. */
function folded(token: string): string {
  const sums = new Array<number>(CHANCE_LENGTH).fill(0);
  Array.from(token, valueOf).forEach((value, at) => {
    sums[at % CHANCE_LENGTH] = (sums[at % CHANCE_LENGTH] ?? 0) + value;
  });
  return sums.map((sum) => LETTERS.charAt(sum % LETTERS.length)).join('');
}

/** A token's character as a number; those of a host's token are letters of ours, only small. */
const valueOf = (character: string): number => {
  const letter = LETTERS.indexOf(character.toUpperCase());
  return letter < 0 ? (character.codePointAt(0) ?? 0) : letter;
};
