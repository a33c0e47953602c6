import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import type { Cell } from '../../workbook/port.ts';
import { mondayBefore, monthStart } from '../cells/dates.ts';
import { at, blockOf, cellOn, type Formula, unlessFailed } from '../cells/formula.ts';
import { textBeside } from '../cells/look-up.ts';
import { blank, choose, join, plusCell, value } from '../cells/native.ts';
import { seasonName } from '../cells/names.ts';
import { SEASON, seasonColumn } from '../blocks/season-places.ts';
import { WORK_KEY, WORK_WORDS } from '../blocks/season-work.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { widths } from './weigh-sheet.ts';

const MONTH = 3;
const GIVEN = 1;
/** The month shown, worked with but not seen. */
const SHOWN = 7;
const HEAD = 5;
const WEEKS = 6;
const TASKS_OF_A_DAY = 3;
const NOTES = HEAD + 2 * WEEKS + 3;
const noteRows = Array.from({ length: SEASON.notes.lines }, (_, index) => NOTES + index);
const weekdays = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

/** The season's work and fairs as a month to hang on the wall. */
export function calendarSheet(month: Cell): StarterSheet {
  const given = at(MONTH, GIVEN);
  const today = cellOn(seasonName, SEASON.asOf, SEASON.unseen);
  return {
    name: 'Calendar',
    group: 'answers',
    widths: widths([22, 22, 22, 22, 22, 22, 22, 4]),
    heights: Object.fromEntries([
      ...Array.from({ length: WEEKS }, (_, week) => [HEAD + 2 + 2 * week, 58]),
      ...noteRows.map((row) => [row, 30]),
    ]),
    cells: [
      ...titleCells(
        'Calendar',
        'Work of the Season sheet and fairs, day by day. A day shows three tasks; Season lists all.',
      ),
      ...inputCells(MONTH, GIVEN, 'Any day of the month', month, 'date'),
      cell(MONTH, GIVEN + 1, "Blank is the season's own month.", 'aside'),
      cell(
        MONTH,
        SHOWN,
        choose([given, '=', blank], monthStart(today, 0), monthStart(given, 0)),
        'plain',
        'unseen',
      ),
      ...weekdays.map((name, index) => cell(HEAD, index, name, 'header', 'text')),
      ...Array.from({ length: WEEKS * 7 }, (_, index) => dayCells(index)).flat(),
      cell(NOTES - 1, 0, 'To see to, as on Season', 'heading'),
      ...noteRows.map((row, index) =>
        // Joined with nothing, since a reference to an empty cell would show 0.
        cell(row, 0, join(cellOn(seasonName, SEASON.notes.first + index, 0), blank), 'wrapped'),
      ),
    ],
    merges: noteRows.map((row) => ({ startRow: row, startColumn: 0, endRow: row, endColumn: 6 })),
    marks: Array.from({ length: WEEKS }, (_, week) => ({
      range: {
        startRow: HEAD + 1 + 2 * week,
        startColumn: 0,
        endRow: HEAD + 1 + 2 * week,
        endColumn: 6,
      },
      formula: `MONTH(A${String(HEAD + 2 + 2 * week)})<>MONTH($H$${String(MONTH + 1)})`,
      shows: 'repeated' as const,
    })),
    landscape: true,
    prints: { startRow: 0, startColumn: 0, endRow: NOTES + noteRows.length - 1, endColumn: 6 },
  };
}

function dayCells(index: number): StarterCell[] {
  const row = HEAD + 1 + 2 * Math.floor(index / 7);
  const column = index % 7;
  const first = mondayBefore(at(MONTH, SHOWN));
  const date = index === 0 ? first : plusCell(fixedFirst, value(index));
  const day = at(row, column);
  const keys = blockOf(seasonName, seasonColumn('work', WORK_KEY));
  const words = blockOf(seasonName, seasonColumn('work', WORK_WORDS));
  const tasks = Array.from({ length: TASKS_OF_A_DAY }, (_, task) =>
    textBeside(join(day, value(`-${String(task + 1)}`)), keys, words),
  );
  const fair = textBeside(day, columnCells('fairs', 'opens'), columnCells('fairs', 'fair'));
  return [
    cell(row, column, date, 'day', 'dayOfMonth'),
    // Without the work, a day would look free.
    cell(row + 1, column, unlessFailed(firstWork, linesOf(fair, tasks)), 'diary', 'text'),
  ];
}

const firstWork = cellOn(seasonName, SEASON.work.first, 0);
const fixedFirst = { ...at(HEAD + 1, 0), text: `$A$${String(HEAD + 2)}` };

/** A fair's name where there is one, then the tasks, each in a line of its own and no line left blank. */
const linesOf = (fair: Formula, [first, ...others]: readonly Formula[]): Formula => ({
  text: [
    `${fair.text}&IF(OR(${fair.text}="",${first?.text ?? '""'}=""),"",CHAR(10))&${first?.text ?? '""'}`,
    ...others.map(({ text }) => `IF(${text}="","",CHAR(10)&${text})`),
  ].join('&'),
  work: (from) =>
    [fair, ...(first === undefined ? [] : [first]), ...others]
      .map((line) => String(line.work(from)))
      .filter((line) => line !== '')
      .join('\n'),
});
