import type { Book } from '../../domain/book/book.ts';
import { assert } from '../../domain/kernel/assert.ts';
import type { Result } from '../../domain/kernel/result.ts';
import { findTables, type TableNames } from '../../workbook/find-tables.ts';
import type { Cell, Change, TableData } from '../../workbook/port.ts';
import { readBook, recogniseTables } from '../../workbook/read/read-book.ts';
import { type TableKind, tables } from '../../workbook/schema.ts';
import {
  allTableData,
  type RowOfCells,
  tableData,
  type WorkbookRows,
} from '../blocks/table-rows.ts';

/**
 * The invented workbook while its year goes by: rows are added day by day, and read back as a book
 * whenever something is to be worked out, just as the pane does it.
 */
export class Diary {
  private readonly data: { name: string; headers: readonly string[]; rows: (readonly Cell[])[] }[];
  private known: Book | undefined;

  constructor(start: WorkbookRows) {
    this.data = allTableData(start).map((table) => ({ ...table, rows: [...table.rows] }));
  }

  add<K extends TableKind>(kind: K, row: RowOfCells<K>): void {
    this.table(tables[kind].name).rows.push(...tableData(kind, [row]).rows);
    this.known = undefined;
  }

  apply(change: Change): void {
    for (const { table, rows } of change.appends) {
      const { headers, rows: body } = this.table(table);
      body.push(...rows.map((row) => headers.map((header) => row[header] ?? '')));
    }
    this.known = undefined;
  }

  /** Everything written so far. */
  book(): Book {
    this.known ??= sound(
      readBook(sound(recogniseTables(this.data.map(({ headers, rows }) => [headers, ...rows])))),
    );
    return this.known;
  }

  names(): TableNames {
    return findTables(this.data);
  }

  tables(): readonly TableData[] {
    return this.data;
  }

  private table(name: string) {
    const found = this.data.find((table) => table.name === name);
    assert(found !== undefined, `the demo has no table ${name}`);
    return found;
  }
}

/** An answer that our own invented data must always give. */
export function sound<T>(result: Result<T>): T {
  assert(result.ok, result.ok ? '' : `the demo: ${result.failure.sentence}`);
  return result.value;
}
