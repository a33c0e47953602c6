/**
 * A new workbook in plain words, for `writeWorkbook`. Rows and columns count from 0; ranges are
 * inclusive; colours are "#RRGGBB". Everything optional may be left out.
 */
import type { Cell } from '../../workbook/port.ts';
import type { RangeImage } from '../image.ts';
import type { NewChart } from './new-chart.ts';

export interface NewWorkbook {
  readonly sheets: readonly NewSheet[];
  readonly names?: readonly NewName[];
  /** The sheet in front when the file opens; the first visible one unless told. */
  readonly activeSheet?: string;
  /** The font of every cell that names none; Calibri 11 unless told. */
  readonly font?: { readonly name: string; readonly size: number };
  readonly title?: string;
}

/** A defined name: a range of one sheet. */
export interface NewName {
  readonly name: string;
  readonly sheet: string;
  readonly range: RangeImage;
}

export interface NewSheet {
  readonly name: string;
  readonly hidden?: boolean;
  readonly tabColor?: string;
  /** Widths in characters by column; others keep the default. */
  readonly columnWidths?: Readonly<Record<number, number>>;
  /** Heights in points by row; others fit their text. */
  readonly rowHeights?: Readonly<Record<number, number>>;
  readonly frozenRows?: number;
  readonly frozenColumns?: number;
  /** False hides the grid lines. */
  readonly gridLines?: boolean;
  readonly cells?: readonly NewCell[];
  readonly tables?: readonly NewTable[];
  readonly merges?: readonly RangeImage[];
  readonly validations?: readonly NewValidation[];
  readonly highlights?: readonly NewHighlight[];
  readonly charts?: readonly NewChart[];
  readonly print?: NewPrint;
}

export interface NewCell {
  readonly row: number;
  readonly column: number;
  /** The value, or for a formula its result now; "" with a style is an empty styled cell. */
  readonly value: Cell;
  /** As a person types it: "=POUR.BOOK(Lots[[#Headers],[#Data]])". Text beginning with "=" in `value` stays text. */
  readonly formula?: string;
  /** For a formula whose result fills more cells: all its rows, its own cell first. */
  readonly spill?: readonly (readonly Cell[])[];
  readonly style?: NewStyle;
}

export interface NewStyle {
  /** Such as "#,##0.00", "0.0 %" or "yyyy-mm-dd"; General unless told. */
  readonly numberFormat?: string;
  readonly bold?: boolean;
  readonly italic?: boolean;
  readonly fontSize?: number;
  readonly color?: string;
  readonly fill?: string;
  readonly horizontal?: 'left' | 'center' | 'right';
  readonly vertical?: 'top' | 'center' | 'bottom';
  readonly wrap?: boolean;
  readonly indent?: number;
  /** A thin line of this colour below, or around. */
  readonly lineBelow?: string;
  readonly lineAround?: string;
}

/** A true table; its first cell is the header of its first column. A table without rows gets a blank one. */
export interface NewTable {
  readonly name: string;
  readonly row: number;
  readonly column: number;
  readonly columns: readonly NewTableColumn[];
  readonly rows: readonly (readonly NewTableCell[])[];
  /** A built-in table style such as "TableStyleLight9"; "TableStyleLight1" unless told. */
  readonly tableStyle?: string;
  readonly headerStyle?: NewStyle;
  /** False leaves the filter buttons out. */
  readonly filter?: boolean;
}

export interface NewTableColumn {
  readonly header: string;
  readonly style?: NewStyle;
  /** Characters; sets the sheet column's width. */
  readonly width?: number;
}

/** A value, or a formula with its result now (one cell: tables hold no spill). */
export type NewTableCell = Cell | { readonly formula: string; readonly value: Cell };

/** A drop-down on a range. */
export interface NewValidation {
  readonly range: RangeImage;
  /** Texts (no commas in them), or a source such as '=INDIRECT("Materials[Material]")'. */
  readonly choices: readonly string[] | { readonly source: string };
  /** Refuse other values (default), or only warn. */
  readonly strict?: boolean;
  /** What the spreadsheet says of another value, in at most 255 letters; its own words unless told. */
  readonly says?: string;
  readonly prompt?: { readonly title: string; readonly text: string };
}

/** Colours a range's cells where a formula, written for its first cell, is true. */
export interface NewHighlight {
  readonly range: RangeImage;
  readonly formula: string;
  readonly fill?: string;
  readonly color?: string;
  readonly bold?: boolean;
}

/** How a sheet prints: always fitted to one page wide. */
export interface NewPrint {
  readonly landscape?: boolean;
  /** Rows repeated on each page: the first `repeatRows` of the sheet. */
  readonly repeatRows?: number;
  readonly area?: RangeImage;
}
