import { cell } from './answer-cells.ts';
import type { Cell } from '../port.ts';
import { monthLabel, monthStart } from './dates.ts';
import { at, block, type Formula, pour, rowOf, sumOf, unlessBlank } from './formula.ts';
import { sumWhere } from './look-up.ts';
import { given, pick, value } from './native.ts';
import type { StarterCell, StarterSheet } from './sheet.ts';
import { columnCells, wholeColumn } from './table-cells.ts';
import { widths } from './weigh-sheet.ts';

const LAST_MONTH = 3;
const GIVEN = 1;
const DATES = 5;
const HEADERS = 6;
const DESIGNS = 10;
const SOLD = HEADERS + DESIGNS + 1;
const EXPECTED = SOLD + 1;
const HISTORY = 12;
const AHEAD = 3;

/** Bars sold of each design by month, and what the months ahead may bring. */
export function forecastSheet(lastMonth: Cell): StarterSheet {
  return {
    name: 'Forecast',
    group: 'answers',
    widths: widths([22, ...Array.from({ length: HISTORY + AHEAD }, () => 9.5)]),
    frozenRows: HEADERS + 1,
    frozenColumns: 1,
    cells: [
      cell(0, 0, 'Forecast', 'title'),
      cell(
        1,
        0,
        'Bars sold by month, and the three months after. A year shows no season yet: from the second year on the forecast follows it.',
        'note',
      ),
      cell(LAST_MONTH, 0, 'Last month counted', 'label'),
      cell(LAST_MONTH, GIVEN, lastMonth, 'input', 'date'),
      cell(LAST_MONTH, GIVEN + 2, 'Any day of it.', 'aside'),
      ...months(),
      ...Array.from({ length: DESIGNS }, (_, index) => designRow(index)).flat(),
      ...totals(),
    ],
    charts: [
      {
        kind: 'columns',
        title: 'Bars sold by month, and the forecast',
        description:
          'A column for each month: bars sold in the past twelve, and the forecast for the next three.',
        place: { startRow: EXPECTED + 2, startColumn: 0, endRow: EXPECTED + 20, endColumn: 15 },
        across: '',
        up: 'Bars',
        series: [
          { name: 'Sold', along: acrossRow(HEADERS), values: acrossRow(SOLD) },
          { name: 'Forecast', along: acrossRow(HEADERS), values: acrossRow(EXPECTED) },
        ],
      },
    ],
    landscape: true,
  };
}

const acrossRow = (row: number) => ({
  startRow: row,
  startColumn: 1,
  endRow: row,
  endColumn: HISTORY + AHEAD,
});

/** The first day of each month, unseen, and the month above its figures. */
function months(): StarterCell[] {
  const asked = at(LAST_MONTH, GIVEN);
  return Array.from({ length: HISTORY + AHEAD + 1 }, (_, index) => {
    const before = index === 0 ? asked : at(DATES, index);
    const month = given([before], monthStart(before, index === 0 ? 1 - HISTORY : 1));
    const date = cell(DATES, 1 + index, month, 'plain', 'unseen');
    if (index === HISTORY + AHEAD) return [date];
    return [
      date,
      cell(
        HEADERS,
        1 + index,
        given([at(DATES, 1 + index)], monthLabel(at(DATES, 1 + index))),
        'header',
        'whole',
      ),
    ];
  })
    .flat()
    .concat(cell(HEADERS, 0, 'Design', 'header', 'text'));
}

function designRow(index: number): StarterCell[] {
  const row = HEADERS + 1 + index;
  const name = at(row, 0);
  const history = block(row, 1, row, HISTORY);
  return [
    cell(row, 0, rowOf(columnCells('designs', 'design'), index + 1), 'plain', 'text'),
    ...Array.from({ length: HISTORY }, (_, month) => {
      const sold = sumWhere(
        wholeColumn('sales', 'bars'),
        [wholeColumn('sales', 'design'), '', name],
        [wholeColumn('sales', 'soldOn'), '>=', fixedDate(1 + month)],
        [wholeColumn('sales', 'soldOn'), '<', fixedDate(2 + month)],
      );
      return cell(row, 1 + month, unlessBlank(name, '', sold), 'plain', 'whole');
    }),
    ...Array.from({ length: AHEAD }, (_, ahead) => {
      const forecast = pick(pour('FORECAST', history, value(AHEAD)), ahead + 1, 1);
      return cell(row, 1 + HISTORY + ahead, unlessBlank(name, '', forecast), 'strong', 'whole');
    }),
  ];
}

function fixedDate(column: number): Formula {
  const date = at(DATES, column);
  return { ...date, text: date.text.replace(/(\d+)$/u, '$$$1') };
}

function totals(): StarterCell[] {
  const sum = (column: number) => sumOf(block(HEADERS + 1, column, HEADERS + DESIGNS, column));
  return [
    cell(SOLD, 0, 'All bars sold', 'answer'),
    cell(EXPECTED, 0, 'All bars forecast', 'answer'),
    ...Array.from({ length: HISTORY }, (_, month) =>
      cell(SOLD, 1 + month, sum(1 + month), 'total', 'whole'),
    ),
    ...Array.from({ length: AHEAD }, (_, ahead) =>
      cell(EXPECTED, 1 + HISTORY + ahead, sum(1 + HISTORY + ahead), 'total', 'whole'),
    ),
  ];
}
