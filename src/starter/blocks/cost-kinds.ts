import { cell, headerCells } from '../cells/answer-cells.ts';
import type { AnsweredList } from './answered.ts';
import { at, type Formula, sumOf, unlessFailed } from '../cells/formula.ts';
import { listColumn } from './listed.ts';
import { numberBeside, sumEnding } from '../cells/look-up.ts';
import { given, minus, value } from '../cells/native.ts';
import type { StarterCell, StarterChart } from '../cells/sheet.ts';

/** Lines that a cost list has room for. */
export const LINES_ROOM = 36;

/** Below the designs, before the sheet's fold. */
const HEAD = 25;
const FIRST = HEAD + 2;
const AMOUNT = 1;

/** The names that POUR.COSTLINES gives its lines that are no material's. */
const labels = { labour: 'Labour', setup: 'Setup', overhead: 'Overhead', lost: 'Lost bars' };
const WEAR_ENDING = ' wear';

/** The cost of the chosen design by kind, summed from the list of its lines. */
export function costByKind(list: AnsweredList): StarterCell[] {
  const [names, amounts] = [list.column(1), list.column(2)];
  const line = (name: string) => unlessFailed(list.head, numberBeside(value(name), names, amounts));
  const others = [FIRST + 1, FIRST + 2, FIRST + 3, FIRST + 4, FIRST + 5].map((row) =>
    at(row, AMOUNT),
  );
  const material = others.reduce((left, other) => minus(left, other), sumOf(amounts));
  const kinds: readonly (readonly [string, Formula])[] = [
    ['Material', given(others, material)],
    ['Labour', line(labels.labour)],
    ['Setup', line(labels.setup)],
    ['Mold wear', given([at(FIRST + 1, AMOUNT)], sumEnding(names, WEAR_ENDING, amounts))],
    ['Overhead', line(labels.overhead)],
    ['Lost bars', line(labels.lost)],
  ];
  return [
    cell(HEAD, 0, 'The bar looked into, by kind', 'heading'),
    ...headerCells(HEAD + 1, 0, [
      ['Kind', 'text'],
      ['Per bar', 'money'],
    ]),
    ...kinds.flatMap(([name, holds], index) => [
      cell(FIRST + index, 0, name, 'plain', 'text'),
      cell(FIRST + index, AMOUNT, holds, 'plain', 'money'),
    ]),
  ];
}

/** A picture of it. */
export function kindChart(): StarterChart {
  const list = { row: FIRST, lines: 6 };
  return {
    kind: 'bars',
    title: "Where a bar's cost goes",
    description:
      'One lying bar each for material, labour, setup, mold wear, overhead and lost bars, as long as the money it takes of one good bar.',
    place: { startRow: 28, startColumn: 13, endRow: 45, endColumn: 21 },
    across: 'Money for one bar',
    up: '',
    series: [{ name: 'Per bar', along: listColumn(list, 0), values: listColumn(list, AMOUNT) }],
  };
}
