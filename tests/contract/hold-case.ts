import { expect } from 'vitest';
import { tableData } from '../support/small-book.ts';
import type { ChangeCase } from './change-case.ts';
import type { WriteTwice } from './write-twice.ts';

/** Holds a host to a case: how it ends, what stands then, and that the same once more writes nothing. */
export async function holdCase(
  write: WriteTwice,
  { tables, formulas = [], change, ends, after = tables }: ChangeCase,
): Promise<void> {
  const made = await write(tables, formulas, change);
  if (ends instanceof RegExp) {
    expect(made.said).toEqual({ kind: 'refused', sentence: expect.stringMatching(ends) as string });
    expect(made.saidAgain).toEqual(made.said);
  } else {
    expect(made.said).toEqual({ kind: ends });
    expect(made.saidAgain).toEqual({ kind: 'already there' });
  }
  expect(made.tables).toEqual(tableData(after));
  expect(made.tablesAgain).toEqual(made.tables);
}
