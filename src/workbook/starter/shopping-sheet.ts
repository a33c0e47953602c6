import { cell, headerCells, inputCells, titleCells } from './answer-cells.ts';
import { at, blockOf, cellOf, cellsIn, type Formula, named, pour, sumOf } from './formula.ts';
import { columnOf, type Listed, listed } from './listed.ts';
import { supplierList } from './lists-sheet.ts';
import { numberBeside, textBeside, type Cells } from './look-up.ts';
import { blank, choose, given, largest, plus, value } from './native.ts';
import { bookName, seasonName } from './names.ts';
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
const WEEKS = 10;
/** Beyond what prints: a number for each line of Season that belongs on the list, and today. */
const NUMBER = 9;
const TODAY = 10;

const season = (column: number): Formula => blockOf(seasonName, seasonColumn('supplies', column));
const ofSeason = (index: number, column: number): Formula =>
  cellOf(seasonName, SEASON.supplies.first + index, column);

/** What to order, for one supplier or for all, and what money it takes week by week; on one page. */
export function shoppingSheet(): StarterSheet {
  return {
    name: 'Shopping',
    group: 'answers',
    widths: widths([26, 18, 12, 14, 8, 13, 12, 24, 3, 8, 10]),
    cells: [
      ...titleCells(
        'Shopping',
        'What the season still needs, in whole packs, with or without leftovers as Season says. Order each line by its day.',
      ),
      ...inputCells(SUPPLIER, GIVEN, 'Supplier', '', 'text'),
      cell(SUPPLIER, GIVEN + 1, 'Blank is all of them.', 'aside'),
      cell(SUPPLIER, TODAY, cellOf(seasonName, SEASON.asOf, SEASON.unseen), 'plain', 'unseen'),
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
      cell(
        HEADERS - 1,
        0,
        choose(
          [largest(numberCells(NUMBER)), '>', value(LINES)],
          value('More to buy than these lines: pick one supplier at a time.'),
          blank,
        ),
        'note',
      ),
      cell(SUPPLIER + 1, 0, 'Money in all', 'label'),
      cell(SUPPLIER + 1, GIVEN, sumOf(down(6)), 'answer', 'money'),
      cell(CASH, 0, 'Money by week, all suppliers', 'heading'),
      ...listed(cash),
    ],
    marks: [
      {
        range: { startRow: FIRST, startColumn: 0, endRow: FIRST + LINES - 1, endColumn: 7 },
        formula: `AND(N($F${String(FIRST + 1)})>0,N($F${String(FIRST + 1)})<$K$${String(SUPPLIER + 1)})`,
        shows: 'short',
      },
    ],
    dropDowns: [{ range: one(SUPPLIER, GIVEN), choices: { source: supplierList }, strict: false }],
    charts: [
      {
        kind: 'columns',
        title: 'Money for supplies by week',
        description:
          'A column for each week from now, as high as the orders to place in it cost, and beside it what of them is late.',
        place: { startRow: CASH, startColumn: 4, endRow: CASH + WEEKS + 2, endColumn: 7 },
        across: 'Week from Monday',
        up: 'Money',
        series: ['Money', 'Of it late'].map((name, index) => ({
          name,
          along: columnOf(cash, 0),
          values: columnOf(cash, 1 + index),
        })),
      },
    ],
    landscape: false,
    prints: { startRow: 0, startColumn: 0, endRow: CASH + WEEKS + 3, endColumn: 7 },
  };
}

const down = (column: number): Formula =>
  cellsIn(
    { startRow: FIRST, startColumn: column, endRow: FIRST + LINES - 1, endColumn: column },
    '$',
  );

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
    return cell(
      row,
      NUMBER,
      given([packs], choose([packs, '>', value(0)], theirs, blank)),
      'plain',
      'unseen',
    );
  });
}

function shoppingRow(index: number): StarterCell[] {
  const row = FIRST + index;
  const name = at(row, 0);
  const number: Cells = numberCells(NUMBER);
  const key = value(index + 1);
  const materials = columnCells('materials', 'material');
  const orderBy = at(row, 5);
  const tick = choose([orderBy, '<', at(SUPPLIER, TODAY)], value('☐ late'), value('☐'));
  return [
    cell(row, 0, textBeside(key, number, season(0)), 'plain', 'text'),
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
    cell(row, 1, given([orderBy], tick), 'plain', 'text'),
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

/** What is late already falls in the first week. */
const cash: Listed = {
  row: CASH + 2,
  column: 0,
  lines: WEEKS,
  of: pour(
    'CASHBYWEEK',
    named(bookName),
    cellOf(seasonName, SEASON.asOf, 1),
    cellOf(seasonName, SEASON.reuse, SEASON.unseen),
  ),
  columns: [
    { header: 'Week from Monday', format: 'text', take: 1 },
    { header: 'Money', format: 'money', take: 2 },
    { header: 'Of it late', format: 'money', take: 3 },
    { header: 'In all', format: 'money', take: 4 },
  ],
  unless: {
    blank: cellOf(seasonName, SEASON.plan.first, 0),
    instead: 'Season plan has no lines yet.',
  },
};
