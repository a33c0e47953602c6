import type { Cell, Change, Removal, RowToWrite, Update } from '../../src/workbook/port.ts';
import { table, type Tables } from '../support/small-book.ts';

/** A formula in a table's cell, by body row and column; the table holds what it shows. */
export interface FormulaAt {
  readonly table: string;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
}

/** One change, and what every host must make of it. */
export interface ChangeCase {
  readonly name: string;
  readonly tables: Tables;
  readonly formulas?: readonly FormulaAt[];
  readonly change: Change;
  /** How it ends; of a refusal, what the sentence says. */
  readonly ends: 'applied' | 'already there' | RegExp;
  /** The tables afterwards, where something was written. */
  readonly after?: Tables;
}

/** A small ledger; its rows are written down as they stand. */
export const ledger = (...rows: readonly (readonly Cell[])[]): Tables => ({
  Moves: table('Entry | Quantity | Note', ...rows),
});
export const two = [
  ['M-1', -250, ''],
  ['M-2', 3, 'Foam'],
] as const;

export const add = (...rows: readonly RowToWrite[]): Change => ({
  appends: [{ table: 'Moves', idColumn: 'Entry', rows }],
  updates: [],
});
export const set = (cells: RowToWrite, more: Partial<Update> = {}): Change => ({
  appends: [],
  updates: [{ table: 'Moves', idColumn: 'Entry', id: 'M-1', set: cells, ...more }],
});
export const clear = (was: RowToWrite, more: Partial<Removal> = {}): Change => ({
  appends: [],
  updates: [],
  removals: [{ table: 'Moves', idColumn: 'Entry', id: 'M-2', was, ...more }],
});
export const foam = { Entry: 'M-2', Quantity: 3, Note: 'Foam' };
