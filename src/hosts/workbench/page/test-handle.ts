import type { Worksheet } from '@univerjs/presets';
import type { Cell } from '../../../workbook/port.ts';
import { onShown, type ShownBook } from './shown-books.ts';

/**
 * The grid draws on a canvas, so tests cannot find cells in the page. This is their window on it:
 * it reads, it selects, and it types as a person would; it can do nothing a person could not. A script of its own,
 * which is built beside dist/ and which tests bring along: the page as it is shipped holds none of it.
 */
export interface TestHandle {
  /** The values shown in an A1 range of a sheet, row by row. */
  values(sheet: string, range: string): readonly (readonly Cell[])[];
  /** The formula in a cell, "" when it has none. */
  formula(sheet: string, cell: string): string;
  /** How a cell is shown: its text as formatted, its fill, and its row's height in pixels. */
  look(sheet: string, cell: string): CellLook;
  /** Whether a cell has the corner of one that is not in its list. */
  isMarked(sheet: string, cell: string): Promise<boolean>;
  /** The sentences behind a cell's error. */
  failures(sheet: string, cell: string): readonly string[];
  /** Shows a sheet and selects a cell; typing on the keyboard then goes into it. */
  select(sheet: string, cell: string): void;
  /** Resolves once every formula has answered. */
  settled(): Promise<void>;
}

export interface CellLook {
  readonly text: string;
  readonly fill: string;
  readonly height: number;
}

declare global {
  interface Window {
    pourLedgerWorkbench?: TestHandle;
  }
}

onShown((book) => {
  window.pourLedgerWorkbench = handleOf(book);
});

function handleOf({ api, grid, failures }: ShownBook): TestHandle {
  const rangeOf = (sheet: string, range: string) => {
    const found = api.getActiveWorkbook()?.getSheetByName(sheet);
    if (!found) throw new Error(`There is no sheet ${sheet}.`);
    return { sheet: found, range: found.getRange(range) };
  };
  const placeOf = (sheet: string, cell: string) => {
    const { sheet: found, range } = rangeOf(sheet, cell);
    return { sheetId: found.getSheetId(), row: range.getRow(), column: range.getColumn() };
  };
  return {
    values(sheet, range) {
      const { sheet: found, range: area } = rangeOf(sheet, range);
      return Array.from({ length: area.getHeight() }, (_, row) =>
        Array.from(
          { length: area.getWidth() },
          (__, column) =>
            grid.read({
              sheetId: found.getSheetId(),
              row: area.getRow() + row,
              column: area.getColumn() + column,
            }).value,
        ),
      );
    },
    formula: (sheet, cell) => grid.read(placeOf(sheet, cell)).formula ?? '',
    look(sheet, cell) {
      const { sheet: found, range } = rangeOf(sheet, cell);
      return {
        text: range.getDisplayValue(),
        fill: shownFill(found.getSheet(), range.getRow(), range.getColumn()),
        height: found.getRowHeight(range.getRow()),
      };
    },
    isMarked: async (sheet, cell) =>
      (await rangeOf(sheet, cell).range.getValidatorStatus())[0]?.[0] === 'invalid',
    failures: (sheet, cell) => failures.of(placeOf(sheet, cell)),
    select(sheet, cell) {
      const { sheet: found, range } = rangeOf(sheet, cell);
      api.getActiveWorkbook()?.setActiveSheet(found);
      range.activate();
    },
    settled: () => grid.settled(),
  };
}

/** The fill with highlights in it, which come to a cell only as it is drawn. */
function shownFill(sheet: Worksheet, row: number, column: number): string {
  const cell = sheet.getCell(row, column);
  return (cell && sheet.getComposedCellStyleByCellData(row, column, cell).bg?.rgb) ?? '';
}
