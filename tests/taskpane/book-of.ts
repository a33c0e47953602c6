import type { Book } from '../../src/domain/book/book.ts';
import type { TableData } from '../../src/workbook/port.ts';
import { readTablesOf } from '../../taskpane/read-workbook.ts';

/** The book of tables that are in order. */
export function bookOf(tables: readonly TableData[]): Book {
  const reading = readTablesOf(tables);
  if (reading.kind !== 'ready') throw new Error(reading.findings.join('\n'));
  return reading.book;
}
