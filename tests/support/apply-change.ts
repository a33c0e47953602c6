import type { Cell, Change } from '../../src/workbook/port.ts';
import { clearingOf } from '../../src/workbook/removal.ts';
import type { Tables } from './small-book.ts';

/**
 * A change as a host must apply it, over plain tables: rows are added once by their id, cells are set
 * in the one row that has the id. The smallest thing that obeys src/workbook/port.ts.
 */
export function applyChange(tables: Tables, { appends, updates, removals = [] }: Change): Tables {
  const next: Record<string, Cell[][]> = Object.fromEntries(
    Object.entries(tables).map(([name, range]) => [name, range.map((row) => [...row])]),
  );
  for (const { table, idColumn, rows } of appends) {
    const range = known(next, table);
    const headers = (range[0] ?? []).map(String);
    const at = headers.indexOf(idColumn);
    const ids = new Set(range.slice(1).map((row) => row[at]));
    for (const row of rows) {
      if (ids.has(row[idColumn])) continue;
      for (const header of Object.keys(row)) {
        if (!headers.includes(header)) throw new Error(`${table} has no column ${header}.`);
      }
      range.push(headers.map((header) => row[header] ?? ''));
    }
  }
  for (const { table, idColumn, id, set } of [...updates, ...removals.map(clearingOf)]) {
    const range = known(next, table);
    const headers = (range[0] ?? []).map(String);
    const row = range.slice(1).find((cells) => cells[headers.indexOf(idColumn)] === id);
    if (row === undefined) throw new Error(`${table} has no row ${id}.`);
    for (const [header, cell] of Object.entries(set)) row[headers.indexOf(header)] = cell;
  }
  return next;
}

function known(tables: Record<string, Cell[][]>, name: string): Cell[][] {
  const range = tables[name];
  if (range === undefined) throw new Error(`There is no table ${name}.`);
  return range;
}
