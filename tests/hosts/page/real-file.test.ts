import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import { startWorkbench, type Workbench } from '../../../src/hosts/workbench/server/start.ts';
import type { CellImage, SheetImage, WorkbookImage } from '../../../src/xlsx/image.ts';
import { readWorkbook } from '../../../src/xlsx/read/read-workbook.ts';
import { writeWorkbook } from '../../../src/xlsx/write/write-workbook.ts';
import { startChromium } from '../../support/chromium.ts';
import { buildPage } from './build-page.ts';
import { isOpen, openAt, type PageTools } from './open-page.ts';

let browser: Browser;
let pageFolder: string;
let folder: string;
let file: string;
let workbench: Workbench;
let open: PageTools;

beforeAll(async () => {
  pageFolder = await buildPage();
  browser = await startChromium();
});
afterAll(() => browser.close());

beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pour-ledger-file-'));
  file = join(folder, 'quay soaps.xlsx');
  await writeFile(file, smallWorkbook());
  const started = await startWorkbench(file, pageFolder, join(folder, 'data'));
  if ('kind' in started) throw new Error(started.sentence);
  workbench = started;
  open = await openAt(browser, workbench.address);
});
afterEach(async () => {
  await open.close();
  await workbench.close();
  await rm(folder, { recursive: true });
});

const smallWorkbook = (quantity = -250): Uint8Array =>
  writeWorkbook({
    sheets: [
      {
        name: 'Ledger',
        tables: [
          {
            name: 'Moves',
            row: 0,
            column: 0,
            columns: [{ header: 'Entry' }, { header: 'Material' }, { header: 'Quantity' }],
            rows: [['M-1', '=HYPERLINK("x")', quantity]],
          },
        ],
      },
      {
        name: 'Ask',
        cells: [
          { row: 0, column: 0, value: 'old', formula: '=POUR.BOOK(Moves[#All])' },
          { row: 1, column: 0, value: 0, formula: '=POUR.TOTAL(Moves[Quantity])' },
          { row: 2, column: 0, value: 'a', formula: '=POUR.LIST()', spill: [['a', 'b']] },
        ],
      },
    ],
    names: [
      {
        name: 'Book',
        sheet: 'Ask',
        range: { startRow: 0, startColumn: 0, endRow: 0, endColumn: 0 },
      },
    ],
  });

async function sheetOnDisk(name: string): Promise<SheetImage> {
  const read = readWorkbook(await readFile(file), 'quay soaps.xlsx');
  if (read.kind === 'refused') throw new Error(read.sentence);
  return sheetOf(read.workbook, name);
}

function sheetOf({ sheets }: WorkbookImage, name: string): SheetImage {
  const sheet = sheets.find((there) => there.name === name);
  if (!sheet) throw new Error(`The file has no sheet ${name}.`);
  return sheet;
}

const cellOf = ({ cells }: SheetImage, row: number, column: number): CellImage | undefined =>
  cells.find((cell) => cell.row === row && cell.column === column);

it('shows a real file, records into it, and shows the same after a reload', async () => {
  expect(await open.values('Ask', 'A1:B5')).toEqual([
    ['book of 2', ''],
    [-250, ''],
    ['Colour', 'Tiles'],
    ['=A1', '25%'],
    ['', 7],
  ]);
  const answer = await open.apply({
    appends: [
      {
        table: 'Moves',
        idColumn: 'Entry',
        rows: [{ Entry: 'M-2', Material: '=1+1', Quantity: -40 }],
      },
    ],
    updates: [],
  });
  expect(answer).toEqual({ kind: 'applied' });
  const ledger = await sheetOnDisk('Ledger');
  expect(ledger.tables[0]?.range.endRow).toBe(2);
  expect(cellOf(ledger, 2, 1)).toMatchObject({ value: '=1+1' });
  expect(cellOf(ledger, 2, 1)?.formula).toBeUndefined();
  const ask = await sheetOnDisk('Ask');
  expect(cellOf(ask, 1, 0)).toMatchObject({
    value: -290,
    formula: '=POUR.TOTAL(Moves[Quantity])',
  });
  expect(cellOf(ask, 2, 0)?.spill).toEqual({
    startRow: 2,
    startColumn: 0,
    endRow: 4,
    endColumn: 1,
  });
  await open.page.reload();
  await isOpen(open.page);
  expect(await open.values('Ask', 'A1:A3')).toEqual([['book of 3'], [-290], ['Colour']]);
  expect(await open.values('Ledger', 'B2:B3')).toEqual([['=HYPERLINK("x")'], ['=1+1']]);
  expect(open.complaints).toEqual([]);
});

it('sees another program write the file, and leaves it alone', async () => {
  await writeFile(file, smallWorkbook(-9));
  const bytes = await readFile(file);
  await open.type('Ledger', 'C2', '-1');
  await open.page.getByRole('button', { name: 'Load the new version' }).waitFor();
  expect((await readFile(file)).equals(bytes)).toBe(true);
});

it('goes on over a server that was started again, with what was typed meanwhile', async () => {
  const { address } = workbench;
  await workbench.close();
  await open.saysSaved('Not connected');
  await open.type('Ledger', 'C2', '-7');
  await open.saysSaved('Not connected, not saved');
  const started = await startWorkbench(file, pageFolder, join(folder, 'data'));
  if ('kind' in started) throw new Error(started.sentence);
  workbench = started;
  expect(workbench.address).toBe(address);
  await open.saysSaved();
  expect(cellOf(await sheetOnDisk('Ledger'), 1, 2)?.value).toBe(-7);
});

it('tells the other window of what one saves', async () => {
  const other = await openAt(browser, workbench.address);
  await open.type('Ledger', 'C2', '-7');
  await open.saysSaved();
  await other.page.getByText('The file was changed outside this page.').waitFor();
  await Promise.all([
    other.page.waitForEvent('load'),
    other.page.getByRole('button', { name: 'Load the new version' }).click(),
  ]);
  await isOpen(other.page);
  expect(await other.values('Ledger', 'C2')).toEqual([[-7]]);
  await other.saysSaved();
  await other.close();
});

it('opens a workbook that holds nothing yet, and keeps what is typed into it', async () => {
  const empty = join(folder, 'empty.xlsx');
  await writeFile(empty, writeWorkbook({ sheets: [{ name: 'Sheet1' }] }));
  const started = await startWorkbench(empty, pageFolder, join(folder, 'data'));
  if ('kind' in started) throw new Error(started.sentence);
  const page = await openAt(browser, started.address);
  await page.type('Sheet1', 'B2', '12.5');
  await page.saysSaved();
  const read = readWorkbook(await readFile(empty), 'empty.xlsx');
  expect(read.kind === 'read' && cellOf(sheetOf(read.workbook, 'Sheet1'), 1, 1)?.value).toBe(12.5);
  await page.close();
  await started.close();
});
