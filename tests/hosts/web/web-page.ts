import { readFile } from 'node:fs/promises';
import type { BrowserContext, Page } from 'playwright-core';
import { writeWorkbook } from '../../../src/xlsx/write/write-workbook.ts';
import { built } from '../../build/built.ts';
import { isOpen, listen } from '../page/open-page.ts';

/** A small workbook of one sheet. */
export const smallFile = (): Uint8Array =>
  writeWorkbook({
    sheets: [
      {
        name: 'Shelf',
        cells: [
          { row: 0, column: 0, value: 'Soap' },
          { row: 1, column: 0, value: 12 },
          { row: 2, column: 0, value: 24, formula: '=A2*2' },
        ],
      },
    ],
  });

/** A tab of the page that any web host can serve. */
export interface Tab {
  readonly page: Page;
  readonly complaints: string[];
  /** Waits until the workbook is open. */
  isOpen(): Promise<unknown>;
  /** The value of a cell of the small workbook. */
  value(cell: string): Promise<unknown>;
  type(cell: string, text: string): Promise<void>;
  /** Waits until the header line says so. */
  says(words: string | RegExp): Promise<void>;
  press(words: string | RegExp): Promise<void>;
}

/** Opens a tab at an address, with the tests' handle brought along; `script` runs before the page's own. */
export async function openTab(context: BrowserContext, address: string, script = ''): Promise<Tab> {
  const page = await context.newPage();
  await page.addInitScript({ content: built('for-tests/web-test-handle.js') });
  await page.addInitScript({ content: script });
  const complaints = listen(page, address.split('#')[0] ?? address);
  await page.goto(address);
  return {
    page,
    complaints,
    isOpen: () => isOpen(page),
    value: (cell) =>
      page.evaluate((where) => window.pourLedgerWorkbench?.values('Shelf', where)[0]?.[0], cell),
    async type(cell, text) {
      await page.evaluate((where) => {
        window.pourLedgerWorkbench?.select('Shelf', where);
      }, cell);
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
    },
    async says(words) {
      await page
        .getByText(words, { exact: typeof words === 'string' })
        .first()
        .waitFor();
    },
    press: (words) => page.getByRole('button', { name: words }).click(),
  };
}

/** Has a file chosen as in a browser that can't save back into it. */
export async function chooseFile({ page }: Tab, name: string, bytes: Uint8Array): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open a workbook from this device' }).click();
  await (await chooser).setFiles({ name, mimeType: '', buffer: Buffer.from(bytes) });
}

/** The bytes of what a press hands over. */
export async function downloaded({ page }: Tab): Promise<Uint8Array> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Download', exact: true }).click();
  return new Uint8Array(await readFile(await (await download).path()));
}

/** A browser that can't save back into a file. */
export const WITHOUT_FILES = 'delete window.showOpenFilePicker;';
