import { cell, headerCells } from '../cells/answer-cells.ts';
import { at, fixedAt, type Formula, pour } from '../cells/formula.ts';
import { choose, given, minus, plusCell, times, value } from '../cells/native.ts';
import { leftOf } from './selling-cells.ts';
import type { StarterCell, StarterChart } from '../cells/sheet.ts';

/** What the grid is worked out from; all cells of its own sheet. */
export interface GridOf {
  readonly lowest: Formula;
  readonly priceStep: Formula;
  readonly barStep: Formula;
  readonly expected: Formula;
  /** What the fair costs however many bars are sold. */
  readonly fixed: Formula;
  /** Full cost of one bar. */
  readonly cost: Formula;
}

const HEAD = 12;
const PRICES = 9;
const BAR_COUNTS = 8;
const PRICE = 0;
const LEFT = 1;
const EVEN = 2;
const EXPECTED = 3;
const FIRST = 4;

/** The cells that hold a profit. */
export const GRID = {
  startRow: HEAD + 1,
  startColumn: FIRST,
  endRow: HEAD + PRICES,
  endColumn: FIRST + BAR_COUNTS - 1,
} as const;

/** A row for each price: what a bar leaves, bars to break even, and the profit at each number sold. */
export function gridCells(of: GridOf): StarterCell[] {
  const counts = Array.from({ length: BAR_COUNTS }, (_, index) => {
    const count = given([of.barStep], times(of.barStep, value(index + 1)));
    return cell(HEAD, FIRST + index, count, 'header', 'whole');
  });
  return [
    cell(HEAD - 1, PRICE, 'Each price', 'heading'),
    ...[LEFT, EVEN, EXPECTED].map((column) => cell(HEAD - 1, column, '', 'heading')),
    cell(HEAD - 1, FIRST, 'Profit with so many bars sold', 'heading'),
    ...Array.from({ length: BAR_COUNTS - 1 }, (_, index) =>
      cell(HEAD - 1, FIRST + 1 + index, '', 'heading'),
    ),
    ...headerCells(HEAD, PRICE, [
      ['Price', 'money'],
      ['A bar leaves', 'money'],
      ['Break even at', 'whole'],
      ['You expect', 'whole'],
    ]),
    ...counts,
    ...Array.from({ length: PRICES }, (_, index) => priceRow(index, of)).flat(),
  ];
}

function priceRow(
  index: number,
  { lowest, priceStep, fixed, cost, expected }: GridOf,
): StarterCell[] {
  const row = HEAD + 1 + index;
  const price = at(row, PRICE);
  const left = leftOf(price);
  const even = choose(
    [at(row, LEFT), '<=', value(0)],
    value('never'),
    pour('BREAKEVEN', fixed, left, cost),
  );
  return [
    cell(
      row,
      PRICE,
      given([lowest, priceStep], plusCell(lowest, times(priceStep, value(index)))),
      'plain',
      'money',
    ),
    cell(row, LEFT, given([price, cost], minus(left, cost)), 'plain', 'money'),
    cell(row, EVEN, given([price, fixed, cost], even), 'strong', 'whole'),
    cell(row, EXPECTED, given([price, expected], expected), 'plain', 'whole'),
    ...Array.from({ length: BAR_COUNTS }, (_, right) => {
      const [count, each] = [fixedAt(HEAD, FIRST + right), fixedAt(row, LEFT)];
      const profit = given([each, fixed, count], minus(times(count, each), fixed));
      return cell(row, FIRST + right, profit, 'plain', 'whole');
    }),
  ];
}

/** Bars to break even at each price, beside the bars expected. */
export function gridChart(): StarterChart {
  const down = (column: number) => ({
    startRow: HEAD + 1,
    startColumn: column,
    endRow: HEAD + PRICES,
    endColumn: column,
  });
  return {
    kind: 'curve',
    title: 'Price against bars to break even',
    description:
      'A falling line: the higher the price, the fewer bars pay for the fair. Where it lies below the level line of the bars you expect, the fair pays.',
    place: {
      startRow: HEAD + PRICES + 2,
      startColumn: 0,
      endRow: HEAD + PRICES + 20,
      endColumn: 7,
    },
    across: 'Price of one bar',
    up: 'Bars sold',
    series: [
      { name: 'Bars to break even', along: down(PRICE), values: down(EVEN) },
      { name: 'Bars you expect to sell', along: down(PRICE), values: down(EXPECTED) },
    ],
  };
}
