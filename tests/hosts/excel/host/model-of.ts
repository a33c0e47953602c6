import type { Cell } from '../../../../src/workbook/port.ts';
import type { Tables } from '../../../support/small-book.ts';
import { WorkbookModel } from './workbook-model.ts';

/** The workbook of some tables, each on a sheet of its own. */
export function modelOf(tables: Tables): WorkbookModel {
  const model = new WorkbookModel();
  for (const [name, [headers = [], ...rows]] of Object.entries(tables)) {
    model.addTable(name, headers.map(String), rows);
  }
  return model;
}

/** The tables of a workbook, as `Tables`. */
export const tablesOf = (model: WorkbookModel): Tables =>
  Object.fromEntries(
    model.tables.map(({ name, headers, rows }) => [name, [headers, ...rows]] as const),
  );

/**
 * Adds a sheet with the cell named Book and one answer that hangs on it, showing what the file was
 * saved with.
 */
export function withBookCells(
  model: WorkbookModel,
  saved: { readonly handle: string; readonly onHand: number },
): WorkbookModel {
  const sheet = model.sheet('Start');
  const tables = model.tables.map(({ name }) => `${name}[[#Headers],[#Data]]`).join();
  const book = model.calculation.put(sheet, 0, 0, `=POUR.BOOK(${tables})`, saved.handle);
  model.names.set('Book', { sheet, place: book });
  model.calculation.put(sheet, 1, 0, '=POUR.ONHAND("Box",Book)', saved.onHand);
  return model;
}

/** What the two cells show. */
export function bookCells(model: WorkbookModel): { readonly handle: Cell; readonly onHand: Cell } {
  const [[handle = ''] = [], [onHand = ''] = []] = model
    .sheet('Start')
    .values({ row: 0, column: 0, height: 2, width: 1 });
  return { handle, onHand };
}
