import { describe, expect, it } from 'vitest';
import type { TableData } from '../../src/workbook/port.ts';
import { readTablesOf } from '../../taskpane/read-workbook.ts';
import { smallWorkshop, withRows } from './small-workshop.ts';

const findings = (tables: readonly TableData[]) => {
  const reading = readTablesOf(tables);
  return reading.kind === 'ready' ? [] : reading.findings.map(({ sentence }) => sentence);
};
const without = (name: string) => smallWorkshop.filter((table) => table.name !== name);
const renamed = (name: string, from: string, to: string) =>
  smallWorkshop.map((table) =>
    table.name === name
      ? { ...table, headers: table.headers.map((header) => (header === from ? to : header)) }
      : table,
  );

describe('readWorkbook', () => {
  it('reads a workbook in order, whatever else stands in it', () => {
    const others: TableData[] = [
      { name: 'Friends', headers: ['Name', 'Birthday'], rows: [['Ada', 1]] },
      // A sheet of answers shares a header with our tables and is none of them.
      { name: 'Costing', headers: ['Design', 'Margin'], rows: [] },
    ];
    expect(readTablesOf([...others, ...smallWorkshop]).kind).toBe('ready');
  });

  it('finds tables under other names', () => {
    const tables = smallWorkshop.map((table) => ({ ...table, name: `tbl${table.name}` }));
    expect(readTablesOf(tables).kind).toBe('ready');
  });

  it.each(['Materials', 'Designs', 'Layers', 'LedgerLines', 'Batches'])(
    'says that %s is missing',
    (name) => {
      expect(findings(without(name)).join()).toMatch(
        new RegExp(`The workbook has no ${name} table. Add one with the headers `, 'u'),
      );
    },
  );

  it('says which column a table lacks', () => {
    expect(findings(renamed('LedgerLines', 'Quantity', 'How much'))).toEqual([
      expect.stringMatching(/^LedgerLines has no column "Quantity"/u),
    ]);
  });

  it('takes the table of our name before a copy of it', () => {
    const copy = smallWorkshop.flatMap((table) => ({
      ...table,
      name: `${table.name} 2026`,
      rows: [],
    }));
    const reading = readTablesOf([...copy, ...smallWorkshop]);
    expect(reading.kind === 'ready' && reading.names.get('moves')?.name).toBe('LedgerLines');
  });

  it('says that two tables are the same', () => {
    const twice = smallWorkshop.flatMap((table) =>
      table.name === 'LedgerLines'
        ? ['Ledger', 'Ledger2'].map((name) => ({ ...table, name }))
        : [table],
    );
    expect(findings(twice)).toEqual([
      "The tables Ledger and Ledger2 both have the headers of LedgerLines. Keep one, or change the other's headers.",
    ]);
  });

  it('names table, row, column and value of each bad cell, all at once', () => {
    const bad = withRows(
      withRows(smallWorkshop, 'Lots', (rows) =>
        rows.map((row) => (row[0] === 'L-3' ? row.with(3, 'a kilo') : row)),
      ),
      'Layers',
      (rows) => rows.map((row, index) => (index === 0 ? row.with(3, 'Blu') : row)),
    );
    const said = findings(bad);
    expect(said).toHaveLength(2);
    expect(said.join('\n')).toMatch(/Lots, row 3, Quantity is "a kilo"/u);
    expect(said.join('\n')).toMatch(/Layers, row 1, Item.*Did you mean "Blue"\?/u);
  });
});
