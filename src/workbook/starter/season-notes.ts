import { cell } from './answer-cells.ts';
import { at, type Formula, named, pour, unlessBlank } from './formula.ts';
import { moreNote } from './listed.ts';
import { blank, pick, unlessError } from './native.ts';
import { bookName } from './names.ts';
import { SEASON, type SeasonAsked } from './season-places.ts';
import { firstOrUnplanned } from './season-plan.ts';
import type { Mark, StarterCell } from './sheet.ts';

const { first, lines } = SEASON.notes;
const LAST_COLUMN = 7;

/** What POUR.PLANNOTES lists, its columns from 1. */
const from = { about: 1, note: 2 };

/** What does not fit and would make it fit, what is missing in the tables, and what is taken for granted. */
export function noteCells({ from: day, reuse }: SeasonAsked): StarterCell[] {
  const list = pour('PLANNOTES', named(bookName), day, reuse);
  const line = (row: number, column: number): Formula =>
    unlessError(pick(list, row, column), blank);
  return [
    cell(first - 1, 0, 'To see to', 'heading'),
    cell(
      first - 1,
      2,
      moreNote(
        pick(list, lines + 2, from.about),
        'More than these: put POUR.PLANNOTES on a sheet of its own.',
      ),
      'note',
    ),
    ...Array.from({ length: lines }, (_, index) => {
      const row = first + index;
      const about = at(row, SEASON.unseen);
      const note = unlessBlank(
        about,
        index === 0 ? 'Nothing: the plan fits, and nothing is missing for it.' : '',
        line(index + 2, from.note),
      );
      return [
        cell(row, SEASON.unseen, line(index + 2, from.about), 'plain', 'unseen'),
        cell(row, 0, index === 0 ? firstOrUnplanned(note) : note, 'wrapped'),
      ];
    }).flat(),
  ];
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
