import type { Book } from '../src/domain/book/book.ts';
import type { Day } from '../src/domain/kernel/day.ts';
import { type Exact, exact, hundred, one, zero } from '../src/domain/kernel/exact.ts';
import type { Cell } from '../src/workbook/port.ts';
import {
  countIn,
  countsDown,
  dayIn,
  nameIn,
  numberIn,
  rangeIn,
  namesDown,
  namesIn,
  tablesIn,
  truthIn,
} from './arguments.ts';
import { bookIn } from './books.ts';
import { CellFailure } from './failure.ts';
import type { Argument, Kind } from './records/record.ts';

/** What a function is handed for an argument of each kind. */
interface Values {
  name: string;
  names: readonly string[];
  'name or names': readonly string[];
  unit: string;
  number: Exact;
  count: number;
  'count or counts': readonly (number | undefined)[];
  percent: Exact;
  'percent from 1': Exact;
  'yes/no': boolean;
  day: Day;
  range: readonly (readonly Cell[])[];
  book: Book;
  tables: unknown[][][];
}

/** The value of an argument; undefined only where it may be left out and nothing stands for a blank. */
export type ValueOf<A extends Argument> =
  | Values[A['kind']]
  | (A extends { ifBlank: unknown } ? never : A extends { optional: true } ? undefined : never);

interface Reader<T> {
  /** The value in what a cell gave, undefined where that is blank; throws a `CellFailure` that names the argument. */
  read(argument: unknown, what: string): T | undefined;
  /** What a blank one is and what to give, after "design is". */
  readonly blank: string;
}

const exactIn = (argument: unknown, what: string): Exact | undefined => {
  const number = numberIn(argument, what);
  return number === undefined ? undefined : exact(number);
};

const number: Reader<Exact> = { read: exactIn, blank: 'blank. Give a number.' };
const count: Reader<number> = { read: countIn, blank: 'blank or 0. Give a number above 0.' };

/** How each kind of argument is read from what a cell gives. */
export const readers: { readonly [K in Kind]: Reader<Values[K]> } = {
  name: { read: nameIn, blank: 'blank. Give its name.' },
  names: { read: namesIn, blank: 'left out. Give a range of cells.' },
  'name or names': { read: namesDown, blank: 'blank. Give its name.' },
  unit: { read: nameIn, blank: 'blank. Give a unit, such as g, ml or oz.' },
  number,
  count,
  'count or counts': { read: countsDown, blank: count.blank },
  percent: number,
  'percent from 1': { read: percentFromOneIn, blank: count.blank },
  'yes/no': { read: truthIn, blank: 'blank. Give TRUE or FALSE.' },
  day: { read: dayIn, blank: 'blank. Give a date.' },
  range: { read: rangeIn, blank: 'left out. Give a range of cells.' },
  book: { read: bookIn, blank: 'blank. Give the cell named Book.' },
  tables: { read: tablesIn, blank: 'left out. Give your tables with their headers.' },
};

/** A cell that shows 95 % holds 0.95. */
function percentFromOneIn(argument: unknown, what: string): Exact | undefined {
  const given = countIn(argument, what);
  if (given === undefined) return undefined;
  const percent = exact(given);
  if (percent.gt(zero) && percent.lt(one)) {
    const meant = percent.times(hundred);
    const hint = meant.gt(one)
      ? `${meant.toString()} if ${meant.toString()} % is meant`
      : '1 or more';
    throw new CellFailure('#VALUE!', `${what} is ${percent.toString()}. Give ${hint}.`);
  }
  return percent;
}
