import { cell, headerCells } from '../cells/answer-cells.ts';
import { answered, type AnsweredList, type Ask, shown, shownFirst } from './answered.ts';
import { dateOfIso } from '../cells/dates.ts';
import {
  at,
  blockOf,
  cellsIn,
  type Formula,
  less,
  pour,
  sumOf,
  unlessBlank,
  unlessFailed,
} from '../cells/formula.ts';
import { listColumn, moreNote, unlessCut } from './listed.ts';
import { countWhere, sumSaying } from '../cells/look-up.ts';
import {
  blank,
  choose,
  given,
  minus,
  over,
  plusCell,
  smallest,
  times,
  value,
} from '../cells/native.ts';
import { seasonName } from '../cells/names.ts';
import { otherBars, otherBeyond, otherBook } from './other-plan.ts';
import { onSeason, seasonColumn, UNPLANNED } from './season-places.ts';
import { barsPlanned } from './season-plan.ts';
import { costOfSupplies, supplyColumns, suppliesBeyond, suppliesHead } from './season-supplies.ts';
import { calendarColumns as on } from './season-work.ts';
import type { CellFormat, StarterCell } from '../cells/sheet.ts';
import type { WhatIfAsked } from './what-if-bar.ts';

const FIRST = 21;
const BUY = { row: 31, lines: 30 } as const;
const from = supplyColumns;
const supplies = answered('otherSupplies');
const calendar = { asPlanned: answered('calendar'), other: answered('otherCalendar') };
/** What finds no room in the lines shown. */
const boughtBeyond = supplies.beyond(BUY.lines, from.material);
/** What POUR.CALENDAR says of bars that find no day. */
const NO_ROOM = 'does not fit';

/** The season as planned beside the season supposed, and what to buy for the latter. */
export function theSeason(asked: WhatIfAsked): StarterCell[] {
  const season = (column: number) => blockOf(seasonName, seasonColumn('supplies', column));
  const bought = (column: number) => cellsIn(listColumn(BUY, column), '$');
  const late = (head: Formula, days: Formula) =>
    unlessFailed(head, countWhere([days, '<', value(0)]));
  const first = (head: Formula, days: Formula) =>
    unlessFailed(head, choose([sumOf(days), '=', value(0)], blank, smallest(days)));
  const lines: readonly (readonly [string, Formula, Formula, CellFormat])[] = [
    ['Bars planned', barsPlanned, unlessCut(otherBeyond, sumOf(otherBars)), 'whole'],
    [
      'Money for supplies',
      costOfSupplies,
      unlessFailed(supplies.head, times(sumOf(supplies.column(from.cost)), dearer(asked.up))),
      'money',
    ],
    [
      'First day to order',
      unlessCut(suppliesBeyond, first(suppliesHead, season(1))),
      unlessCut(boughtBeyond, first(supplies.head, bought(1))),
      'date',
    ],
    [
      'Orders already late',
      unlessCut(suppliesBeyond, late(suppliesHead, season(4))),
      unlessCut(boughtBeyond, late(supplies.head, bought(4))),
      'whole',
    ],
    [
      'Minutes of work that find a day',
      work(calendar.asPlanned, (list) =>
        sumSaying(list.column(on.date), '-', list.column(on.minutes)),
      ),
      work(calendar.other, (list) => sumSaying(list.column(on.date), '-', list.column(on.minutes))),
      'whole',
    ],
    [
      'Bars that find no day',
      work(calendar.asPlanned, (list) =>
        sumSaying(list.column(on.task), NO_ROOM, list.column(on.bars)),
      ),
      work(calendar.other, (list) =>
        sumSaying(list.column(on.task), NO_ROOM, list.column(on.bars)),
      ),
      'whole',
    ],
  ];
  return [
    ...buyLines(asked),
    cell(FIRST - 2, 0, 'The season', 'heading'),
    ...headerCells(FIRST - 1, 1, [
      ['As on Season', 'money'],
      ['What if', 'money'],
      ['Difference', 'money'],
    ]),
    ...lines.flatMap(([name, now, then, format], index) => {
      const row = FIRST + index;
      const difference: CellFormat = format === 'date' ? 'whole' : format;
      return [
        cell(row, 0, name, 'label'),
        cell(row, 1, now, 'plain', format),
        cell(row, 2, then, 'strong', format),
        cell(row, 3, less(at(row, 2), at(row, 1)), 'plain', difference),
      ];
    }),
  ];
}

/** A figure of a whole calendar, which fails with it. */
const work = (list: AnsweredList, figure: (list: AnsweredList) => Formula): Formula =>
  unlessFailed(list.head, figure(list));

/** What prices rise to. */
const dearer = (up: Formula): Formula => plusCell(value(1), over(up, value(100)));

/** What to buy for the plan supposed: dearer, and to be ordered sooner by the days that suppliers are late. */
function buyLines({ today, up, late }: WhatIfAsked): StarterCell[] {
  return [
    cell(BUY.row - 2, 0, 'What to buy then', 'heading'),
    cell(
      BUY.row - 2,
      1,
      moreNote(boughtBeyond, 'put POUR.SUPPLIES on a sheet of its own.'),
      'note',
    ),
    ...headerCells(BUY.row - 1, 0, [
      ['Material', 'text'],
      ['Order by', 'date'],
      ['Packs', 'whole'],
      ['Cost', 'money'],
      ['Days to order', 'whole'],
    ]),
    ...Array.from({ length: BUY.lines }, (_, index) => {
      const row = BUY.row + index;
      const day = at(row, 1);
      const line = (column: number, as?: (cell: Formula) => Formula) =>
        shown(supplies, index + 1, column, as);
      const name =
        index === 0 ? shownFirst(supplies, from.material, UNPLANNED) : line(from.material);
      const sooner = (iso: Formula) => unlessBlank(iso, '', minus(dateOfIso(iso), late));
      const cost = (price: Formula) => given([price], times(price, dearer(up)));
      return [
        cell(row, 0, name, 'plain', 'text'),
        cell(row, 1, line(from.orderBy, sooner), 'plain', 'date'),
        cell(row, 2, line(from.packs), 'strong', 'whole'),
        cell(row, 3, line(from.cost, cost), 'plain', 'money'),
        cell(row, 4, given([day, today], minus(day, today)), 'plain', 'whole'),
      ];
    }).flat(),
  ];
}

/** Nothing is asked while nothing is planned. */
const unlessUnplanned = (question: Formula): Formula =>
  choose([sumOf(otherBars), '=', value(0)], blank, question);

/** `from` is the What if sheet's day, as another sheet names it. */
export const otherAsks = (from: Formula): readonly Ask[] => [
  { list: supplies, of: unlessUnplanned(pour('SUPPLIES', otherBook, from, onSeason.reuse)) },
  { list: calendar.other, of: unlessUnplanned(pour('CALENDAR', otherBook, from)) },
];
