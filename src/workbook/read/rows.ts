import { nameKey } from '../../domain/kernel/names.ts';
import { Trouble } from '../column.ts';
import { type RowOf, tables, type TableKind, uniqueColumn } from '../schema.ts';
import type { Findings } from './findings.ts';
import { quoted } from './findings.ts';
import type { RecognisedTable } from './recognise.ts';

export type Rows<K extends TableKind> = readonly RowOf<(typeof tables)[K]>[];

/** Reads every row of a recognised table; blank rows are skipped, each bad cell is one finding. */
export function readRows<K extends TableKind>(
  kind: K,
  table: RecognisedTable | undefined,
  findings: Findings,
): Rows<K> {
  if (table === undefined) return [];
  const { name, columns } = tables[kind];
  const keys = Object.keys(columns);
  const readers = Object.values(columns);
  const positions = keys.map((key) => table.position.get(key) ?? -1);
  const rows: Record<string, unknown>[] = [];
  for (let at = 1; at < table.range.length; at += 1) {
    const cells = table.range[at] ?? [];
    if (cells.every((cell) => cell === '' || (typeof cell === 'string' && cell.trim() === '')))
      continue;
    const row: Record<string, unknown> = { row: at };
    let sound = true;
    for (let i = 0; i < keys.length; i += 1) {
      const value = readers[i]?.read(cells[positions[i] ?? -1] ?? '');
      if (value instanceof Trouble) {
        findings.add(name, at, readers[i]?.header, value.says);
        sound = false;
      } else row[keys[i] ?? ''] = value;
    }
    if (sound) rows.push(row);
    else findings.excuse(name, String(cells[positions[0] ?? -1] ?? ''));
  }
  findRepeats(kind, rows, findings);
  return rows as unknown as Rows<K>;
}

function findRepeats(
  kind: TableKind,
  rows: readonly Record<string, unknown>[],
  findings: Findings,
): void {
  const key = uniqueColumn[kind];
  if (key === undefined) return;
  const { name, columns } = tables[kind];
  const header = Object.entries(columns).find(([column]) => column === key)?.[1].header;
  const firstRow = new Map<string, unknown>();
  for (const row of rows) {
    const id = String(row[key]);
    const first = firstRow.get(nameKey(id));
    if (first === undefined) firstRow.set(nameKey(id), row['row']);
    else {
      findings.add(
        name,
        Number(row['row']),
        header,
        `${quoted(id)} stands in row ${String(first)} already. Each may stand once`,
      );
    }
  }
}
