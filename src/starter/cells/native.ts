import { Exact, exact, toCell } from '../../domain/kernel/exact.ts';
import type { Cell } from '../../workbook/port.ts';
import { isError } from './cell-errors.ts';
import { type Answer, blankOrError, type Cells, type Formula, type Workings } from './formula.ts';

/** The spreadsheet's own arithmetic, each formula with how its answer is worked out. */

/** A number or a text written into a formula. */
export const value = (holds: number | string): Formula => ({
  text: typeof holds === 'number' ? String(holds) : `"${holds}"`,
  work: () => holds,
});

export const plusCell = arithmetic('+', (x, y) => x + y);
export const minus = arithmetic('-', (x, y) => x - y);
export const times = arithmetic('*', (x, y) => x * y);
export const over = arithmetic('/', (x, y) => (y === 0 ? '#DIV/0!' : x / y));

/** `then` where each of the cells holds a number; else blank, or the error that one of them holds. */
export const given = (cells: readonly Formula[], then: Formula): Formula => ({
  text: `IF(COUNT(${texts(cells)})=${String(cells.length)},${then.text},${blankOrError(...cells).text})`,
  work: (from) =>
    cells.every((cell) => typeof cell.work(from) === 'number')
      ? then.work(from)
      : blankOrError(...cells).work(from),
});

/** `instead` where the formula answers with an error. */
export const unlessError = (asked: Formula, instead: Formula): Formula => ({
  text: `IFERROR(${asked.text},${instead.text})`,
  work: (from) => {
    const found = asked.work(from);
    return isError(found) ? instead.work(from) : found;
  },
});

export const blank = value('');

type Sign = '=' | '<>' | '<' | '<=' | '>' | '>=';

/** One of two answers, by how two cells compare; texts compare without regard to case. */
export const choose = (
  [a, sign, b]: readonly [Formula, Sign, Formula],
  then: Formula,
  otherwise: Formula,
): Formula => ({
  text: `IF(${a.text}${sign}${b.text},${then.text},${otherwise.text})`,
  work: (from) => {
    const [x, y] = [single(a.work(from)), single(b.work(from))];
    if (isError(x)) return x;
    if (isError(y)) return y;
    return holds(x, sign, y) ? then.work(from) : otherwise.work(from);
  },
});

/** How many cells of a block hold a text that is not blank. */
export const textsIn = (cells: Cells): Formula => ({
  text: `COUNTIF(${cells.text},"?*")`,
  work: (from) =>
    flat(cells.work(from)).filter((cell) => typeof cell === 'string' && cell !== '').length,
});

/** How many cells of a block hold a number. */
export const numbersIn = (cells: Formula): Formula => ({
  text: `COUNT(${cells.text})`,
  work: (from) => flat(cells.work(from)).filter((cell) => typeof cell === 'number').length,
});

export const largestOf = (...of: readonly Formula[]): Formula => ({
  text: `MAX(${texts(of)})`,
  work: (from) => numeric(of, from, (numbers) => (numbers.length ? Math.max(...numbers) : 0)),
});

export const smallest = (...of: readonly Formula[]): Formula => ({
  text: `MIN(${texts(of)})`,
  work: (from) => numeric(of, from, (numbers) => (numbers.length ? Math.min(...numbers) : 0)),
});

/** The mean of a block's numbers. */
export const averageOf = (cells: Formula): Formula => ({
  text: `AVERAGE(${cells.text})`,
  work: (from) =>
    numeric([cells], from, (numbers) =>
      numbers.length === 0 ? '#DIV/0!' : numbers.reduce((a, b) => a + b, 0) / numbers.length,
    ),
});

/** Cut off after so many decimals. */
export const cutAfter = (decimals: number, of: Formula): Formula => ({
  text: `ROUNDDOWN(${of.text},${String(decimals)})`,
  work: (from) => {
    const found = of.work(from);
    if (typeof found !== 'number') return isError(found) ? found : '#VALUE!';
    return toCell(exact(found).toDecimalPlaces(decimals, Exact.ROUND_DOWN));
  },
});

/** Cells and texts one after the other, as one text. */
export const join = (...parts: readonly Formula[]): Formula => ({
  text: parts.map(({ text }) => text).join('&'),
  work: (from) => {
    const found = parts.map((part) => single(part.work(from)));
    return found.find(isError) ?? found.map(String).join('');
  },
});

/** A formula's answer as one list of cells. */
export const flat = (answer: Answer | readonly Cell[]): readonly Cell[] =>
  Array.isArray(answer) ? (answer as readonly (readonly Cell[])[]).flat() : [answer as Cell];

function arithmetic(sign: string, of: (x: number, y: number) => Cell) {
  return (a: Formula, b: Formula): Formula => ({
    text: `(${a.text}${sign}${b.text})`,
    work: (from) => {
      const [x, y] = [asNumber(a.work(from)), asNumber(b.work(from))];
      if (typeof x === 'string') return x;
      return typeof y === 'string' ? y : of(x, y);
    },
  });
}

/** No text counts as a number; what is no number is an error. */
const asNumber = (found: Answer): number | string =>
  typeof found === 'number' ? found : isError(found) ? found : '#VALUE!';

const single = (answer: Answer): Cell => flat(answer)[0] ?? '';

const texts = (of: readonly Formula[]): string => of.map(({ text }) => text).join(',');

/** Only numbers count, as in a block of cells; an error stays one. */
function numeric(
  of: readonly Formula[],
  from: Workings,
  then: (numbers: readonly number[]) => Cell,
): Cell {
  const cells = of.flatMap((each) => flat(each.work(from)));
  return cells.find(isError) ?? then(cells.filter((cell) => typeof cell === 'number'));
}

function holds(x: Cell, sign: Sign, y: Cell): boolean {
  const [a, b] = typeof x === 'string' || typeof y === 'string' ? [fold(x), fold(y)] : [x, y];
  switch (sign) {
    case '=':
      return a === b;
    case '<>':
      return a !== b;
    case '<':
      return a < b;
    case '<=':
      return a <= b;
    case '>':
      return a > b;
    case '>=':
      return a >= b;
  }
}

const fold = (cell: Cell): string => String(cell).toLowerCase();
