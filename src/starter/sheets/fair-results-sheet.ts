import { cell, headerCells, inputCells, titleCells } from '../cells/answer-cells.ts';
import { answered, type Ask, FAIRS_SHOWN, orBlank } from '../blocks/answered.ts';
import {
  at,
  cellOn,
  cellsIn,
  type Formula,
  fixedAt,
  named,
  pour,
  sumOf,
  unlessBlank,
} from '../cells/formula.ts';
import { listColumn } from '../blocks/listed.ts';
import { numberBeside, sumWhere } from '../cells/look-up.ts';
import { blank, choose, plusCell, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import type { CellFormat, StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells, wholeColumn } from '../cells/table-cells.ts';
import { widths } from './weigh-sheet.ts';

const NAME = 'Fair results';
const SKIP = 3;
const GIVEN = 1;
const HEADERS = 5;
const rows = { row: HEADERS + 1, lines: FAIRS_SHOWN };
const BARS = 2;

/** The lines of POUR.FAIR, from 1, with the column each gets. */
const lines: readonly (readonly [header: string, format: CellFormat, line: number])[] = [
  ['Takings', 'money', 2],
  ['Tax', 'money', 3],
  ['Fees', 'money', 4],
  ['Cost of bars', 'money', 5],
  ['Stall, travel', 'money', 6],
  ['Profit', 'money', 7],
  ['Per hour', 'money', 8],
  ['Break even', 'whole', 9],
];
const TAKINGS = BARS + 1;
const PROFIT = TAKINGS + 5;

/** One line for each fair: what it took, what went off, and what was left. */
export function fairResultsSheet(): StarterSheet {
  return {
    name: NAME,
    group: 'answers',
    widths: widths([26, 14, 13, 13, 12, 12, 16, 16, 13, 13, 15]),
    frozenRows: HEADERS + 1,
    cells: [
      ...titleCells(
        NAME,
        'What each fair brought home: takings less tax, fees, the full cost of the bars, stall and travel. Break even is in bars.',
      ),
      ...inputCells(SKIP, GIVEN, 'First fair shown', 1, 'whole'),
      cell(SKIP, GIVEN + 1, 'its number in Fair dates; twelve are shown', 'aside'),
      ...headerCells(HEADERS, 0, [
        ['Fair', 'text'],
        ['Opens', 'date'],
        ['Bars sold', 'whole'],
        ...lines.map(([header, format]) => [header, format] as const),
      ]),
      ...Array.from({ length: FAIRS_SHOWN }, (_, index) => fairRow(index)).flat(),
      ...totals(),
    ],
    asks,
    marks: [
      {
        range: {
          startRow: HEADERS + 1,
          startColumn: PROFIT,
          endRow: HEADERS + FAIRS_SHOWN,
          endColumn: PROFIT + 1,
        },
        formula: `AND(ISNUMBER($I${String(HEADERS + 2)}),$I${String(HEADERS + 2)}<0)`,
        shows: 'short',
      },
    ],
    charts: [
      {
        kind: 'columns',
        title: 'Takings and profit by fair',
        description: 'Two columns for each fair: what it took, and what was left as profit.',
        place: {
          startRow: HEADERS + FAIRS_SHOWN + 3,
          startColumn: 0,
          endRow: HEADERS + FAIRS_SHOWN + 22,
          endColumn: 10,
        },
        across: '',
        up: 'Money',
        series: [
          { name: 'Takings', along: listColumn(rows, 0), values: listColumn(rows, TAKINGS) },
          { name: 'Profit', along: listColumn(rows, 0), values: listColumn(rows, PROFIT) },
        ],
      },
    ],
    landscape: true,
  };
}

function fairRow(index: number): StarterCell[] {
  const row = HEADERS + 1 + index;
  const name = at(row, 0);
  const result = answered(`fair ${index + 1}`);
  const sold = sumWhere(wholeColumn('sales', 'bars'), [wholeColumn('sales', 'fair'), '', name]);
  return [
    cell(row, 0, fairNumber(plusCell(fixedAt(SKIP, GIVEN), value(index))), 'plain', 'text'),
    cell(
      row,
      1,
      numberBeside(name, columnCells('fairs', 'fair'), columnCells('fairs', 'opens')),
      'plain',
      'date',
    ),
    cell(row, BARS, choose([name, '=', blank], blank, sold), 'plain', 'whole'),
    ...lines.map(([, format, line], right) =>
      cell(
        row,
        TAKINGS + right,
        unlessBlank(result.head, '', orBlank(result.at(line - 1, 2))),
        'plain',
        format,
      ),
    ),
  ];
}

/** A fair that has sold nothing yet has no result. */
const asks: readonly Ask[] = Array.from({ length: FAIRS_SHOWN }, (_, index) => {
  const row = HEADERS + 1 + index;
  const sold = cellOn(NAME, row, BARS);
  const result = pour('FAIR', cellOn(NAME, row, 0), named(bookName));
  return {
    list: answered(`fair ${index + 1}`),
    of: choose([sold, '=', blank], blank, choose([sold, '=', value(0)], blank, result)),
  };
});

/** The name of the fair with that number in Fair dates; blank past the end. */
function fairNumber(number: Formula): Formula {
  const fairs = columnCells('fairs', 'fair');
  return {
    text: `IFERROR(INDEX(${fairs.text},${number.text})&"","")`,
    work: (from) => {
      const at = number.work(from);
      return typeof at === 'number' && at >= 1 ? (fairs.work(from)[at - 1] ?? '') : '';
    },
  };
}

function totals(): StarterCell[] {
  const row = HEADERS + FAIRS_SHOWN + 1;
  const summed = [BARS, ...[0, 1, 2, 3, 4, 5].map((right) => TAKINGS + right)];
  return [
    cell(row, 0, 'All shown', 'answer'),
    cell(row, 1, '', 'answer'),
    ...summed.map((column) =>
      cell(
        row,
        column,
        sumOf(cellsIn(listColumn(rows, column))),
        'total',
        column === BARS ? 'whole' : 'money',
      ),
    ),
  ];
}
