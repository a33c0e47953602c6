import { ExcelHost } from '../hosts/excel/host/excel-host.ts';
import { modelOf } from '../hosts/excel/host/model-of.ts';
import { officeClient } from '../hosts/excel/host/office-client.ts';
import { open } from '../hosts/excel/host/open.ts';
import { createMemoryPort } from '../support/memory-port.ts';
import { tableData } from '../support/small-book.ts';
import { twice, type WriteTwice } from './write-twice.ts';

/** Tables of plain cells in memory: they hold no formulas, so a formula's value stands for it. */
export const inMemory: WriteTwice = async (tables, _, change) =>
  twice(createMemoryPort(tableData(tables)), change);

/** One page for all: its client script keeps nothing of a workbook once a run is over. */
const page = officeClient(new ExcelHost(modelOf({})));

/** Excel's own client script over a workbook in memory. */
export const inExcel: WriteTwice = async (tables, formulas, change) => {
  const model = modelOf(tables);
  for (const { table: name, row, column, formula } of formulas) {
    const { sheet, body, rows } = model.table(name);
    const value = rows[row]?.[column] ?? '';
    sheet.put(body.row + row, body.column + column, { formula, value });
  }
  return twice(open(model, {}, page).port, change);
};
