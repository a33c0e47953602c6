import { expect, it, vi } from 'vitest';
import { readTables } from '../../src/xlsx/read/read-tables.ts';
import { readWorkbook } from '../../src/xlsx/read/read-workbook.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';

vi.mock('../../src/xlsx/limits.ts', async (original) => ({
  ...(await original<object>()),
  MAX_CELLS: 40,
}));

/** Sheets with a table of 10 cells each. */
const bookOf = (sheets: number): Uint8Array =>
  writeWorkbook({
    sheets: Array.from({ length: sheets }, (_, at) => ({
      name: `S${String(at)}`,
      tables: [
        {
          name: `Table_${String(at)}`,
          row: 0,
          column: 0,
          columns: [{ header: 'A' }, { header: 'B' }],
          rows: [1, 2, 3, 4].map((n) => [n, n]),
        },
      ],
    })),
  });

it('cells are counted over all sheets together', () => {
  for (const read of [(bytes: Uint8Array) => readWorkbook(bytes, 'book.xlsx'), readTables]) {
    expect(read(bookOf(4)).kind).toBe('read');
    const answer = read(bookOf(5));
    expect(answer.kind === 'refused' && answer.sentence).toMatch(/too many cells/);
  }
});
