import { Exact } from '../src/domain/kernel/exact.ts';
import { answer, type Result, wrong } from '../src/domain/kernel/result.ts';

/** More than anyone weighs at a kitchen bench; beyond it a key was held down. */
const LARGEST = 1e9;
const PLAIN = /^\d*(?:[.,]\d*)?$/u;
const LIKE_THOUSANDS = /^\d{1,3},\d{3}$/u;

/** Reads a figure as a maker types it, with a point or a comma; `what` names it in the sentence. */
export function readTyped(typed: string, what: string): Result<Exact> {
  const text = typed.trim().replace(/\s/gu, '');
  if (text === '') return wrong(`${what} is blank. Type a number, 0 or more.`);
  if (!PLAIN.test(text) || !/\d/u.test(text)) {
    return wrong(`${what} is "${typed.trim()}". Type a plain number, 0 or more.`);
  }
  if (LIKE_THOUSANDS.test(text)) {
    return wrong(`${what} is "${text}": type ${text.replace(',', '')} or ${text}0 to be clear.`);
  }
  const value = new Exact(text.replace(',', '.').replace(/^\./u, '0.').replace(/\.$/u, ''));
  return value.gt(LARGEST) ? wrong(`${what} is ${text}, which is too large.`) : answer(value);
}

/** Reads a whole number, `least` or more. */
export function readWhole(typed: string, what: string, least: number): Result<number> {
  const value = readTyped(typed, what);
  if (!value.ok) return value;
  if (!value.value.isInteger() || value.value.lt(least)) {
    return wrong(`${what} is ${typed.trim()}. Type a whole number, ${least} or more.`);
  }
  return answer(value.value.toNumber());
}
