import { compareNames } from '../../domain/kernel/names.ts';
import { findTables } from '../find-tables.ts';
import type { TableData } from '../port.ts';
import { tableKinds, tables } from '../schema.ts';
import { type ComparedTables, compareTables, type MergeConflict } from './compare-tables.ts';
import { namedRows } from './table-groups.ts';
import { cellOf } from './table-keys.ts';

export interface MergedCopies {
  /** Every table of either copy, with the rows of both, in order of their ids. */
  readonly tables: readonly TableData[];
  readonly conflicts: readonly MergeConflict[];
}

/**
 * Brings two copies of a workbook together: the union of each table's rows by id, of recipes and
 * designs by name. Where both have one and it differs, one version is kept and both are reported.
 * Neither the order of the two copies nor merging again changes the result.
 */
export function mergeCopies(one: readonly TableData[], other: readonly TableData[]): MergedCopies {
  const compared = compareCopies(one, other);
  return {
    tables: compared.map(mergedTable),
    conflicts: compared.flatMap(({ conflicts }) => conflicts),
  };
}

/** Every table of either copy, compared. */
export function compareCopies(
  one: readonly TableData[],
  other: readonly TableData[],
): ComparedTables[] {
  const [first, second] = [findTables(one), findTables(other)];
  return tableKinds
    .filter((kind) => first.has(kind) || second.has(kind))
    .map((kind) => compareTables(kind, first.get(kind), second.get(kind)));
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
