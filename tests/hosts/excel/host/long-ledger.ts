import { type Tables, withRows } from '../../../support/small-book.ts';

/** The same workbook with so many lines more in its ledger, each about as long as the demo's. */
export const withLedger = (tables: Tables, lines: number): Tables =>
  lines === 0
    ? tables
    : withRows(
        tables,
        'LedgerLines',
        ...Array.from({ length: lines }, (_, line) => {
          const batch = `B-${String(1000 + Math.floor(line / 20))}`;
          const entry = `${batch}.${String(10 + (line % 20))}`;
          return [entry, 45_999, 'used', 'Clear base', -0.001, 'C1', -0.01, batch, 'Wren', ''];
        }),
      );
