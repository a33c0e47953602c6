import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import { gridCells, GRID, gridChart } from '../blocks/fair-grid.ts';
import { at, blockOf, type Formula, sumOf } from '../cells/formula.ts';
import { numberBeside } from '../cells/look-up.ts';
import { averageOf, blank, choose, plusCell, unlessError, value } from '../cells/native.ts';
import { pricingName } from '../cells/names.ts';
import { pricedDesigns } from '../blocks/priced-designs.ts';
import { selling } from '../blocks/selling-cells.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { designNames, fairNames } from '../blocks/table-choices.ts';
import { oneCell, widths } from './weigh-sheet.ts';

const FAIR = 3;
const DESIGN = 4;
const GIVEN = 1;
const FACTS = 5;
const FACT = 8;

/** What the demo asks first, and what a maker finds blank. */
export interface FairQuestion {
  readonly fair: string;
  readonly design: string;
  readonly barsExpected: number | '';
  readonly lowestPrice: number | '';
}

/** What a fair leaves at each price and number of bars sold. */
export function fairPricesSheet(asked: FairQuestion): StarterSheet {
  return {
    name: 'Fair prices',
    group: 'answers',
    widths: widths([25, 23, 15, 13, 9, 9, 9, 9, 9, 9, 9, 9]),
    cells: [
      ...titleCells(
        'Fair prices',
        'What a fair leaves at each price and number of bars, after tax, card fees, the bars, stall and travel. From 0 on it pays.',
      ),
      ...questions(asked),
      ...facts(),
      ...gridCells({
        lowest: at(DESIGN + 2, GIVEN),
        priceStep: at(DESIGN + 3, GIVEN),
        barStep: at(DESIGN + 4, GIVEN),
        expected: at(DESIGN + 1, GIVEN),
        fixed: at(FAIR, FACT),
        cost: at(FAIR + 1, FACT),
      }),
    ],
    dropDowns: [
      { range: oneCell(FAIR, GIVEN), choices: { source: fairNames }, strict: false },
      { range: oneCell(DESIGN, GIVEN), choices: { source: designNames }, strict: false },
    ],
    marks: [
      {
        range: GRID,
        formula: `AND(ISNUMBER(E${String(GRID.startRow + 1)}),E${String(GRID.startRow + 1)}>=0)`,
        shows: 'gain',
      },
    ],
    charts: [gridChart()],
    landscape: true,
  };
}

function questions({ fair, design, barsExpected, lowestPrice }: FairQuestion): StarterCell[] {
  return [
    ...inputCells(FAIR, GIVEN, 'Fair', fair, 'text'),
    ...inputCells(DESIGN, GIVEN, 'Design', design, 'text'),
    cell(DESIGN, GIVEN + 1, 'Blank is the average.', 'aside'),
    cell(DESIGN + 1, 0, 'Bars you expect to sell', 'label'),
    cell(DESIGN + 1, GIVEN, barsExpected, 'input', 'whole'),
    cell(DESIGN + 2, 0, 'Lowest price', 'label'),
    cell(DESIGN + 2, GIVEN, lowestPrice, 'input', 'money'),
    cell(DESIGN + 3, 0, 'Price goes up by', 'label'),
    cell(DESIGN + 3, GIVEN, 0.5, 'input', 'money'),
    cell(DESIGN + 4, 0, 'Bars go up by', 'label'),
    cell(DESIGN + 4, GIVEN, 10, 'input', 'whole'),
  ];
}

/** What the grid is worked out from. */
function facts(): StarterCell[] {
  const [fair, design] = [at(FAIR, GIVEN), at(DESIGN, GIVEN)];
  const fairCost = (key: 'stallFee' | 'travel' | 'otherCost') =>
    numberBeside(fair, columnCells('fairs', 'fair'), columnCells('fairs', key));
  const ofDesign = (column: 'cost' | 'price'): Formula => {
    const all = blockOf(pricingName, pricedDesigns(column));
    return choose(
      [design, '=', blank],
      choose([sumOf(all), '=', value(0)], blank, averageOf(all)),
      numberBeside(design, blockOf(pricingName, pricedDesigns('design')), all),
    );
  };
  const lines: readonly (readonly [string, Formula, 'money' | 'percent'])[] = [
    [
      'Stall, travel and other cost',
      choose(
        [fair, '=', blank],
        blank,
        unlessError(
          plusCell(plusCell(fairCost('stallFee'), fairCost('travel')), fairCost('otherCost')),
          blank,
        ),
      ),
      'money',
    ],
    ['Cost of one bar, as on Pricing', ofDesign('cost'), 'money'],
    ['Price now', ofDesign('price'), 'money'],
    ['Tax inside a tag price %', selling.taxInside, 'percent'],
    ['Card fee of a tag price %', selling.fees, 'percent'],
    ['Card fee fixed, for each bar', selling.feeFixed, 'money'],
  ];
  return lines.flatMap(([name, holds, format], index) => [
    cell(FAIR + index, FACTS, name, 'label'),
    cell(FAIR + index, FACT, holds, 'answer', format),
  ]);
}
