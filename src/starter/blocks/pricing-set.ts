import { cell, headerCells } from '../cells/answer-cells.ts';
import {
  at,
  block,
  cellsIn,
  type Formula,
  less,
  pour,
  shareLeft,
  sumOf,
} from '../cells/formula.ts';
import { numberBeside } from '../cells/look-up.ts';
import { blank, choose, given, plusCell, times } from '../cells/native.ts';
import { pricedDesigns } from './priced-designs.ts';
import { selling } from './selling-cells.ts';
import type { DropDown, StarterCell } from '../cells/sheet.ts';
import { designNames } from './table-choices.ts';

/** Bars sold together, as the sheet shows them at first. */
export interface SetOfBars {
  readonly bars: readonly (readonly [design: string, bars: number])[];
  readonly packaging: number | '';
  /** Percent; blank for the margin of single bars. */
  readonly margin: number | '';
}

/** Designs that one set may hold. */
const MOST = 4;
const COST = 3;
const SINGLES = 5;

/** A set of several bars as one price, beside what they cost one by one. */
export function setCells(
  top: number,
  { bars, packaging, margin: wanted }: SetOfBars,
  asked: { readonly margin: Formula; readonly ending: Formula },
): StarterCell[] {
  const first = top + 2;
  const after = first + MOST;
  const column = (at: number) => sumOf(block(first, at, after - 1, at));
  const [pack, other, cost, price, singles] = [after, after + 1, after + 2, after + 3, after + 4];
  const margin = choose([at(other, COST), '=', blank], asked.margin, at(other, COST));
  const { fees, feeFixed, taxInside } = selling;
  const priceOfSet = pour('PRICE', at(cost, COST), margin, fees, feeFixed, taxInside, asked.ending);
  const answer = (
    row: number,
    name: string,
    holds: Formula,
    format: 'money' | 'share' = 'money',
  ) => [cell(row, 0, name, 'label'), cell(row, COST, holds, 'answer', format)];
  return [
    cell(top, 0, 'A set of bars at one price', 'heading'),
    ...headerCells(top + 1, 0, [
      ['Design', 'text'],
      ['Bars', 'whole'],
      ['Cost each', 'money'],
      ['Cost', 'money'],
      ['Price now', 'money'],
      ['One by one', 'money'],
    ]),
    ...Array.from({ length: MOST }, (_, index) => setRow(first + index, bars[index])).flat(),
    cell(pack, 0, 'Box or ribbon for the set', 'label'),
    cell(pack, COST, packaging, 'input', 'money'),
    cell(other, 0, 'Margin % if other', 'label'),
    cell(other, COST, wanted, 'input', 'percent'),
    ...answer(
      cost,
      'Cost of the set',
      choose(
        [column(1), '=', { text: '0', work: () => 0 }],
        blank,
        plusCell(column(COST), sumOf(at(pack, COST))),
      ),
    ),
    ...answer(price, 'Price of the set', given([at(cost, COST)], priceOfSet)),
    ...answer(singles, 'The same bars one by one', given([at(cost, COST)], column(SINGLES))),
    ...answer(singles + 1, 'A buyer saves', less(at(singles, COST), at(price, COST))),
    ...answer(
      singles + 2,
      'A buyer saves, of one by one',
      shareLeft(at(singles, COST), at(price, COST)),
      'share',
    ),
  ];
}

function setRow(row: number, bars: readonly [string, number] | undefined): StarterCell[] {
  const [name, count, each, now] = [at(row, 0), at(row, 1), at(row, 2), at(row, 4)];
  const names = cellsIn(pricedDesigns('design'), '$');
  return [
    cell(row, 0, bars?.[0] ?? '', 'input', 'text'),
    cell(row, 1, bars?.[1] ?? '', 'input', 'whole'),
    cell(row, 2, numberBeside(name, names, cellsIn(pricedDesigns('cost'), '$')), 'plain', 'money'),
    cell(row, COST, given([count, each], times(count, each)), 'plain', 'money'),
    cell(row, 4, numberBeside(name, names, cellsIn(pricedDesigns('price'), '$')), 'plain', 'money'),
    cell(row, SINGLES, given([count, now], times(count, now)), 'plain', 'money'),
  ];
}

/** Design names to pick from. */
export const setDropDowns = (top: number): DropDown[] => [
  {
    range: { startRow: top + 2, startColumn: 0, endRow: top + 1 + MOST, endColumn: 0 },
    choices: { source: designNames },
    strict: false,
  },
];
