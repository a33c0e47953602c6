import { copyFile, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readTables } from '../../src/xlsx/read/read-tables.ts';
import type { PageTools } from '../hosts/page/open-page.ts';
import { byExcelJs, imageOf, patchedBytes } from '../xlsx/support.ts';
import { startChromium } from '../support/chromium.ts';
import { type BuiltWorkbench, demoFile, openBuilt, startBuilt } from './built-workbench.ts';
import { type Pane, paneOf } from './pane.ts';
import { tableOf } from './saved-file.ts';

const NOTE = '=HYPERLINK("http://x","y")';

let folder: string;
let file: string;
let other: string;
let workbench: BuiltWorkbench;
let browser: Browser;
let open: PageTools;
let pane: Pane;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pour-ledger-share-'));
  file = join(folder, 'mine.xlsx');
  other = join(folder, 'theirs.xlsx');
  await copyFile(demoFile, file);
  await writeFile(other, await theirs());
  workbench = await startBuilt([file], folder);
  browser = await startChromium();
  open = await openBuilt(browser, workbench.address, '2026-11-25T09:00:00');
  pane = paneOf(open.page);
});
afterAll(async () => {
  await browser.close();
  await workbench.close();
  await rm(folder, { recursive: true });
});

/** The demo in which someone else wasted a gram of the first material, with a note like a formula. */
async function theirs(): Promise<Uint8Array> {
  const bytes = new Uint8Array(await readFile(demoFile));
  for (const { name, tables } of imageOf(bytes).sheets) {
    const table = tables.find((each) => each.name === 'LedgerLines');
    if (table === undefined) continue;
    const { range, headers } = table;
    const cells = new Map<string, string | number>([
      ['Entry', 'THEIRS-1'],
      ['When', 46351],
      ['Reason', 'wasted'],
      ['Material', String(tableOf(imageOf(bytes), 'Materials').rows[0]?.[0])],
      ['Quantity', -1],
      ['Value', -0.01],
      ['Note', NOTE],
    ]);
    const row = range.endRow + 1;
    return patchedBytes(bytes, [
      {
        sheet: name,
        cells: headers.flatMap((header, at) => {
          const value = cells.get(header);
          return value === undefined ? [] : [{ row, column: range.startColumn + at, value }];
        }),
        tables: [{ ...table, range: { ...range, endRow: row } }],
      },
    ]);
  }
  throw new Error('The demo has no ledger.');
}

const saved = async () => imageOf(new Uint8Array(await readFile(file)));

describe('the workbench, sharing', () => {
  it('brings in the lines of another file, text as text, and saves them', async () => {
    await pane.at('tab-care').click();
    await pane.at('tab-merge').click();
    const [worker] = await Promise.all([
      open.page.waitForEvent('worker'),
      pane.at('copy').setInputFiles(other),
    ]);
    expect(worker.url()).toMatch(/\/other-workbooks\.js$/);
    await pane.reach('What comes in');
    await pane.root.getByRole('row', { name: 'LedgerLines THEIRS-1 1' }).waitFor();
    await pane.at('record').click();
    await pane.reach('Brought in');
    const rows = tableOf(await saved(), 'LedgerLines').rows;
    expect(rows.at(-1)).toContain(NOTE);
    const book = await byExcelJs(new Uint8Array(await readFile(file)));
    const found: unknown[] = [];
    book.eachSheet((sheet) => {
      sheet.eachRow((row) => {
        row.eachCell(({ value }) => {
          if (JSON.stringify(value).includes('HYPERLINK(')) found.push(value);
        });
      });
    });
    expect(found).toEqual([NOTE]);
    await pane.at('another').click();
    await pane.at('copy').setInputFiles(other);
    await pane.root.getByText('This workbook holds all that the other copy has.').waitFor();
  });

  it('refuses a file with macros, and one that is none, with a sentence', async () => {
    await pane.at('back').click();
    const bad = join(folder, 'bad.xlsx');
    await writeFile(bad, 'not a workbook');
    await pane.at('copy').setInputFiles(bad);
    await pane.root.getByText('This is not an .xlsx workbook.').waitFor();
  });

  it('hands over a partner’s copy as a download that reads back', async () => {
    await pane.at('tab-partner').click();
    const [download] = await Promise.all([
      open.page.waitForEvent('download'),
      pane.at('make').click(),
    ]);
    expect(download.suggestedFilename()).toBe('pour-ledger-no-costs-2026-11-25.xlsx');
    await pane.root.getByText("is among your browser's downloads").waitFor();
    const bytes = new Uint8Array(await readFile(await download.path()));
    const read = readTables(bytes);
    if (read.kind === 'refused') throw new Error(read.sentence);
    const moves = read.tables.find(({ name }) => name === 'Partner_LedgerLines');
    expect(moves?.headers).not.toContain('Value');
    expect(moves?.rows.length).toBe(tableOf(await saved(), 'LedgerLines').rows.length);
    expect((await byExcelJs(bytes)).worksheets.map(({ name }) => name)).toContain('Stock list');
  });
});
