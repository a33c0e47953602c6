import { nameKey, quoted } from '../../domain/kernel/names.ts';
import { type Column, isBlankIn, readCell, Trouble } from '../column.ts';
import { type RowOf, tables, type TableKind, uniqueColumn } from '../schema.ts';
import { type AmountOfItem, numberToType } from './amounts-in-cells.ts';
import type { Findings } from './findings.ts';
import type { RecognisedTable } from './recognise.ts';

export type Rows<K extends TableKind> = readonly RowOf<(typeof tables)[K]>[];

/** A row of which some cell could not be read, with those that could. */
export interface HalfRow {
  readonly kind: TableKind;
  readonly row: number;
  readonly cells: Readonly<Record<string, unknown>>;
}

/**
 * Reads every row of a recognised table; rows without anything in the table's own columns are
 * skipped, each bad cell is one finding. Rows with a bad cell are kept apart in `halfRows`.
 */
export function readRows<K extends TableKind>(
  kind: K,
  table: RecognisedTable | undefined,
  findings: Findings,
  halfRows: HalfRow[],
  amountOfItem: AmountOfItem,
): Rows<K> {
  if (table === undefined) return [];
  const { name } = tables[kind];
  // A column that the table does not have is blank in every row.
  const keys = Object.keys(table.columns).filter((key) => table.position.has(key));
  const readers = keys.map((key) => table.columns[key] as Column<unknown>);
  const positions = keys.map((key) => table.position.get(key) ?? -1);
  const repeats = new Repeats(kind, findings);
  const rows: Record<string, unknown>[] = [];
  for (let at = 1; at < table.range.length; at += 1) {
    const cells = table.range[at] ?? [];
    if (readers.every((column, i) => isBlankIn(column, cells[positions[i] as number]))) continue;
    const row: Record<string, unknown> = { row: at };
    let sound = true;
    for (let i = 0; i < keys.length; i += 1) {
      const column = readers[i] as Column<unknown>;
      const cell = cells[positions[i] as number];
      const value = readCell(column, cell);
      if (value instanceof Trouble) {
        // The unit may stand in a later column, and be an item's whose row is read later.
        const says = () => numberToType(kind, keys[i] ?? '', cell, row, amountOfItem) ?? value.says;
        findings.add(name, at, column.header, says);
        sound = false;
      } else row[keys[i] as string] = value;
    }
    repeats.look(row, at);
    if (sound) rows.push(row);
    else {
      halfRows.push({ kind, row: at, cells: row });
      findings.excuse(name, String(cells[positions[0] ?? -1] ?? ''));
    }
  }
  return rows as unknown as Rows<K>;
}

/** Rows by the `nameKey` of one of their names, each group in the order of the table. */
export function groupRows<T>(rows: readonly T[], nameOf: (row: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const row of rows) {
    const key = nameKey(nameOf(row));
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return groups;
}

/** Finds ids that stand twice in their table. */
class Repeats {
  private readonly firstRow = new Map<string, number>();
  private readonly key: string | undefined;
  private readonly kind: TableKind;
  private readonly findings: Findings;

  constructor(kind: TableKind, findings: Findings) {
    this.kind = kind;
    this.key = uniqueColumn[kind];
    this.findings = findings;
  }

  look(row: Readonly<Record<string, unknown>>, at: number): void {
    const id = this.key === undefined ? undefined : row[this.key];
    if (typeof id !== 'string') return;
    const key = nameKey(id);
    const first = this.firstRow.get(key);
    if (first === undefined) {
      this.firstRow.set(key, at);
      return;
    }
    const { name, columns } = tables[this.kind];
    const header = Object.entries(columns).find(([column]) => column === this.key)?.[1].header;
    this.findings.add(
      name,
      at,
      header,
      `${quoted(id)} stands in row ${first} already. Each may stand once`,
    );
  }
}
