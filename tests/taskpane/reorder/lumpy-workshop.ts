import type { TableData } from '../../../src/workbook/port.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';

/** Serial number of 2026-11-20, the pane's day in tests less a few. */
const LAST_USE = 46_346;

const PACK_SIZE = 5;

/**
 * The small workshop with packs of 100 g and 10 lead days for its clear base, of which 100 g go on
 * every tenth day; the wrapper has lead days too and was never used.
 */
export const lumpyWorkshop: readonly TableData[] = withRows(
  smallWorkshop,
  'LedgerLines',
  (rows) => [
    ...rows,
    ...rowsOf(
      Array.from(
        { length: 9 },
        (_, index) =>
          `U-${String(index)}|${String(LAST_USE - 10 * index)}|used|Clear base|-100|||||`,
      ),
    ),
  ],
).map((table) =>
  table.name === 'Materials'
    ? {
        ...table,
        headers: [...table.headers, 'Lead days'],
        rows: table.rows.map((row) => {
          if (row[0] === 'Clear base') return [...row.with(PACK_SIZE, 100), 10];
          return [...row, row[0] === 'Wrapper' ? 5 : ''];
        }),
      }
    : table,
);
