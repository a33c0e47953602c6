import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import type { Cell } from '../../workbook/port.ts';
import { monthLabel, monthStart } from '../cells/dates.ts';
import { answered, type Ask, FORECAST_DESIGNS, shownFirst } from '../blocks/answered.ts';
import {
  at,
  block,
  blockOf,
  fixedAt,
  type Formula,
  pour,
  rowOf,
  sumOf,
  unlessBlank,
} from '../cells/formula.ts';
import { moreNote } from '../blocks/listed.ts';
import { countWhere, sumWhere, type Where } from '../cells/look-up.ts';
import { blank, choose, given, numbersIn, textsIn, value } from '../cells/native.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells, wholeColumn } from '../cells/table-cells.ts';
import { widths } from './weigh-sheet.ts';

const NAME = 'Forecast';
const LAST_MONTH = 3;
const GIVEN = 1;
const METHOD = 5;
const HEADERS = 6;
const DESIGNS = FORECAST_DESIGNS;
const SOLD = 1;
const EXPECTED = 2;
const FIRST_DESIGN = 3;
const LAST_DESIGN = FIRST_DESIGN + DESIGNS - 1;
/** The first day of each month, beyond what prints. */
const DATES = LAST_DESIGN + 2;
/** Years of months looked back on: as many as there are sales for, and the last one in any case. */
const YEARS = [3, 2, 1] as const;
const YEAR = 12;
const HISTORY = YEARS[0] * YEAR;
const AHEAD = 6;
const FIRST = HEADERS + 1;
const LAST = HEADERS + HISTORY;
const PICTURE = LAST + AHEAD + 2;

/** Bars sold of each design by month, and what the months ahead may bring. */
export function forecastSheet(lastMonth: Cell): StarterSheet {
  return {
    name: NAME,
    group: 'answers',
    widths: widths([20, 12, 12, ...Array.from({ length: DESIGNS }, () => 16), 3, 10]),
    heights: { [METHOD]: 42 },
    frozenRows: HEADERS + 1,
    frozenColumns: 1,
    cells: [
      ...titleCells(
        NAME,
        'Bars sold by month, and the six months after. From two years of sales on, the forecast follows the season; before, it can only carry on.',
      ),
      ...inputCells(LAST_MONTH, GIVEN, 'Last month counted', lastMonth, 'date'),
      cell(LAST_MONTH, GIVEN + 1, 'Any day of the last month that is over.', 'aside'),
      cell(
        LAST_MONTH + 1,
        0,
        moreNote(
          textsIn(columnCells('designs', 'design', DESIGNS + 1)),
          'ask POUR.FORECAST for them on a sheet of its own.',
        ),
        'note',
      ),
      ...months(),
      ...Array.from({ length: DESIGNS }, (_, index) => designColumn(index)).flat(),
      ...totals(),
    ],
    asks: Array.from({ length: DESIGNS }, (_, index) => asksOf(index)).flat(),
    charts: [
      {
        kind: 'columns',
        title: 'Bars sold by month, and the forecast',
        description:
          'A column for each month: bars sold in the past three years, and the forecast for the next six months.',
        place: { startRow: PICTURE, startColumn: 0, endRow: PICTURE + 18, endColumn: 8 },
        across: '',
        up: 'Bars',
        series: [
          { name: 'Sold', along: down(0), values: down(SOLD) },
          { name: 'Forecast', along: down(0), values: down(EXPECTED) },
        ],
      },
    ],
    // The months fill a page; the picture below them would be cut in two.
    prints: { startRow: 0, startColumn: 0, endRow: LAST + AHEAD, endColumn: LAST_DESIGN },
    landscape: true,
  };
}

const down = (column: number) => ({
  startRow: FIRST,
  startColumn: column,
  endRow: LAST + AHEAD,
  endColumn: column,
});

/** The first day of each month, unseen, and the month before its figures. */
function months(): StarterCell[] {
  const asked = fixedAt(LAST_MONTH, GIVEN);
  return [
    cell(METHOD, 0, 'Forecast by', 'label'),
    cell(HEADERS, 0, 'Month', 'header', 'text'),
    ...Array.from({ length: HISTORY + AHEAD + 1 }, (_, index) => {
      const row = FIRST + index;
      const before = index === 0 ? asked : at(row - 1, DATES);
      const month = given([before], monthStart(before, index === 0 ? 1 - HISTORY : 1));
      const date = cell(row, DATES, month, 'plain', 'unseen');
      if (index === HISTORY + AHEAD) return [date];
      return [
        date,
        cell(row, 0, given([at(row, DATES)], monthLabel(at(row, DATES))), 'plain', 'text'),
      ];
    }).flat(),
  ];
}

function designColumn(index: number): StarterCell[] {
  const column = FIRST_DESIGN + index;
  const name = fixedAt(HEADERS, column);
  const { ahead, method } = listsOf(index);
  return [
    cell(HEADERS, column, rowOf(columnCells('designs', 'design'), index + 1), 'header', 'whole'),
    ...Array.from({ length: HISTORY }, (_, month) =>
      cell(FIRST + month, column, unlessBlank(name, '', soldIn(month, name)), 'plain', 'whole'),
    ),
    ...Array.from({ length: AHEAD }, (_, month) =>
      cell(
        LAST + 1 + month,
        column,
        // It has no header: its first month is its head.
        unlessBlank(ahead.head, '', ahead.at(month, 1)),
        'strong',
        'whole',
      ),
    ),
    cell(METHOD, column, shownFirst(method, 2, ''), 'diary'),
  ];
}

/** Bars sold in a month; blank for a year long past in which the design was not sold yet. */
function soldIn(month: number, name: Formula): Formula {
  const row = FIRST + month;
  const ofDesign: Where = [wholeColumn('sales', 'design'), '', name];
  const before: Where = [wholeColumn('sales', 'soldOn'), '<', at(row + 1, DATES)];
  const sold = sumWhere(wholeColumn('sales', 'bars'), ofDesign, before, [
    wholeColumn('sales', 'soldOn'),
    '>=',
    at(row, DATES),
  ]);
  const dated = given([at(row, DATES)], sold);
  if (month >= HISTORY - YEAR) return dated;
  return choose([countWhere(ofDesign, before), '=', value(0)], blank, dated);
}

const listsOf = (index: number) => ({
  ahead: answered(`forecast ${index + 1}`),
  method: answered(`method ${index + 1}`),
});

function asksOf(index: number): Ask[] {
  const { ahead, method } = listsOf(index);
  return [
    { list: ahead, of: question('FORECAST', FIRST_DESIGN + index) },
    { list: method, of: question('FORECASTFIT', FIRST_DESIGN + index) },
  ];
}

/** Asks of as many whole years as have a figure in each month; of nothing where not even one has. */
function question(id: string, column: number): Formula {
  return [...YEARS].reverse().reduce((otherwise: Formula, years) => {
    const history = blockOf(NAME, {
      startRow: LAST - years * YEAR + 1,
      startColumn: column,
      endRow: LAST,
      endColumn: column,
    });
    const asked = pour(id, history, value(AHEAD));
    return choose([numbersIn(history), '=', value(years * YEAR)], asked, otherwise);
  }, blank);
}

function totals(): StarterCell[] {
  const sum = (row: number) =>
    given([at(row, DATES)], sumOf(block(row, FIRST_DESIGN, row, LAST_DESIGN)));
  return [
    cell(HEADERS, SOLD, 'All bars', 'header', 'whole'),
    cell(HEADERS, EXPECTED, 'Forecast', 'header', 'whole'),
    ...Array.from({ length: HISTORY }, (_, month) =>
      cell(FIRST + month, SOLD, sum(FIRST + month), 'strong', 'whole'),
    ),
    ...Array.from({ length: AHEAD }, (_, ahead) =>
      cell(LAST + 1 + ahead, EXPECTED, sum(LAST + 1 + ahead), 'strong', 'whole'),
    ),
  ];
}
