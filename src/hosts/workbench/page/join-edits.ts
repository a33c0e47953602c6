import type { SheetEdits } from '../../../xlsx/image.ts';

/** Two lots of edits as one: where both write a cell or a table, the later one stands. */
export function joinEdits(
  first: readonly SheetEdits[],
  later: readonly SheetEdits[],
): readonly SheetEdits[] {
  const names = new Set([...first, ...later].map(({ sheet }) => sheet));
  return [...names].map((sheet) => {
    const parts = [...first, ...later].filter((edits) => edits.sheet === sheet);
    return {
      sheet,
      cells: lastOf(
        parts.flatMap(({ cells }) => cells),
        cellKey,
      ),
      tables: lastOf(
        parts.flatMap(({ tables }) => tables),
        ({ name }) => name,
      ),
    };
  });
}

const cellKey = ({ row, column }: { readonly row: number; readonly column: number }): string =>
  `${String(row)}!${String(column)}`;

const lastOf = <T>(all: readonly T[], keyOf: (one: T) => string): readonly T[] => [
  ...new Map(all.map((one) => [keyOf(one), one])).values(),
];
