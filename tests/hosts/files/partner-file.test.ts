import { describe, expect, it } from 'vitest';
import { describeValues } from '../../../src/hosts/files/value-workbook.ts';
import { readTables } from '../../../src/xlsx/read/read-tables.ts';
import { writeWorkbook } from '../../../src/xlsx/write/write-workbook.ts';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import type { Cell, TableData } from '../../../src/workbook/port.ts';
import { tables as specs, tableKinds } from '../../../src/workbook/schema.ts';
import { partnerCopy } from '../../../src/workbook/sharing/partner-copy.ts';
import { readTablesOf } from '../../../taskpane/read-workbook.ts';
import { marketWorkshop } from '../../taskpane/market-workshop.ts';
import { rowsOf, withRows } from '../../taskpane/small-workshop.ts';
import { byExcelJs, byLibreOffice, partsOf, soffice } from '../../xlsx/support.ts';

const TODAY = readDay('2026-11-25') ?? 0;

/** A text or a sum of money that stands nowhere else, by the place it stands in. */
const secretAt = (table: string, column: string, row: number, isMoney: boolean): Cell => {
  const number =
    1000 + (tableKinds.findIndex((kind) => specs[kind].name === table) * 37 + row) * 11;
  return isMoney
    ? number + 0.37 + column.length / 10000
    : `Secret ${table} ${column} ${String(row)}`;
};

const secretHeaders = ['Supplier', 'Note', 'My margin'];

/** The market workshop with a column of the maker's own and something to keep secret in each place. */
const secretive: readonly TableData[] = withRows(marketWorkshop, 'Sales', () =>
  rowsOf(['S-1|2026-11-21|Plain Wave|2|4|Quay Fair|0.3']),
).map((table) => {
  const spec = tableKinds.map((kind) => specs[kind]).find(({ name }) => name === table.name);
  const all = Object.values(spec?.columns ?? {}).map(({ header }) => header);
  const headers = [...new Set([...table.headers, ...all, 'My margin'])];
  return {
    ...table,
    headers,
    rows: table.rows.map((cells, row) =>
      headers.map((header, at): Cell => {
        const column = Object.values(spec?.columns ?? {}).find((known) => known.header === header);
        const isMoney = column?.format === 'money';
        const sign = Number(cells[at] ?? 1) < 0 ? -1 : 1;
        const secret = secretAt(table.name, header, row, isMoney);
        if (isMoney) return sign * Number(secret);
        return secretHeaders.includes(header) ? secret : (cells[at] ?? '');
      }),
    ),
  };
});
const settings = rowsOf([
  'Overhead per bar|8765.25',
  'Card fee %|7.654|Secret terms',
  'Bank|Secret bank',
]);
const book = withRows(secretive, 'Settings', (rows) => [...rows, ...settings]);

function copy(withCosts: boolean) {
  const read = readTablesOf(book);
  if (read.kind !== 'ready') throw new Error(read.findings.join('\n'));
  const made = partnerCopy(read.book, read.names, TODAY, withCosts);
  return { ...made, bytes: writeWorkbook(describeValues(made.workbook)) };
}

/** Every part of the package as text, numbers and all. */
const everyText = (bytes: Uint8Array): string =>
  [...partsOf(bytes)]
    .map(([name, part]) => `${name}\n${new TextDecoder().decode(part)}`)
    .join('\n');

const secrets = book.flatMap(({ name, headers, rows }) =>
  rows.flatMap((row) =>
    row.filter((cell, at) => {
      const header = headers[at] ?? '';
      const column = tableKinds
        .filter((kind) => specs[kind].name === name)
        .flatMap((kind) => Object.values(specs[kind].columns))
        .find((known) => known.header === header);
      return cell !== '' && (column?.format === 'money' || secretHeaders.includes(header));
    }),
  ),
);

describe('a copy without costs', () => {
  const { bytes, workbook, stillNamed } = copy(false);

  it('holds no sum of money, supplier, note or column of one’s own in any part of the file', () => {
    const text = everyText(bytes);
    expect(secrets.length).toBeGreaterThan(100);
    expect(secrets.filter((secret) => text.includes(String(secret)))).toEqual([]);
    expect(text).not.toMatch(/secret/iu);
    expect(text).not.toMatch(/8765|7\.654|Labour rate/u);
    expect(stillNamed).toEqual([]);
  });

  it('names no column of money', () => {
    // Value in Settings is a setting's own; which settings stand there is tested above. Who paid is no sum of money.
    const sheets = workbook.sheets.filter(({ name }) => name !== 'Settings');
    const headers = sheets.flatMap(({ columns }) => columns.map(({ header }) => header));
    expect(
      headers.filter(
        (header) =>
          header !== 'Paid by' && /price|cost|paid|freight|value|fee|supplier|note/iu.test(header),
      ),
    ).toEqual([]);
  });
});

describe('a copy with costs', () => {
  it('holds them all', () => {
    const text = everyText(copy(true).bytes);
    expect(secrets.filter((secret) => !text.includes(String(secret)))).toEqual([]);
  });
});

describe.each([false, true])('either copy, with costs %s', (withCosts) => {
  const { bytes, workbook } = copy(withCosts);

  it('has no formula, hidden sheet, comment, link outside, name or author', async () => {
    const parts = partsOf(bytes);
    const text = everyText(bytes);
    expect(
      [...parts.keys()].filter((name) => !/sheet\d+\.xml|table\d+\.xml|\.rels$/u.test(name)).sort(),
    ).toEqual([
      '[Content_Types].xml',
      'docProps/app.xml',
      'docProps/core.xml',
      'xl/metadata.xml',
      'xl/styles.xml',
      'xl/workbook.xml',
    ]);
    expect(text).not.toMatch(/<f[ >]|state="hidden"|hidden="1"|TargetMode|creator|lastModifiedBy/u);
    const read = await byExcelJs(bytes);
    expect(read.worksheets.map(({ name, state }) => [name, state])).toEqual(
      workbook.sheets.map(({ name }) => [name, 'visible']),
    );
  });

  it('reads back as it was described, by our own reader and another library', async () => {
    const read = readTables(bytes);
    if (read.kind === 'refused') throw new Error(read.sentence);
    expect(read.tables).toEqual(
      workbook.sheets.map(({ table, columns, rows }) => ({
        name: table,
        headers: columns.map(({ header }) => header),
        rows,
      })),
    );
    const other = await byExcelJs(bytes);
    for (const { name, lines, columns, rows } of workbook.sheets) {
      const sheet = other.getWorksheet(name);
      const first = lines.length === 0 ? 1 : lines.length + 2;
      const header = columns.map((_, at) => sheet?.getCell(first, at + 1).value);
      expect(header).toEqual(columns.map((column) => column.header));
      const dates = columns.map(({ format }) => format === 'date');
      rows.forEach((row, down) => {
        row.forEach((cell, at) => {
          const found = sheet?.getCell(first + 1 + down, at + 1).value ?? '';
          if (dates[at] === true && cell !== '') expect(found).toBeInstanceOf(Date);
          else expect(found).toEqual(cell);
        });
      });
    }
  });

  it.skipIf(soffice === undefined)('opens in LibreOffice with every row', () => {
    const sheets = byLibreOffice(bytes, 'csv');
    for (const { name, rows } of workbook.sheets) {
      const text = [...sheets].find(([file]) =>
        nameKey(file).includes(`-${nameKey(name)}.csv`),
      )?.[1];
      const firsts = rows.map(([first]) => String(first));
      for (const first of firsts) expect(text?.toString()).toContain(first.replaceAll('"', '""'));
    }
  });
});
