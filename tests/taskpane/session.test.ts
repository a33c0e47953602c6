import { describe, expect, it } from 'vitest';
import { Session, type Ready } from '../../taskpane/task/session.ts';
import { createMemoryPort } from '../support/memory-port.ts';
import { smallWorkshop, withRows } from './small-workshop.ts';

/** A session over the small workshop, and what it has read. */
async function opened() {
  const port = createMemoryPort(smallWorkshop);
  const session = new Session(port);
  const read = async (): Promise<Ready> => {
    await session.read();
    if (session.state.kind !== 'ready') throw new Error(session.state.kind);
    return session.state;
  };
  return { port, read };
}

/** The same tables in arrays of their own, as a host hands them over each time. */
const copied = (tables: typeof smallWorkshop): typeof smallWorkshop =>
  tables.map((table) => ({
    ...table,
    headers: [...table.headers],
    rows: table.rows.map((row) => [...row]),
  }));

describe('reading the workbook again', () => {
  it('keeps the book where no cell has changed, and tells of each reading', async () => {
    const { port, read } = await opened();
    const first = await read();
    port.edit(copied);
    const again = await read();
    expect(again.book).toBe(first.book);
    expect(again.tables).toBe(first.tables);
    expect(again).not.toBe(first);
  });

  it.each([
    ['a cell', 'LedgerLines', (row: readonly unknown[]) => row.with(4, 13)],
    ['a note', 'LedgerLines', (row: readonly unknown[]) => row.with(9, 'a note')],
  ] as const)('reads it anew where %s has changed', async (_, name, change) => {
    const { port, read } = await opened();
    const first = await read();
    port.edit((tables) =>
      withRows(copied(tables), name, (rows) =>
        rows.map((row, at) => (at === 0 ? (change(row) as typeof row) : row)),
      ),
    );
    const again = await read();
    expect(again.book).not.toBe(first.book);
    expect(again.tables).not.toBe(first.tables);
    expect(again.book.lots).toBe(first.book.lots);
    expect(first.book.ledger.move(0).quantity).toBe(12);
  });

  it('reads it anew where a line was added or a table renamed', async () => {
    const { port, read } = await opened();
    const first = await read();
    port.edit((tables) => withRows(tables, 'LedgerLines', (rows) => rows.slice(1)));
    expect((await read()).book.ledger.length).toBe(first.book.ledger.length - 1);
    const before = await read();
    port.edit((tables) =>
      tables.map((table) => (table.name === 'LedgerLines' ? { ...table, name: 'Ledger' } : table)),
    );
    expect((await read()).names.get('moves')?.name).toBe('Ledger');
    expect(before.names.get('moves')?.name).toBe('LedgerLines');
  });
});
