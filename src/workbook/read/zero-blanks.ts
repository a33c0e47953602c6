import { type Column, isBlank } from '../column.ts';
import { type TableKind, tables } from '../schema.ts';
import type { RecognisedTable } from './recognise.ts';

/**
 * The same tables, read as their host hands blank cells over. Excel may hand them over as 0: then there is a 0 where
 * none can be meant, and no blank cell beside it. In such tables a 0 is blank in every column: a price, a limit or
 * lead days left open must not count as nothing.
 */
export function asHandedOver(given: readonly RecognisedTable[]): readonly RecognisedTable[] {
  const signs = given.map(signOf);
  if (!signs.includes('zeros for blanks')) return given;
  return given.map((table, at) =>
    signs[at] === 'blanks'
      ? table
      : { ...table, columns: withBlankZeros(table.kind), hasZerosForBlanks: true },
  );
}

/** What a table shows of its host: a blank cell, or else a 0 where only a blank can be meant. */
function signOf({ position, columns, range }: RecognisedTable) {
  const places = [...position].map(([key, at]) => ({ at, column: columns[key] }));
  let sign: 'blanks' | 'zeros for blanks' | 'neither' = 'neither';
  for (let row = 1; row < range.length; row += 1) {
    const cells = range[row] ?? [];
    for (const { at, column } of places) {
      const cell = cells[at];
      if (isBlank(cell)) return 'blanks';
      if (cell === 0 && column?.zero === 'never meant') sign = 'zeros for blanks';
    }
  }
  return sign;
}

const made = new Map<TableKind, Readonly<Record<string, Column<unknown>>>>();

/** A table's columns, in each of which a 0 is blank. Made once, so that the same table is read the same way. */
function withBlankZeros(kind: TableKind): Readonly<Record<string, Column<unknown>>> {
  const known = made.get(kind);
  if (known !== undefined) return known;
  const columns = Object.fromEntries(
    Object.entries<Column<unknown>>(tables[kind].columns).map(([key, column]) => [
      key,
      column.zero === 'meant' ? { ...column, zero: 'as blank' as const } : column,
    ]),
  );
  made.set(kind, columns);
  return columns;
}
