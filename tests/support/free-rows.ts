import type { Range } from './small-book.ts';

const [REASON, NOTE] = [2, 9];

/**
 * Places of ledger lines, without their headers, that neither take another back nor were taken back: of such a
 * pair one can't be edited alone, since BOOK refuses a reversal that no longer fits its line.
 */
export function freeRows(rows: Range): readonly number[] {
  const takenBack = new Set(
    rows.filter((row) => row[REASON] === 'reversed').map((row) => String(row[NOTE])),
  );
  return rows.flatMap((row, at) =>
    row[REASON] === 'reversed' || takenBack.has(String(row[0])) ? [] : [at],
  );
}
