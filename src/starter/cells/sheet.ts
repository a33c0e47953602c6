import type { ColumnFormat } from '../../workbook/column.ts';
import type { Cell, TableData } from '../../workbook/port.ts';
import type { Ask } from '../blocks/answered.ts';
import type { CellRange } from './cell-names.ts';
import type { Formula } from './formula.ts';

/**
 * A sheet of the starter workbook as data. Rows and columns count from 0. How a look is coloured,
 * and how the file is written, is the build's business.
 */
export interface StarterSheet {
  readonly name: string;
  /** What the sheet is to the maker; the build colours its tab by it. */
  readonly group: SheetGroup;
  /** Characters by column. */
  readonly widths: Readonly<Record<number, number>>;
  /** Points by row. */
  readonly heights?: Readonly<Record<number, number>>;
  readonly frozenRows?: number;
  readonly frozenColumns?: number;
  readonly cells: readonly StarterCell[];
  /** Lists that the hidden sheet asks for this one. */
  readonly asks?: readonly Ask[];
  readonly table?: StarterTable;
  readonly dropDowns?: readonly DropDown[];
  readonly marks?: readonly Mark[];
  readonly merges?: readonly CellRange[];
  readonly charts?: readonly StarterChart[];
  /** What prints; everything unless told. */
  readonly prints?: CellRange;
  readonly landscape: boolean;
}

export type SheetGroup = 'start' | 'answers' | 'yours' | 'ledger' | 'behind';

export type Role =
  | 'title'
  | 'heading'
  | 'note'
  | 'aside'
  | 'label'
  | 'input'
  | 'answer'
  | 'header'
  | 'plain'
  | 'wrapped'
  | 'total'
  | 'strong'
  | 'headline'
  | 'centred'
  | 'day'
  | 'diary'
  | 'tile';

export interface SheetLook {
  readonly role: Role;
  readonly format?: CellFormat;
}

/**
 * `stock` is grams, and below nothing what it is short by; `grams` to a tenth, `fine` to a thousandth where there is one; `share` is a fraction shown as a percent; `dayOfMonth` shows only the day of a
 * date; `unseen` shows nothing.
 */
export type CellFormat =
  ColumnFormat | 'grams' | 'stock' | 'fine' | 'share' | 'general' | 'dayOfMonth' | 'unseen';

export interface StarterCell {
  readonly row: number;
  readonly column: number;
  readonly holds: Cell | Formula;
  /** The columns that its answer may fill, with any number of rows below; no other cell's answer spills. */
  readonly spills?: number;
  readonly look: SheetLook;
}

export interface StarterTable {
  readonly row: number;
  readonly data: TableData;
  readonly formats: readonly CellFormat[];
}

export interface DropDown {
  readonly range: CellRange;
  /** Words, or a reference to the cells that hold them. */
  readonly choices: readonly string[] | { readonly source: string };
  /**
   * Other values are refused, where nothing else would say that they are not understood. Names only warn, since a maker
   * may add the new one afterwards; so do Book's words, which it takes in more spellings than a list can hold.
   */
  readonly strict: boolean;
}

/** Colours cells where a formula, written for the first of them, is true. */
export interface Mark {
  readonly range: CellRange;
  readonly formula: string;
  readonly shows: 'short' | 'repeated' | 'gain' | { readonly fill: string; readonly color: string };
}

/** A picture drawn by the spreadsheet from cells of one value: never from a spill. */
export interface StarterChart {
  /** `curve` joins points by lines; `bars` lie, `columns` stand, one beside the other. */
  readonly kind: 'curve' | 'bars' | 'columns' | 'lines';
  readonly title: string;
  /** What it shows, for a screen reader. */
  readonly description: string;
  readonly place: CellRange;
  readonly series: readonly StarterSeries[];
  /** Titles of the axes. */
  readonly across: string;
  readonly up: string;
}

/** One row or one column of cells each, of the chart's own sheet. */
export interface StarterSeries {
  readonly name: string;
  /** Names, or for a curve the numbers across. */
  readonly along: CellRange;
  readonly values: CellRange;
}

export const holdsFormula = (holds: Cell | Formula): holds is Formula => typeof holds === 'object';
