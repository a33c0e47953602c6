import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import { asOfCells } from './costing-sheet.ts';
import { orToday } from '../cells/dates.ts';
import {
  at,
  cellsIn,
  fixedAt,
  type Formula,
  saysYes,
  sumOf,
  unlessFailed,
} from '../cells/formula.ts';
import { unlessCut } from '../blocks/listed.ts';
import { countWhere } from '../cells/look-up.ts';
import { blank, choose, smallest, value } from '../cells/native.ts';
import { seasonName } from '../cells/names.ts';
import { type SeasonAsked, SEASON, seasonColumn } from '../blocks/season-places.ts';
import { noteAsk, noteCells, noteHeights, noteMark, noteMerges } from '../blocks/season-notes.ts';
import { barsPlanned, planBeyond, planCells } from '../blocks/season-plan.ts';
import {
  costOfSupplies,
  supplyAsk,
  supplyCells,
  suppliesBeyond,
  suppliesHead,
} from '../blocks/season-supplies.ts';
import { minutesOfWork, workAsk, workCells } from '../blocks/season-work.ts';
import type { CellFormat, StarterCell, StarterSheet } from '../cells/sheet.ts';
import { oneCell, widths } from './weigh-sheet.ts';

/** The whole plan in one view: bars to make, what to buy and when, and the days to pour. */
export function seasonSheet(): StarterSheet {
  const asked: SeasonAsked = {
    from: at(SEASON.asOf, 1),
    today: at(SEASON.asOf, SEASON.unseen),
    reuse: at(SEASON.reuse, SEASON.unseen),
  };
  const { supplies } = SEASON;
  return {
    name: seasonName,
    group: 'answers',
    widths: widths([22, 13, 11, 11, 14, 12, 11, 27, 3, 10, 10]),
    cells: [
      ...titleCells(
        'Season',
        'What the plan still asks for: bars to make, what to buy and by when, and the days to pour.',
      ),
      ...asOfCells(SEASON.asOf),
      cell(SEASON.asOf, SEASON.unseen, orToday(SEASON.asOf, 1), 'plain', 'unseen'),
      ...inputCells(SEASON.reuse, 1, 'Use leftovers', 'no', 'text'),
      cell(SEASON.reuse, 2, 'yes melts leftover soap and lays spare tiles first.', 'aside'),
      // In a cell of its own: the workbench's grid hands a comparison over only once.
      cell(SEASON.reuse, SEASON.unseen, saysYes(fixedAt(SEASON.reuse, 1)), 'plain', 'unseen'),
      ...planCells(asked),
      ...noteCells(),
      ...supplyCells(asked),
      ...workCells(),
      ...facts(),
    ],
    asks: [noteAsk, supplyAsk, workAsk],
    heights: noteHeights,
    merges: noteMerges,
    dropDowns: [{ range: oneCell(SEASON.reuse, 1), choices: ['yes', 'no'], strict: true }],
    marks: [
      noteMark,
      {
        range: {
          startRow: supplies.first,
          startColumn: 0,
          endRow: supplies.first + supplies.lines - 1,
          endColumn: 7,
        },
        formula: `N($E${String(supplies.first + 1)})<0`,
        shows: 'short',
      },
    ],
    landscape: false,
    prints: {
      startRow: 0,
      startColumn: 0,
      endRow: SEASON.work.first + SEASON.work.lines - 1,
      endColumn: 7,
    },
  };
}

/** The season in a few figures. */
function facts(): StarterCell[] {
  const of = (part: 'plan' | 'supplies', column: number): Formula =>
    cellsIn(seasonColumn(part, column));
  const days = of('supplies', 4);
  const late = unlessFailed(suppliesHead, countWhere([days, '<', value(0)]));
  const ordered = of('supplies', 1);
  const firstDay = unlessFailed(
    suppliesHead,
    choose([sumOf(ordered), '=', value(0)], blank, smallest(ordered)),
  );
  const left: readonly (readonly [string, Formula, CellFormat])[] = [
    ['Bars planned', barsPlanned, 'whole'],
    ['Bars to make', unlessCut(planBeyond, sumOf(of('plan', 5))), 'whole'],
    ['Minutes of work', minutesOfWork, 'whole'],
  ];
  const right: readonly (readonly [string, Formula, CellFormat])[] = [
    ['Money for supplies', costOfSupplies, 'money'],
    ['First day to order', unlessCut(suppliesBeyond, firstDay), 'date'],
    ['Orders already late', unlessCut(suppliesBeyond, late), 'whole'],
  ];
  return [
    ...left.flatMap(([name, holds, format], index) => [
      cell(SEASON.reuse + 1 + index, 0, name, 'label'),
      cell(SEASON.reuse + 1 + index, 1, holds, 'answer', format),
    ]),
    ...right.flatMap(([name, holds, format], index) => [
      cell(SEASON.late.row - 2 + index, 3, name, 'label'),
      cell(SEASON.late.row - 2 + index, SEASON.late.column, holds, 'answer', format),
    ]),
  ];
}
