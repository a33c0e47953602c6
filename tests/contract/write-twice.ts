import type { Applied, Change, HostPort, TableData } from '../../src/workbook/port.ts';
import type { Tables } from '../support/small-book.ts';
import type { FormulaAt } from './change-case.ts';

/** What a host made of a change: its answer, the tables then, and the same once more. */
export interface Made {
  readonly said: Applied;
  readonly tables: readonly TableData[];
  readonly saidAgain: Applied;
  readonly tablesAgain: readonly TableData[];
}

/** Writes one change twice into tables that a host has just opened. */
export type WriteTwice = (
  tables: Tables,
  formulas: readonly FormulaAt[],
  change: Change,
) => Promise<Made>;

/** Applies a change to a port, and then once more. */
export async function twice(port: Pick<HostPort, 'apply' | 'load'>, change: Change): Promise<Made> {
  const said = await port.apply(change);
  const tables = await cellsIn(port);
  const saidAgain = await port.apply(change);
  return { said, tables, saidAgain, tablesAgain: await cellsIn(port) };
}

/** The tables without where each host says that they stand. */
const cellsIn = async (port: Pick<HostPort, 'load'>): Promise<readonly TableData[]> =>
  (await port.load()).map(({ name, headers, rows }) => ({ name, headers, rows }));
