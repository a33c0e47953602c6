import { cell, headerCells } from './answer-cells.ts';
import { dayLabel, mondayBefore } from './dates.ts';
import { at, blockOf, cellOf, cellsIn, type Formula, sumOf } from './formula.ts';
import { supplierList } from './lists-sheet.ts';
import { numberBeside, sumWhere, textBeside, type Cells } from './look-up.ts';
import { blank, choose, given, largest, plus, times, value } from './native.ts';
import { seasonName } from './names.ts';
import { SEASON, seasonColumn } from './season-places.ts';
import type { StarterCell, StarterSheet } from './sheet.ts';
import { columnCells } from './table-cells.ts';
import { one, widths } from './weigh-sheet.ts';

const SUPPLIER = 3;
const GIVEN = 1;
const HEADERS = 7;
const FIRST = HEADERS + 1;
const LINES = 20;
const CASH = FIRST + LINES + 2;
const WEEKS = 8;
/** Beyond what prints: a number for each line of Season that belongs on the list, and its day to pay. */
const NUMBER = 9;
const PAY_DAY = 10;

const season = (column: number): Formula => blockOf(seasonName, seasonColumn('supplies', column));
const ofSeason = (index: number, column: number): Formula =>
  cellOf(seasonName, SEASON.supplies.first + index, column);

/** What to order, for one supplier or for all, and what money it takes week by week; on one page. */
export function shoppingSheet(): StarterSheet {
  return {
    name: 'Shopping',
    group: 'answers',
    widths: widths([26, 22, 9, 11, 8, 13, 12, 24, 3, 8, 10]),
    cells: [
      cell(0, 0, 'Shopping', 'title'),
      cell(
        1,
        0,
        'What the season still needs, in whole packs. Order each line by its day; earlier days are late.',
        'note',
      ),
      cell(SUPPLIER, 0, 'Supplier', 'label'),
      cell(SUPPLIER, GIVEN, '', 'input', 'text'),
      cell(SUPPLIER, GIVEN + 1, 'Blank is all of them.', 'aside'),
      ...numbers(),
      ...headerCells(HEADERS, 0, [
        ['Material', 'text'],
        ['Got it', 'text'],
        ['Packs', 'whole'],
        ['Pack holds', 'grams'],
        ['Unit', 'text'],
        ['Order by', 'date'],
        ['Cost', 'money'],
        ['Supplier', 'text'],
      ]),
      ...Array.from({ length: LINES }, (_, index) => shoppingRow(index)).flat(),
      cell(SUPPLIER + 1, 0, 'Money in all', 'label'),
      cell(SUPPLIER + 1, GIVEN, sumOf(down(6)), 'answer', 'money'),
      ...cash(),
    ],
    dropDowns: [{ range: one(SUPPLIER, GIVEN), choices: { source: supplierList }, strict: false }],
    charts: [
      {
        kind: 'columns',
        title: 'Money for supplies by week',
        description: 'A column for each week from now, as high as the orders to place in it cost.',
        place: { startRow: CASH, startColumn: 3, endRow: CASH + WEEKS + 4, endColumn: 7 },
        across: 'Week from Monday',
        up: 'Money',
        series: [{ name: 'Money', along: weeks(1), values: weeks(2) }],
      },
    ],
    landscape: false,
    prints: { startRow: 0, startColumn: 0, endRow: CASH + WEEKS + 5, endColumn: 7 },
  };
}

const down = (column: number): Formula =>
  cellsIn(
    { startRow: FIRST, startColumn: column, endRow: FIRST + LINES - 1, endColumn: column },
    '$',
  );

const weeks = (column: number) => ({
  startRow: CASH + 2,
  startColumn: column,
  endRow: CASH + 1 + WEEKS,
  endColumn: column,
});

/** Numbers the lines of Season that have packs to buy of the supplier asked for. */
function numbers(): StarterCell[] {
  const asked = at(SUPPLIER, GIVEN);
  return Array.from({ length: SEASON.supplies.lines }, (_, index) => {
    const row = FIRST + index;
    const [packs, supplier] = [ofSeason(index, 5), ofSeason(index, 7)];
    const before =
      index === 0
        ? value(0)
        : largest(
            cellsIn({ startRow: FIRST, startColumn: NUMBER, endRow: row - 1, endColumn: NUMBER }),
          );
    const next = plus(before, value(1));
    const theirs = choose([asked, '=', blank], next, choose([asked, '=', supplier], next, blank));
    const today = cellOf(seasonName, SEASON.asOf, SEASON.unseen);
    const orderBy = ofSeason(index, 1);
    return [
      cell(
        row,
        NUMBER,
        given([packs], choose([packs, '>', value(0)], theirs, blank)),
        'plain',
        'unseen',
      ),
      cell(row, PAY_DAY, given([orderBy], largest(orderBy, today)), 'plain', 'unseen'),
    ];
  }).flat();
}

function shoppingRow(index: number): StarterCell[] {
  const row = FIRST + index;
  const name = at(row, 0);
  const number: Cells = numberCells(NUMBER);
  const key = value(index + 1);
  const materials = columnCells('materials', 'material');
  const tick = choose([name, '=', blank], blank, value('☐'));
  return [
    cell(row, 0, textBeside(key, number, season(0)), 'plain', 'text'),
    cell(row, 1, tick, 'plain', 'text'),
    cell(row, 2, numberBeside(key, number, season(5)), 'strong', 'whole'),
    cell(
      row,
      3,
      numberBeside(name, materials, columnCells('materials', 'packSize')),
      'plain',
      'grams',
    ),
    cell(row, 4, textBeside(name, materials, columnCells('materials', 'unit')), 'plain', 'text'),
    cell(row, 5, numberBeside(key, number, season(1)), 'plain', 'date'),
    cell(row, 6, numberBeside(key, number, season(6)), 'plain', 'money'),
    cell(row, 7, textBeside(key, number, season(7)), 'plain', 'text'),
  ];
}

const numberCells = (column: number): Formula =>
  cellsIn(
    {
      startRow: FIRST,
      startColumn: column,
      endRow: FIRST + SEASON.supplies.lines - 1,
      endColumn: column,
    },
    '$',
  );

/** Orders that are late already fall in the first week; a material is paid for when first ordered. */
function cash(): StarterCell[] {
  const today = cellOf(seasonName, SEASON.asOf, SEASON.unseen);
  return [
    cell(CASH, 0, 'Money by week, all suppliers', 'heading'),
    ...headerCells(CASH + 1, 0, [
      ['Week from Monday', 'date'],
      ['Month-day', 'text'],
      ['Money', 'money'],
    ]),
    ...Array.from({ length: WEEKS }, (_, index) => {
      const row = CASH + 2 + index;
      const monday = at(row, 0);
      const sum = sumWhere(
        season(6),
        [numberCells(PAY_DAY), '>=', monday],
        [numberCells(PAY_DAY), '<', plus(monday, value(7))],
      );
      return [
        cell(row, 0, plus(mondayBefore(today), times(value(7), value(index))), 'plain', 'date'),
        cell(row, 1, dayLabel(monday), 'plain', 'text'),
        cell(row, 2, sum, 'plain', 'money'),
      ];
    }).flat(),
  ];
}
