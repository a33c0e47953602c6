import { compareNames } from '../../src/domain/kernel/names.ts';
import type { TableData } from '../../src/workbook/port.ts';
import { tables } from '../../src/workbook/schema.ts';
import { compareCopies } from '../../src/workbook/sharing/compare-copies.ts';
import type { ComparedTables, MergeConflict } from '../../src/workbook/sharing/compare-tables.ts';
import { namedRows } from '../../src/workbook/sharing/table-groups.ts';
import { cellOf } from '../../src/workbook/sharing/table-keys.ts';

export interface MergedCopies {
  /** Every table of either copy, with the rows of both, in order of their ids. */
  readonly tables: readonly TableData[];
  readonly conflicts: readonly MergeConflict[];
}

/** What two copies come to by their comparison alone, whichever is the maker's own: the union of all rows. */
export function mergeCopies(one: readonly TableData[], other: readonly TableData[]): MergedCopies {
  const compared = compareCopies(one, other);
  return {
    tables: compared.map(mergedTable),
    conflicts: compared.flatMap(({ conflicts }) => conflicts),
  };
}

function mergedTable({ kind, headers, all }: ComparedTables): TableData {
  const ordered = [...all].sort(([a], [b]) => compareNames(a, b));
  return {
    name: tables[kind].name,
    headers,
    rows: ordered.flatMap(([, group]) =>
      namedRows(group, kind).map((row) => headers.map((header) => cellOf(row, header))),
    ),
  };
}
