/**
 * What a host (Excel, the workbench, a test's memory) must do. A host moves rows of cells in named
 * tables and knows nothing of what they mean.
 */

/** One cell as a host holds it. A blank is "". A date is an Excel serial number or ISO text. */
export type Cell = string | number | boolean;

/** One workbook table: its name, its header row and its body, blank rows included. */
export interface TableData {
  readonly name: string;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

/** A row to write, by header. Headers that the table lacks are an error, not a silent loss. */
export type RowToWrite = Readonly<Record<string, Cell>>;

export interface Append {
  readonly table: string;
  /** The id column: a row whose id already stands in the table is never added a second time. */
  readonly idColumn: string;
  readonly rows: readonly RowToWrite[];
}

/** Sets cells of the one row whose `idColumn` holds `id`. */
export interface Update {
  readonly table: string;
  readonly idColumn: string;
  readonly id: string;
  readonly set: RowToWrite;
}

/** Everything one action writes. A host applies all of it or none of it. */
export interface Change {
  readonly appends: readonly Append[];
  readonly updates: readonly Update[];
}

export type Applied =
  /** All rows and cells are in the workbook now. */
  | { readonly kind: 'applied' }
  /** Every row to append was there already, cell for cell: nothing was written again. */
  | { readonly kind: 'already there' }
  /** Nothing was written; the sentence says why and what to do. */
  | { readonly kind: 'refused'; readonly sentence: string };

export interface HostPort {
  /** Reads every table of the workbook. */
  load(): Promise<readonly TableData[]>;
  /** Writes a change whole or not at all, then resolves once dependents have been told to recalculate. */
  apply(change: Change): Promise<Applied>;
  /** Calls back after any table changes, by whoever's hand. Returns the way to stop. */
  onChange(listener: () => void): () => void;
  /** Keeps small pieces of text for this workbook between reloads (the pane's unfinished flow). */
  readonly memory: HostMemory;
  /** Today at the maker's place, as an ISO date such as 2026-11-25. */
  today(): string;
  /** Text that no one else will draw again (at least 40 bits), for new ids. */
  newToken(): string;
  /** Who is at the keyboard, where the host knows; "" otherwise. */
  userName(): string;
}

export interface HostMemory {
  get(key: string): string | undefined;
  set(key: string, value: string): void;
  delete(key: string): void;
}
