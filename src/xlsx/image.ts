/**
 * A workbook as plain data: what the workbench's page shows and what it asks the server to save.
 * Rows and columns count from 0; ranges are inclusive. Knows nothing of soap.
 */
import type { Cell } from '../workbook/port.ts';

export interface RangeImage {
  readonly startRow: number;
  readonly startColumn: number;
  readonly endRow: number;
  readonly endColumn: number;
}

export interface CellImage {
  readonly row: number;
  readonly column: number;
  /** The value, or for a formula its cached value; an error shows as its text ("#N/A"). */
  readonly value: Cell;
  /** The formula as a person types it, with "=" and "POUR.NAME" (not the stored `_xldudf_` form). */
  readonly formula?: string;
  /**
   * For a formula whose result spills: the range its cached result fills, its own cell first. The
   * other cells of that range are not listed in `cells`: the page computes them afresh.
   */
  readonly spill?: RangeImage;
  /** Index into `WorkbookImage.styles`. */
  readonly style: number;
}

export interface StyleImage {
  readonly numberFormat: string;
  readonly bold: boolean;
  readonly italic: boolean;
  readonly fontSize?: number;
  /** "#RRGGBB" */
  readonly color?: string;
  readonly fill?: string;
  readonly horizontal?: 'left' | 'center' | 'right';
  readonly vertical?: 'top' | 'center' | 'bottom';
  /** Steps that the text keeps off its side. */
  readonly indent?: number;
  readonly lines?: LinesImage;
  readonly wrap: boolean;
}

/** Lines around a cell by side, "#RRGGBB". */
export interface LinesImage {
  readonly left?: string;
  readonly right?: string;
  readonly top?: string;
  readonly bottom?: string;
}

export interface TableImage {
  readonly name: string;
  /** Header row included. */
  readonly range: RangeImage;
  readonly headers: readonly string[];
}

/** A drop-down of allowed texts. */
export interface ListValidationImage {
  readonly range: RangeImage;
  /** Either literal choices or a reference such as "=Materials[Material]" resolved to cells. */
  readonly choices: readonly string[] | { readonly sheet: string; readonly range: RangeImage };
}

/** A look that cells of the ranges take where a formula is true. */
export interface HighlightImage {
  readonly ranges: readonly RangeImage[];
  /** As a person types it, written for the first cell of the ranges. */
  readonly formula: string;
  readonly look: HighlightLook;
}

export interface HighlightLook {
  readonly bold: boolean;
  /** "#RRGGBB" */
  readonly color?: string;
  readonly fill?: string;
}

export interface SheetImage {
  readonly name: string;
  readonly hidden: boolean;
  readonly frozenRows: number;
  readonly frozenColumns: number;
  /** Pixels by column index, where set. */
  readonly columnWidths: Readonly<Record<number, number>>;
  /** Pixels by row index where someone set them, 0 for a hidden row; others fit their text. */
  readonly rowHeights: Readonly<Record<number, number>>;
  readonly gridLines: boolean;
  /** "#RRGGBB" */
  readonly tabColor?: string;
  readonly cells: readonly CellImage[];
  readonly merges: readonly RangeImage[];
  readonly tables: readonly TableImage[];
  readonly validations: readonly ListValidationImage[];
  /** The first that is true wins. */
  readonly highlights: readonly HighlightImage[];
}

export interface NameImage {
  readonly name: string;
  readonly sheet: string;
  readonly range: RangeImage;
}

export interface WorkbookImage {
  readonly fileName: string;
  /** Changes whenever the bytes on disk change; a save names the version it started from. */
  readonly version: string;
  readonly sheets: readonly SheetImage[];
  readonly names: readonly NameImage[];
  /** Names whose range was deleted (#REF!). */
  readonly brokenNames: readonly string[];
  readonly styles: readonly StyleImage[];
  /** What the file holds that the page cannot show, in plain words ("2 charts on Costing"); kept on save. */
  readonly notShown: readonly string[];
}

/** One cell to write. `formula` undefined leaves a plain value; a formula carries its latest result in `value`. */
export interface CellEdit {
  readonly row: number;
  readonly column: number;
  readonly value: Cell;
  readonly formula?: string;
  /** For a formula whose result spills: its rows, the formula's own cell first. */
  readonly spill?: readonly (readonly Cell[])[];
}

export interface SheetEdits {
  readonly sheet: string;
  readonly cells: readonly CellEdit[];
  /** Tables whose range grew or shrank. */
  readonly tables: readonly TableImage[];
}

export interface SaveRequest {
  /** Made once for each save: asked again with the same id, it is done once. */
  readonly id: string;
  /** The version the page loaded or last saved. */
  readonly baseVersion: string;
  /** A save whose answer the page has not heard: these edits hold its own, and go over it or without it. */
  readonly after?: string;
  readonly edits: readonly SheetEdits[];
}

export type SaveAnswer =
  | { readonly kind: 'saved'; readonly version: string }
  /** The file changed outside meanwhile: nothing was written. */
  | { readonly kind: 'changed outside'; readonly version: string }
  | { readonly kind: 'refused'; readonly sentence: string };
