import { parseCell } from '../address.ts';
import type { NewTable, NewWorkbook } from './new-workbook.ts';

/** Throws when a description breaks the format's rules on names; such a file would open as damaged. */
export function checkNewWorkbook(book: NewWorkbook): void {
  const sheets = book.sheets.map((sheet) => sheet.name);
  for (const name of sheets) {
    if (!/^(?!')[^[\]:*?/\\]{1,31}(?<!')$/.test(name))
      throw new Error(`"${name}" is no sheet name`);
  }
  refuseRepeats('sheet', sheets);
  if (book.sheets.every((sheet) => sheet.hidden)) throw new Error('No sheet is visible');
  const tables = book.sheets.flatMap((sheet) => sheet.tables ?? []);
  const names = [
    ...tables.map((table) => table.name),
    ...(book.names ?? []).map(({ name }) => name),
  ];
  for (const name of names) {
    if (!/^[A-Za-z_][A-Za-z0-9_.]{0,254}$/.test(name) || parseCell(name)) {
      throw new Error(`"${name}" can name neither a table nor a range`);
    }
  }
  refuseRepeats('table or range', names);
  tables.forEach(checkHeaders);
}

function checkHeaders(table: NewTable): void {
  const headers = table.columns.map((column) => column.header);
  if (headers.length === 0 || headers.includes('')) throw new Error(`${table.name} lacks a header`);
  refuseRepeats(`column of ${table.name}`, headers);
}

function refuseRepeats(what: string, names: readonly string[]): void {
  const seen = new Set<string>();
  for (const name of names.map((each) => each.toLowerCase())) {
    if (seen.has(name)) throw new Error(`Two things are named "${name}" (${what})`);
    seen.add(name);
  }
}
