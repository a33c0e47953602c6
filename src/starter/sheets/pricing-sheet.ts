import { cell, headerCells, inputCells, titleCells } from '../cells/answer-cells.ts';
import { asOfCells } from './costing-sheet.ts';
import { orBlank } from '../blocks/answered.ts';
import { at, fixedAt, less, named, pour, rowOf, unlessBlank } from '../cells/formula.ts';
import { moreNote } from '../blocks/listed.ts';
import { blank, choose, given, minus, over, textsIn } from '../cells/native.ts';
import { bookName, pricingName } from '../cells/names.ts';
import { type SetOfBars, setCells, setDropDowns } from '../blocks/pricing-set.ts';
import { PRICED } from '../blocks/priced-designs.ts';
import { leftOf, netOfTax, selling, sellingCells } from '../blocks/selling-cells.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { widths } from './weigh-sheet.ts';

const AS_OF = 3;
const BARS = 4;
const MARGIN = 5;
const ENDING = 6;
const GIVEN = 1;
const HEADERS = PRICED.headers;
const LAST = PRICED.last;

/** What PRICE is asked for; a 0 means something there, so a blank is handed over as a blank in every host. */
const wanted = {
  margin: orBlank(fixedAt(MARGIN, GIVEN)),
  ending: orBlank(fixedAt(ENDING, GIVEN)),
};

/** What to ask for a bar, what today's price really leaves, and one price for several bars. */
export function pricingSheet(set: SetOfBars): StarterSheet {
  const first = String(HEADERS + 2);
  return {
    name: pricingName,
    group: 'answers',
    widths: widths([25, 14, 20, 14, 13, 14, 14, 16]),
    cells: [
      ...titleCells(
        pricingName,
        'The margin is what is left of the price after tax, fees and the full cost, as a share of the price without tax.',
      ),
      ...asOfCells(AS_OF),
      ...questions(),
      ...sellingCells(),
      cell(HEADERS - 1, 0, 'Every design', 'heading'),
      cell(
        HEADERS - 1,
        2,
        moreNote(
          textsIn(columnCells('designs', 'design', LAST - HEADERS + 1)),
          'look into them on Costing.',
        ),
        'note',
      ),
      ...headerCells(HEADERS, 0, [
        ['Design', 'text'],
        ['Cost per bar', 'money'],
        ['Other margin %', 'percent'],
        ['Price to ask', 'money'],
        ['Price now', 'money'],
        ['Profit now', 'money'],
        ['Margin now', 'share'],
        ['Now − to ask', 'money'],
      ]),
      ...Array.from({ length: LAST - HEADERS }, (_, index) => designRow(index)).flat(),
      ...setCells(LAST + 3, set, wanted),
    ],
    dropDowns: setDropDowns(LAST + 3),
    marks: [
      {
        range: { startRow: HEADERS + 1, startColumn: 4, endRow: LAST, endColumn: 7 },
        formula: `N($H${first})<0`,
        shows: 'short',
      },
    ],
    landscape: false,
  };
}

function questions(): StarterCell[] {
  return [
    ...inputCells(BARS, GIVEN, 'Good bars', 12, 'whole'),
    cell(BARS, 2, 'in one batch', 'aside'),
    ...inputCells(MARGIN, GIVEN, 'Margin wanted %', 30, 'percent'),
    cell(MARGIN, 2, 'of the price without tax', 'aside'),
    ...inputCells(ENDING, GIVEN, 'Price ends in', 0.5, 'money'),
    cell(ENDING, 2, 'Blank is to the cent.', 'aside'),
  ];
}

function designRow(index: number): StarterCell[] {
  const row = HEADERS + 1 + index;
  const [name, cost, other] = [at(row, 0), at(row, 1), at(row, 2)];
  const [asked, now, profit] = [at(row, 3), at(row, 4), at(row, 5)];
  const margin = choose([other, '=', blank], wanted.margin, other);
  const costs = pour(
    'COSTPERBAR',
    name,
    named(bookName),
    fixedAt(BARS, GIVEN),
    fixedAt(AS_OF, GIVEN),
  );
  const { fees, feeFixed, taxInside } = selling;
  const ask = pour('PRICE', cost, margin, fees, feeFixed, taxInside, wanted.ending);
  return [
    cell(row, 0, rowOf(columnCells('designs', 'design'), index + 1), 'plain', 'text'),
    cell(row, 1, unlessBlank(name, '', costs), 'plain', 'money'),
    cell(row, 2, '', 'input', 'percent'),
    cell(row, 3, unlessBlank(name, '', ask), 'plain', 'money'),
    cell(row, 4, rowOf(columnCells('designs', 'price'), index + 1), 'plain', 'money'),
    cell(row, 5, given([cost, now], minus(leftOf(now), cost)), 'plain', 'money'),
    cell(row, 6, given([profit], over(profit, netOfTax(now))), 'plain', 'share'),
    cell(row, 7, less(now, asked), 'plain', 'money'),
  ];
}
