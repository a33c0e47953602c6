import { cell } from '../cells/answer-cells.ts';
import { type AnsweredList, shown, shownFirst } from './answered.ts';
import type { Formula } from '../cells/formula.ts';
import { blank, choose, join, value } from '../cells/native.ts';
import type { CellFormat, StarterCell } from '../cells/sheet.ts';

export interface Listed {
  /** Where the first line stands; its header is written above it. */
  readonly row: number;
  readonly column: number;
  readonly lines: number;
  readonly of: AnsweredList;
  /** A header and a format for each column shown; `take` is its column in the answer, from 1. */
  readonly columns: readonly ListedColumn[];
  /** What stands in the first line while nothing is asked. */
  readonly instead?: string;
}

export interface ListedColumn {
  readonly header: string;
  readonly format: CellFormat;
  readonly take: number;
  /** What is made of the cell, where it is not shown as it came. */
  readonly as?: (asked: Formula) => Formula;
}

/** A list cell by cell, each looking into the hidden sheet that asks for it. */
export function listed({ row, column, lines, of, columns, instead = '' }: Listed): StarterCell[] {
  const headers = columns.map(({ header, format }, right) =>
    cell(row - 1, column + right, header, 'header', format),
  );
  const body = Array.from({ length: lines }, (_, down) =>
    columns.map(({ format, take, as }, right) => {
      const isFirst = down === 0 && right === 0;
      const holds = isFirst ? shownFirst(of, take, instead) : shown(of, down + 1, take, as);
      return cell(row + down, column + right, holds, 'plain', format);
    }),
  );
  return [...headers, ...body.flat()];
}

/** "and 3 more: …" where so many found no room. */
export const moreNote = (beyond: Formula, where: string): Formula =>
  choose([beyond, '>', value(0)], join(value('and '), beyond, value(` more: ${where}`)), blank);

/** `then`, unless some found no room: what is counted of a part is no answer. */
export const unlessCut = (beyond: Formula, then: Formula): Formula =>
  choose([beyond, '>', value(0)], value('more lines than shown'), then);

/** The cells of one column of a list, as values to look through or draw. */
export const listColumn = ({ row, lines }: Pick<Listed, 'row' | 'lines'>, column: number) => ({
  startRow: row,
  startColumn: column,
  endRow: row + lines - 1,
  endColumn: column,
});
