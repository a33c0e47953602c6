import { cell, headerCells } from './answer-cells.ts';
import { dateOfIso } from './dates.ts';
import {
  at,
  blockOf,
  cellOf,
  cellsIn,
  type Formula,
  less,
  pour,
  sumOf,
  unlessBlank,
} from './formula.ts';
import { columnOf } from './listed.ts';
import { countWhere, sumSaying } from './look-up.ts';
import {
  blank,
  choose,
  given,
  minus,
  over,
  pick,
  plus,
  smallest,
  times,
  unlessError,
  value,
} from './native.ts';
import { seasonName } from './names.ts';
import { otherBars, otherBook } from './other-plan.ts';
import { SEASON, seasonColumn } from './season-places.ts';
import type { CellFormat, StarterCell } from './sheet.ts';
import type { WhatIfAsked } from './what-if-bar.ts';

const FIRST = 21;
const BUY = { row: 31, lines: 30 } as const;
/** The days to work of the other plan, worked with but not seen. */
const WORK = { row: 6, lines: 60 } as const;
const WORK_COLUMN = 22;
const ISO = 9;
/** What POUR.CALENDAR says of bars that find no day. */
const NO_ROOM = 'does not fit';

/** The season as planned beside the season supposed, and what to buy for the latter. */
export function theSeason(asked: WhatIfAsked): StarterCell[] {
  const season = (part: 'plan' | 'supplies' | 'work', column: number) =>
    blockOf(seasonName, seasonColumn(part, column));
  const bought = (column: number) => cellsIn(columnOf(BUY, column), '$');
  const work = (right: number) => cellsIn(columnOf(WORK, WORK_COLUMN + right), '$');
  const lines: readonly (readonly [string, Formula, Formula, CellFormat])[] = [
    ['Bars planned', sumOf(season('plan', 2)), sumOf(otherBars), 'whole'],
    ['Money for supplies', sumOf(season('supplies', 6)), sumOf(bought(3)), 'money'],
    ['First day to order', smallest(season('supplies', 1)), smallest(bought(1)), 'date'],
    [
      'Orders already late',
      countWhere([season('supplies', 4), '<', value(0)]),
      countWhere([bought(4), '<', value(0)]),
      'whole',
    ],
    [
      'Minutes of work that find a day',
      dated(season('work', 3), season('work', 1)),
      sumSaying(work(0), '-', work(3)),
      'whole',
    ],
    [
      'Bars that find no day',
      sumSaying(season('work', 4), NO_ROOM, season('work', 2)),
      sumSaying(work(1), NO_ROOM, work(2)),
      'whole',
    ],
  ];
  return [
    ...buyLines(asked),
    ...workLines(asked),
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

/** Numbers added up that stand beside a day. */
const dated = (numbers: Formula, days: Formula): Formula => ({
  text: `SUMIF(${days.text},">0",${numbers.text})`,
  work: (from) => {
    const [dates, found] = [days.work(from), numbers.work(from)].map((answer) =>
      (answer as readonly (readonly unknown[])[]).flat(),
    );
    return (found ?? [])
      .filter((_, row) => typeof dates?.[row] === 'number')
      .filter((cell) => typeof cell === 'number')
      .reduce((a, b) => a + b, 0);
  },
});

/** What to buy for the plan supposed: dearer, and to be ordered sooner by the days that suppliers are late. */
function buyLines({ from, today, up, late }: WhatIfAsked): StarterCell[] {
  const reuse = cellOf(seasonName, SEASON.reuse, SEASON.unseen);
  const list = pour('SUPPLIES', otherBook, from, reuse);
  const dearer = plus(value(1), over(up, value(100)));
  return [
    cell(BUY.row - 2, 0, 'What to buy then', 'heading'),
    ...headerCells(BUY.row - 1, 0, [
      ['Material', 'text'],
      ['Order by', 'date'],
      ['Packs', 'whole'],
      ['Cost', 'money'],
      ['Days to order', 'whole'],
    ]),
    ...Array.from({ length: BUY.lines }, (_, index) => {
      const row = BUY.row + index;
      const line = (column: number) => pick(list, index + 2, column);
      const [name, iso, day] = [at(row, 0), at(row, ISO), at(row, 1)];
      const rest = (column: number) => unlessBlank(name, '', unlessError(line(column), blank));
      const cost = unlessBlank(name, '', unlessError(times(line(7), dearer), blank));
      const ordered = dateOfIso(iso);
      return [
        cell(
          row,
          0,
          index === 0 ? orUnplanned(line(1)) : unlessError(line(1), blank),
          'plain',
          'text',
        ),
        cell(row, ISO, rest(6), 'plain', 'unseen'),
        cell(row, 1, choose([iso, '=', blank], blank, minus(ordered, late)), 'plain', 'date'),
        cell(row, 2, rest(5), 'strong', 'whole'),
        cell(row, 3, cost, 'plain', 'money'),
        cell(row, 4, given([day, today], minus(day, today)), 'plain', 'whole'),
      ];
    }).flat(),
  ];
}

const orUnplanned = (line: Formula): Formula =>
  choose([sumOf(otherBars), '=', value(0)], value('Season plan has no lines yet.'), line);

/** The hidden list: the day as text, the task, bars and minutes of each line of POUR.CALENDAR. */
function workLines({ from }: WhatIfAsked): StarterCell[] {
  const list = pour('CALENDAR', otherBook, from);
  return Array.from({ length: WORK.lines }, (_, index) => {
    const row = WORK.row + index;
    const line = (column: number) => unlessError(pick(list, index + 2, column), blank);
    const task = at(row, WORK_COLUMN + 1);
    const rest = (right: number, column: number) =>
      cell(row, WORK_COLUMN + right, unlessBlank(task, '', line(column)), 'plain', 'unseen');
    return [
      cell(row, WORK_COLUMN + 1, line(2), 'plain', 'unseen'),
      rest(0, 1),
      rest(2, 4),
      rest(3, 5),
    ];
  }).flat();
}
