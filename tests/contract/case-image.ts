import type { Saver } from '../../src/hosts/workbench/page/saver.ts';
import type { Cell } from '../../src/workbook/port.ts';
import type { SheetImage, WorkbookImage } from '../../src/xlsx/image.ts';
import type { Tables } from '../support/small-book.ts';
import type { FormulaAt } from './change-case.ts';

/** Each table on a sheet of its own, as the server hands a workbook over. */
export const imageOf = (tables: Tables, formulas: readonly FormulaAt[]): WorkbookImage => ({
  fileName: 'case.xlsx',
  version: '1',
  styles: [{ numberFormat: 'General', bold: false, italic: false, wrap: false }],
  names: [],
  brokenNames: [],
  notShown: [],
  sheets: Object.entries(tables).map(([name, rows]): SheetImage => {
    const headers = (rows[0] ?? []).map(String);
    const range = {
      startRow: 0,
      startColumn: 0,
      endRow: rows.length - 1,
      endColumn: headers.length - 1,
    };
    return {
      name: `${name} sheet`,
      hidden: false,
      frozenRows: 0,
      frozenColumns: 0,
      columnWidths: {},
      rowHeights: {},
      gridLines: true,
      cells: rows.flatMap((cells, row) =>
        cells.flatMap((cell, column) => cellAt(row, column, cell)),
      ),
      merges: [],
      tables: [{ name, range, headers }],
      validations: [],
      highlights: [],
    };

    function cellAt(row: number, column: number, value: Cell) {
      const formula = formulas.find(
        (one) => one.table === name && one.row === row - 1 && one.column === column,
      )?.formula;
      if (value === '' && formula === undefined) return [];
      return [{ row, column, value, style: 0, ...(formula === undefined ? {} : { formula }) }];
    }
  }),
});

/** A file that takes every save. */
export const takesEverySave: Saver = {
  state: { kind: 'saved' },
  hasUnsaved: false,
  isLate: false,
  onState: () => undefined,
  saveNow: () => Promise.resolve({ kind: 'saved', version: '2' }),
  unsaved: () => [],
  leave: () => undefined,
};
