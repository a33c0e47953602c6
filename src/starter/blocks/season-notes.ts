import { cell } from '../cells/answer-cells.ts';
import { answered, type Ask, shown } from './answered.ts';
import { fixedAt, type Formula, named, pour, unlessBlank } from '../cells/formula.ts';
import { moreNote } from './listed.ts';
import { blank, choose, join, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import { onSeason, SEASON, UNPLANNED } from './season-places.ts';
import { unlessUnplanned } from './season-plan.ts';
import type { Mark, StarterCell } from '../cells/sheet.ts';

const { first, lines } = SEASON.notes;
const LAST_COLUMN = 7;

/** What POUR.PLANNOTES lists, its columns from 1. */
const from = { about: 1, note: 2 };
const notes = answered('planNotes');

export const noteAsk: Ask = {
  list: notes,
  of: unlessUnplanned(pour('PLANNOTES', named(bookName), onSeason.from, onSeason.reuse)),
};

/** What does not fit and would make it fit, what is missing in the tables, and what is taken for granted. */
export function noteCells(): StarterCell[] {
  return [
    cell(first - 1, 0, 'To see to', 'heading'),
    cell(
      first - 1,
      2,
      moreNote(notes.beyond(lines, from.note), 'put POUR.PLANNOTES on a sheet of its own.'),
      'note',
    ),
    ...Array.from({ length: lines }, (_, index) => {
      const row = first + index;
      const note =
        index === 0
          ? unlessBlank(notes.head, UNPLANNED, orNothing(notes.at(1, from.note)))
          : shown(notes, index + 1, from.note);
      return [
        cell(row, SEASON.unseen, shown(notes, index + 1, from.about), 'plain', 'unseen'),
        cell(row, 0, note, 'wrapped'),
      ];
    }).flat(),
  ];
}

/** Nothing to see to is only said where no order is late either. */
function orNothing(note: Formula): Formula {
  const late = fixedAt(SEASON.late.row, SEASON.late.column);
  const nothing = choose(
    [late, '=', value(0)],
    value('Nothing: the plan fits, and nothing is missing for it.'),
    join(value('The plan fits, yet orders already late: '), late, value('. See What to buy.')),
  );
  return choose([note, '=', blank], nothing, note);
}

/** Each note over the width of the sheet. */
export const noteMerges = Array.from({ length: lines }, (_, index) => ({
  startRow: first + index,
  startColumn: 0,
  endRow: first + index,
  endColumn: LAST_COLUMN,
}));

/** Room for two lines of words. */
export const noteHeights = Object.fromEntries(noteMerges.map(({ startRow }) => [startRow, 30]));

/** What is to be seen to stands out from what is only assumed. */
export const noteMark: Mark = {
  range: { startRow: first, startColumn: 0, endRow: first + lines - 1, endColumn: LAST_COLUMN },
  formula: `AND($J${String(first + 1)}<>"",$J${String(first + 1)}<>"Assumed")`,
  shows: 'short',
};
