import { findTables } from '../find-tables.ts';
import type { TableData } from '../port.ts';
import { tableKinds } from '../schema.ts';
import { type ComparedTables, compareTables } from './compare-tables.ts';

/**
 * Compares every table of either copy of a workbook: rows by id, recipes and designs by name. Where both
 * have one and it differs, one version is kept, and neither the order of the two copies nor comparing
 * again changes which.
 */
export function compareCopies(
  one: readonly TableData[],
  other: readonly TableData[],
): ComparedTables[] {
  const [first, second] = [findTables(one), findTables(other)];
  return tableKinds
    .filter((kind) => first.has(kind) || second.has(kind))
    .map((kind) => compareTables(kind, first.get(kind), second.get(kind)));
}
