import { cell } from './answer-cells.ts';
import { at, type Formula, unlessBlank } from './formula.ts';
import { blank, choose, pick, unlessError, value } from './native.ts';
import type { CellFormat, StarterCell } from './sheet.ts';

export interface Listed {
  /** Where the first line stands; its header is written above it. */
  readonly row: number;
  readonly column: number;
  readonly lines: number;
  /** What would spill, headers first. */
  readonly of: Formula;
  /** A header and a format for each column shown; `take` is its column in the answer, from 1. */
  readonly columns: readonly ListedColumn[];
  /** A cell that must be filled in, and what stands in the first line until then. */
  readonly unless?: { readonly blank: Formula; readonly instead: string };
}

export interface ListedColumn {
  readonly header: string;
  readonly format: CellFormat;
  readonly take: number;
  /** What is made of the cell, where it is not shown as it came. */
  readonly as?: (asked: Formula) => Formula;
}

/**
 * A list cell by cell instead of as one spill: LibreOffice keeps the last values of such cells where
 * it shows an error for a spill, and charts may draw from them. A cell asks only where its line has
 * something to show. The first line lets an error through, so that the maker sees it.
 */
export function listed({ row, column, lines, of, columns, unless }: Listed): StarterCell[] {
  const headers = columns.map(({ header, format }, right) =>
    cell(row - 1, column + right, header, 'header', format),
  );
  const body = Array.from({ length: lines }, (_, down) =>
    columns.map(({ format, take, as = asIs }, right) => {
      const asked = as(pick(of, down + 2, take));
      const holds =
        right > 0
          ? unlessBlank(at(row + down, column), '', unlessError(asked, blank))
          : down > 0
            ? unlessError(asked, blank)
            : unless === undefined
              ? asked
              : unlessBlank(unless.blank, unless.instead, asked);
      return cell(row + down, column + right, holds, 'plain', format);
    }),
  );
  return [...headers, ...body.flat()];
}

const asIs = (asked: Formula): Formula => asked;

/** Says so where there is more than a list has room for: `beyond` is the first that found none. */
export const moreNote = (beyond: Formula, sentence: string): Formula =>
  unlessError(choose([beyond, '<>', blank], value(sentence), blank), blank);

/** The cells of one column of a list, as values to look through or draw. */
export const columnOf = ({ row, lines }: Pick<Listed, 'row' | 'lines'>, column: number) => ({
  startRow: row,
  startColumn: column,
  endRow: row + lines - 1,
  endColumn: column,
});
