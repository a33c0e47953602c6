import type { Exact } from './exact.ts';

declare const kind: unique symbol;

/** What changes a figure and keeps what it measures. */
type Scaling = 'times' | 'mul' | 'div' | 'dividedBy' | 'mod' | 'modulo';
/** What takes another figure of the same kind. */
type Joining = 'plus' | 'add' | 'minus' | 'sub';
/** What gives the same kind back by itself. */
type Turning = 'neg' | 'abs' | 'ceil' | 'floor' | 'round' | 'trunc';

/**
 * An exact figure that says what it measures, to the type checker alone: while the program runs it is a
 * plain `Exact`. Two of one kind can be added and compared, two of different kinds can't by mistake. It goes wherever an
 * `Exact` is asked for; back comes a kind only by `asGrams`, `asStock` or `asMoney`, where a unit is changed on purpose.
 */
export type Measured<K extends string> = Omit<Exact, Scaling | Joining | Turning> & {
  readonly [kind]: K;
} & Readonly<Record<Scaling, (by: Exact | number | string) => Measured<K>>> &
  Readonly<Record<Joining, (other: Measured<K>) => Measured<K>>> &
  Readonly<Record<Turning, () => Measured<K>>>;

/** Grams of soap or of what goes into it. */
export type Grams = Measured<'g'>;
/** A quantity in the unit that its item is kept in. */
export type InStock = Measured<'stock unit'>;
/** Money in the workbook's currency. */
export type Money = Measured<'money'>;

export const asGrams = (figure: Exact): Grams => figure as unknown as Grams;
export const asStock = (figure: Exact): InStock => figure as unknown as InStock;
export const asMoney = (figure: Exact): Money => figure as unknown as Money;
