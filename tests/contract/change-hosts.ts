import { createBookPort } from '../../src/hosts/workbench/page/book-port.ts';
import { createImageCells } from '../../src/hosts/workbench/page/image-cells.ts';
import { createLiveTables } from '../../src/hosts/workbench/page/live-tables.ts';
import { ExcelHost } from '../hosts/excel/host/excel-host.ts';
import { modelOf } from '../hosts/excel/host/model-of.ts';
import { officeClient } from '../hosts/excel/host/office-client.ts';
import { open } from '../hosts/excel/host/open.ts';
import { createMemoryPort, memoryOf } from '../support/memory-port.ts';
import { tableData } from '../support/small-book.ts';
import { imageOf, takesEverySave } from './case-image.ts';
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

/** The workbench's port over the cells as they were read, before or without its grid. */
export const inReadCells: WriteTwice = async (tables, formulas, change) => {
  const image = imageOf(tables, formulas);
  const sheets = createImageCells(image);
  const port = createBookPort({
    sheets,
    tables: createLiveTables(sheets, image),
    saver: takesEverySave,
    select: () => Promise.resolve(),
    memory: memoryOf(new Map()),
    brokenNames: [],
  });
  return twice(port, change);
};
