import ExcelJS from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import { functions } from '../../functions/index.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { tableKinds, tables } from '../../src/workbook/schema.ts';
import { type Built, build, variants } from './built.ts';

describe.each(variants)('the %s workbook', (_name, make) => {
  let built: Built;
  const reread = new ExcelJS.Workbook();
  beforeAll(async () => {
    built = build(make);
    await reread.xlsx.load(built.bytes.slice().buffer);
  });

  it('is read as a book without a finding', () => {
    const ranges = built.starter.tables.map(({ headers, rows }) => [headers, ...rows]);
    const recognised = recogniseTables(ranges);
    const book = recognised.ok ? readBook(recognised.value) : recognised;
    expect(book.ok ? [] : book.failure.sentence).toEqual([]);
  });

  it('holds every table and column of the schema, header for header', () => {
    for (const kind of tableKinds) {
      const spec = tables[kind];
      const found = sheetTables().find(({ table }) => table.name === spec.name);
      expect(found?.table.headers, spec.name).toEqual(
        Object.values(spec.columns).map(({ header }) => header),
      );
    }
    expect(sheetTables()).toHaveLength(tableKinds.length);
  });

  it('gives no table the name of a sheet', () => {
    const sheets = reread.worksheets.map(({ name }) => name.toLowerCase());
    for (const { table } of sheetTables()) expect(sheets).not.toContain(table.name.toLowerCase());
  });

  it('names the cell that reads every table Book', () => {
    const place = built.described.names?.find(({ name }) => name === 'Book');
    const cell = built.described.sheets
      .find(({ name }) => name === place?.sheet)
      ?.cells?.find(
        ({ row, column }) => row === place?.range.startRow && column === place.range.startColumn,
      );
    const every = tableKinds.map((kind) => `${tables[kind].name}[[#Headers],[#Data]]`).join(',');
    expect(cell?.formula).toBe(`=POUR.BOOK(${every})`);
    expect(reread.definedNames.getRanges('Book').ranges).toEqual(["'Start here'!$B$4"]);
    expect(reread.getWorksheet('Start here')?.getCell('B4').result).toBe(cell?.value);
    expect(cell?.value).toMatch(/^book [0-9a-f]{16}$/u);
  });

  it('is the same byte for byte when built again', () => {
    expect(Buffer.compare(Buffer.from(built.bytes), Buffer.from(build(make).bytes))).toBe(0);
  });

  it('says nothing wrong: no formula of a fresh workbook shows an error', () => {
    const errors = built.described.sheets.flatMap(({ name, cells = [] }) =>
      cells
        .filter(({ value }) => typeof value === 'string' && /^#[A-Z/0!?]+$/u.test(value))
        .map(({ row, column, value }) => `${name} ${row} ${column} ${String(value)}`),
    );
    expect(errors).toEqual([]);
  });

  const sheetTables = () =>
    built.described.sheets.flatMap(({ name }) => {
      const sheet = reread.getWorksheet(name);
      return tablesOf(sheet).map((table) => ({ sheet: name, table }));
    });
});

describe('the demo workbook', () => {
  it('shows what the functions answer for it', () => {
    const { starter, described } = build(variants[0]?.[1] ?? neverMade);
    const book = ask('BOOK', ...starter.tables.map(({ headers, rows }) => [headers, ...rows]));
    const day = 46351; // 2026-11-25, the demo's own day
    const shown = (sheet: string, formula: string) =>
      described.sheets
        .find(({ name }) => name === sheet)
        ?.cells?.find((cell) => cell.formula?.includes(formula));
    expect(shown('Start here', 'POUR.BOOK(')?.value).toBe(book);
    expect(shown('Function answers', 'POUR.STOCKLIST(')?.spill).toEqual(
      ask('STOCKLIST', book, day),
    );
    expect(shown('Function answers', 'POUR.WEIGHOUT(')?.spill).toEqual(
      ask('WEIGHOUT', 'Lantern Quay', 14, book, false),
    );
    expect(shown('Costing', 'POUR.COSTPERBAR(A9,')?.value).toBe(
      ask('COSTPERBAR', 'Lantern Quay', book, 12, day),
    );
    // The lantern pattern of demo/mosaic.ts, counted by hand, row by row: eight rows of five tiles.
    expect(shown('Function answers', 'POUR.TILECOUNT(')?.spill).toEqual([
      ['Colour', 'Tiles'],
      ['Slate', 4 + 2 + 2 + 0 + 0 + 2 + 2 + 5],
      ['Amber', 1 + 0 + 3 + 3 + 3 + 3 + 0 + 0],
      ['Foam', 0 + 3 + 0 + 2 + 2 + 0 + 3 + 0],
    ]);
  });
});

const ask = (id: string, ...given: unknown[]): unknown => functions[id]?.(...given);

const neverMade = (): never => {
  throw new Error('There is no demo variant');
};

interface RereadTable {
  readonly name: string;
  readonly headers: readonly string[];
}

/** The tables exceljs has read; its own types leave the model out. */
function tablesOf(sheet: ExcelJS.Worksheet | undefined): RereadTable[] {
  const all = (sheet as unknown as { tables?: Record<string, { table: ExcelTable }> }).tables ?? {};
  return Object.values(all).map(({ table }) => ({
    name: table.displayName,
    headers: table.columns.map(({ name }) => name),
  }));
}

interface ExcelTable {
  readonly displayName: string;
  readonly columns: readonly { readonly name: string }[];
}
