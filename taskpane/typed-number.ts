import type { Item } from '../src/domain/book/book.ts';
import type { Exact } from '../src/domain/kernel/exact.ts';
import { answer, type Result, wrong } from '../src/domain/kernel/result.ts';
import type { Liquid } from '../src/domain/measure/convert.ts';
import { type AmountOf, readAmount } from '../src/domain/measure/typed-amount.ts';
import type { Measure } from '../src/domain/measure/units.ts';

/** More than anyone weighs at a kitchen bench; beyond it a key was held down. */
const LARGEST = 1e9;

/** A figure without a unit. */
const NUMBER: AmountOf = { kind: 'number' };
export const minutes: AmountOf = { kind: 'time', unit: 'minutes' };
export const moneyIn = (currency: string): AmountOf => ({ kind: 'money', currency });

/** An amount in a measure; of a liquid, weight and volume lead to each other by its density. */
export const quantityIn = (unit: Measure, of?: Liquid): AmountOf =>
  of === undefined ? { kind: 'quantity', unit } : { kind: 'quantity', unit, of };

/** An amount of a stock item, in its stock unit. */
export const quantityOfItem = (item: Item): AmountOf =>
  quantityIn(item.unit, item.kind === 'material' ? item.material : undefined);

/**
 * Reads a figure as a maker types it, with its unit or without; `what` names it in the sentence, which says what to
 * type where it can't be read or could be meant in two ways.
 */
export function readTyped(typed: string, what: string, amountOf = NUMBER): Result<Exact> {
  const text = typed.trim();
  if (text === '') return wrong(`${what} is blank. Type a number, 0 or more.`);
  const read = readAmount(text, amountOf);
  if (!read.ok) return wrong(`${what} is "${text}". ${read.failure.sentence}`);
  const { value } = read.value;
  return value.gt(LARGEST) ? wrong(`${what} is ${text}, which is too large.`) : answer(value);
}

/** How a figure was understood where more than a plain number was typed, such as "10 lb = 4,535.92 g". */
export function understood(typed: string, amountOf: AmountOf): string | undefined {
  const read = readAmount(typed, amountOf);
  return read.ok ? read.value.conversion : undefined;
}

/** Reads a whole number, `least` or more. */
export function readWhole(typed: string, what: string, least: number): Result<number> {
  const value = readTyped(typed, what, quantityIn('each'));
  if (!value.ok) return value;
  if (!value.value.isInteger() || value.value.lt(least)) {
    return wrong(`${what} is ${typed.trim()}. Type a whole number, ${least} or more.`);
  }
  return answer(value.value.toNumber());
}
