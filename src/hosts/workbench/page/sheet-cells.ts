import type { Cell } from '../../../workbook/port.ts';
import type { RangeImage } from '../../../xlsx/image.ts';
import type { CellPlace } from './places.ts';

/** What stands in one cell now. */
export interface Content {
  readonly value: Cell;
  readonly formula?: string;
  /** A spilling formula's rows, its own cell first. */
  readonly spill?: readonly (readonly Cell[])[];
}

/** One value to put into a cell. */
export interface CellWrite extends CellPlace {
  readonly value: Cell;
  /** The row whose look (number format, colours) the cell takes. */
  readonly likeRow?: number;
}

/** The workbook's cells as rows and columns of plain values, whoever holds them: what was read, or the live grid. */
export interface SheetCells {
  /** Whether formulas are worked out here; otherwise they show what they last came to. */
  readonly worksOut: boolean;
  sheetName(sheetId: string): string;
  read(place: CellPlace): Content;
  /** The values of a range, row by row; quicker than cell by cell. */
  values(sheetId: string, range: RangeImage): Cell[][];
  /** Every formula cell that is worked out here. */
  formulas(): readonly CellPlace[];
  /** Whether all cells of the range are blank. */
  isBlank(sheetId: string, range: RangeImage): boolean;
  /** Writes plain values, never formulas, outside the undo history. Returns how to put all back. */
  write(cells: readonly CellWrite[]): () => void;
  /** Gives the cells of a range the look of the row `likeRow`, outside the undo history. */
  takeLook(sheetId: string, range: RangeImage, likeRow: number): void;
  /** Calls back with the cells that change, by whoever's hand; formula results are not reported. */
  onEdit(listener: (cells: readonly CellPlace[]) => void): void;
  /** Resolves once everything written up to now is answered, where formulas are worked out. */
  settled(): Promise<void>;
}
