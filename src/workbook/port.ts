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
  /** Where it stands, if the host knows; so a sentence can name sheet and row as the maker sees them. */
  readonly on?: SheetPlace;
}

/** Where a table begins. */
export interface SheetPlace {
  readonly sheet: string;
  /** The number beside the row of its headers, from 1. */
  readonly headerRow: number;
}

/** A row to write, by header. Headers that the table lacks are an error, not a silent loss. */
export type RowToWrite = Readonly<Record<string, Cell>>;

export interface Append {
  readonly table: string;
  /** The id column: a row whose id already stands in the table is never added a second time. */
  readonly idColumn: string;
  /** Whether several rows may bear one id, as the lines of a recipe do: then the second of them is the second there. */
  readonly shareIds?: true;
  readonly rows: readonly RowToWrite[];
}

/** Sets cells of the one row whose `idColumn` holds `id`. */
export interface Update {
  readonly table: string;
  readonly idColumn: string;
  readonly id: string;
  /** Which of the rows where several hold `id`, from above; 0 is the first. Without it only one may. */
  readonly nth?: number;
  readonly set: RowToWrite;
}

/**
 * Clears the one row whose `idColumn` holds `id`, so that it reads as a blank row. Where no row holds the
 * id any more that is done already.
 */
export interface Removal {
  readonly table: string;
  readonly idColumn: string;
  readonly id: string;
  /**
   * What the row holds in each column that is cleared, the id with them: where another cell stands by
   * now, the change is refused. Columns not named here stay as they are.
   */
  readonly was: RowToWrite;
}

/** Everything one action writes. A host applies all of it or none of it. */
export interface Change {
  readonly appends: readonly Append[];
  readonly updates: readonly Update[];
  readonly removals?: readonly Removal[];
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
  /** Brings a cell of a table before the maker's eyes, ready to be typed in. */
  show(place: TablePlace): Promise<void>;
  /** Workbooks other than this one. */
  readonly files: HostFiles;
  /** Names defined in the workbook that lead nowhere any more (#REF!). */
  brokenNames(): Promise<readonly string[]>;
  /** Keeps small pieces of text for this workbook, and for no other, between reloads (the pane's unfinished flow). */
  readonly memory: HostMemory;
  /** Today at the maker's place, as an ISO date such as 2026-11-25. */
  today(): string;
  /** Text that no one else will draw again (at least 40 bits), for new ids. */
  newToken(): string;
  /** Who is at the keyboard, where the host knows; "" otherwise. */
  userName(): string;
}

/** A cell of a table. */
export interface TablePlace {
  readonly table: string;
  /** 1 is the first row below the headers; one below the last row is where typing goes on. */
  readonly row: number;
  /** The first column where none is named. */
  readonly header?: string;
}

export interface HostMemory {
  get(key: string): string | undefined;
  set(key: string, value: string): void;
  delete(key: string): void;
  /**
   * Resolves once all that was set would outlive the pane's own end, however sudden. Rejects with a
   * sentence where it would not.
   */
  kept(): Promise<void>;
}

/** What a host does with workbooks other than the one that is open. Both reject once `signal` stops them. */
export interface HostFiles {
  /**
   * Reads the tables in the bytes of an .xlsx that the maker chose, which are the host's from then on.
   * Nothing in it is run or followed.
   */
  readTables(bytes: Uint8Array, signal: AbortSignal): Promise<CopyRead>;
  /** Hands the maker a new workbook of plain values. */
  give(workbook: ValueWorkbook, signal: AbortSignal): Promise<Given>;
}

export type CopyRead =
  | { readonly kind: 'read'; readonly tables: readonly TableData[] }
  /** It is no workbook, or no safe one; the sentence says why. */
  | { readonly kind: 'refused'; readonly sentence: string };

/** Whether the maker has it now; the sentence says where it is, or what to do. */
export interface Given {
  readonly kind: 'given' | 'refused';
  readonly sentence: string;
}

/** A workbook of values: no formulas, nothing hidden. */
export interface ValueWorkbook {
  /** Without its ending. */
  readonly fileName: string;
  readonly title: string;
  readonly sheets: readonly ValueSheet[];
}

/** One sheet with one table under a few lines of text. */
export interface ValueSheet {
  readonly name: string;
  readonly lines: readonly string[];
  readonly table: string;
  readonly columns: readonly ValueColumn[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface ValueColumn {
  readonly header: string;
  readonly format: 'text' | 'number' | 'whole' | 'money' | 'percent' | 'date';
}
