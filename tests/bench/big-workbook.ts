import { describeStarter } from '../../src/starter/file/describe-starter.ts';
import { writeWorkbook } from '../../src/xlsx/write/write-workbook.ts';
import type { Cell, TableData } from '../../src/workbook/port.ts';
import { demoWorkbook, type StarterWorkbook } from '../../src/starter/starter-workbook.ts';

/** How many invented rows to add to the demo's own. */
export interface Size {
  readonly moves: number;
  readonly materials: number;
}

/** The demo workbook with a long ledger: every sheet and formula of the starter, and many more rows. */
export function bigWorkbook(size: Size): Uint8Array {
  return writeWorkbook(describeStarter(grown(demoWorkbook(), size), 'A long invented ledger'));
}

function grown({ day, sheets, tables }: StarterWorkbook, size: Size): StarterWorkbook {
  const more: Readonly<Record<string, readonly Row[]>> = {
    Materials: range(size.materials).map(material),
    Lots: range(size.materials).map((index) => lot(index, size)),
    LedgerLines: range(size.moves).map((index) => move(index, size)),
  };
  const grow = (data: TableData): TableData => {
    const cellsOf = (row: Row) => data.headers.map((header) => row[header] ?? '');
    return { ...data, rows: [...data.rows, ...(more[data.name] ?? []).map(cellsOf)] };
  };
  return {
    day,
    tables: tables.map(grow),
    sheets: sheets.map((sheet) =>
      sheet.table ? { ...sheet, table: { ...sheet.table, data: grow(sheet.table.data) } } : sheet,
    ),
  };
}

type Row = Readonly<Record<string, Cell>>;

/** 1 January 2021 and 30 November 2025, as serial numbers. */
const [FIRST_DAY, LAST_DAY] = [44_197, 45_991];

const material = (index: number): Row => ({
  Material: `Invented material ${String(index)}`,
  Kind: index % 3 === 0 ? 'base' : 'packaging',
  Unit: index % 3 === 0 ? 'g' : 'each',
  'Pack size': 1000,
  'Pack price': 10 + index,
  'Lead days': 5,
});

const lot = (index: number, { moves }: Size): Row => ({
  Lot: `BIG-${String(index)}`,
  Material: `Invented material ${String(index)}`,
  Received: FIRST_DAY,
  Quantity: moves,
  Paid: 500 + index,
  Freight: 12,
});

/** Twenty moves a batch, through all materials in turn, over five years. */
function move(index: number, { moves, materials }: Size): Row {
  const which = (index * 7919) % materials;
  const batch = `OLD-${String(Math.floor(index / 20))}`;
  return {
    Entry: `${batch}.${String(index % 20)}`,
    When: FIRST_DAY + Math.floor((index * (LAST_DAY - FIRST_DAY)) / moves),
    Reason: 'used',
    Material: `Invented material ${String(which)}`,
    Quantity: -(1 + ((index * 104_729) % 40)),
    Lot: `BIG-${String(which)}`,
    Batch: batch,
    By: 'Wren',
  };
}

const range = (count: number): number[] => Array.from({ length: count }, (_, index) => index);
