import { cell, headerCells, inputCells, titleCells } from '../cells/answer-cells.ts';
import { answered } from '../blocks/answered.ts';
import {
  at,
  blockOf,
  cellOn,
  cellsIn,
  type Formula,
  named,
  pour,
  unlessFailed,
} from '../cells/formula.ts';
import { listColumn, type Listed, listed, moreNote, unlessCut } from '../blocks/listed.ts';
import { supplierList } from './lists-sheet.ts';
import { numberBeside, sumWhere, textBeside } from '../cells/look-up.ts';
import { blank, choose, given, join, largestOf, minus, plusCell, value } from '../cells/native.ts';
import { bookName, seasonName } from '../cells/names.ts';
import { onSeason, SEASON, seasonColumn, UNPLANNED } from '../blocks/season-places.ts';
import { unlessUnplanned } from '../blocks/season-plan.ts';
import { suppliesBeyond, suppliesHead } from '../blocks/season-supplies.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { oneCell, widths } from './weigh-sheet.ts';

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
  cellOn(seasonName, SEASON.supplies.first + index, column);

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
      cell(SUPPLIER, TODAY, cellOn(seasonName, SEASON.asOf, SEASON.unseen), 'plain', 'unseen'),
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
          [largestOf(numberCells), '>', value(LINES)],
          join(
            value('and '),
            minus(largestOf(numberCells), value(LINES)),
            value(' more: pick one supplier at a time.'),
          ),
          moreNote(suppliesBeyond, 'Season has room for no more.'),
        ),
        'note',
      ),
      cell(SUPPLIER + 1, 0, 'Money in all', 'label'),
      cell(SUPPLIER + 1, GIVEN, unlessCut(suppliesBeyond, moneyInAll), 'answer', 'money'),
      cell(CASH, 0, 'Money by week, all suppliers', 'heading'),
      ...listed(cash),
      cell(
        CASH,
        2,
        moreNote(weeks.beyond(WEEKS), 'put POUR.CASHBYWEEK on a sheet of its own.'),
        'note',
      ),
    ],
    asks: [
      {
        list: weeks,
        of: unlessUnplanned(pour('CASHBYWEEK', named(bookName), onSeason.from, onSeason.reuse)),
      },
    ],
    marks: [
      {
        range: { startRow: FIRST, startColumn: 0, endRow: FIRST + LINES - 1, endColumn: 7 },
        formula: `AND(N($F${String(FIRST + 1)})>0,N($F${String(FIRST + 1)})<$K$${String(SUPPLIER + 1)})`,
        shows: 'short',
      },
    ],
    dropDowns: [
      { range: oneCell(SUPPLIER, GIVEN), choices: { source: supplierList }, strict: false },
    ],
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
          along: listColumn(cash, 0),
          values: listColumn(cash, 1 + index),
        })),
      },
    ],
    landscape: false,
    prints: { startRow: 0, startColumn: 0, endRow: CASH + WEEKS + 3, endColumn: 7 },
  };
}

const numberCells: Formula = cellsIn(
  {
    startRow: FIRST,
    startColumn: NUMBER,
    endRow: FIRST + SEASON.supplies.lines - 1,
    endColumn: NUMBER,
  },
  '$',
);

/** The money of every line of Season that belongs on the list, whether or not it finds room here. */
const moneyInAll: Formula = unlessFailed(
  suppliesHead,
  sumWhere(season(6), [numberCells, '>=', value(1)]),
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
        : largestOf(
            cellsIn({ startRow: FIRST, startColumn: NUMBER, endRow: row - 1, endColumn: NUMBER }),
          );
    const next = plusCell(before, value(1));
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
  const key = value(index + 1);
  // Without Season's list none of its lines has a number, and nothing would seem to be needed.
  const unlessLost = (then: Formula): Formula =>
    index === 0 ? unlessFailed(suppliesHead, then) : then;
  const text = (column: number) => unlessLost(textBeside(key, numberCells, season(column)));
  const number = (column: number) => unlessLost(numberBeside(key, numberCells, season(column)));
  const materials = columnCells('materials', 'material');
  const orderBy = at(row, 5);
  const tick = choose([orderBy, '<', at(SUPPLIER, TODAY)], value('☐ late'), value('☐'));
  return [
    cell(row, 0, text(0), 'plain', 'text'),
    cell(row, 2, number(5), 'strong', 'whole'),
    cell(
      row,
      3,
      numberBeside(name, materials, columnCells('materials', 'packSize')),
      'plain',
      'grams',
    ),
    cell(row, 4, textBeside(name, materials, columnCells('materials', 'unit')), 'plain', 'text'),
    cell(row, 5, number(1), 'plain', 'date'),
    cell(row, 1, given([orderBy], tick), 'plain', 'text'),
    cell(row, 6, number(6), 'plain', 'money'),
    cell(row, 7, text(7), 'plain', 'text'),
  ];
}

const weeks = answered('cashByWeek');

/** What is late already falls in the first week. */
const cash: Listed = {
  row: CASH + 2,
  column: 0,
  lines: WEEKS,
  of: weeks,
  columns: [
    { header: 'Week from Monday', format: 'text', take: 1 },
    { header: 'Money', format: 'money', take: 2 },
    { header: 'Of it late', format: 'money', take: 3 },
    { header: 'In all', format: 'money', take: 4 },
  ],
  instead: UNPLANNED,
};
