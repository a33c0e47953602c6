import { copyFile, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { describeStarter } from '../../src/starter/file/describe-starter.ts';
import type { NewSheet } from '../../src/xlsx/write/new-workbook.ts';
import { rangeAt } from '../../src/starter/cells/cell-names.ts';
import { demoWorkbook } from '../../src/starter/starter-workbook.ts';
import type { PageTools } from '../hosts/page/open-page.ts';
import { startChromium } from '../support/chromium.ts';
import { type BuiltWorkbench, demoFile, openBuilt, startBuilt } from './built-workbench.ts';

/** The day that the file's answers are of. */
const TODAY = '2026-11-25';
const answering = describeStarter(demoWorkbook(), 'any').sheets.filter(
  ({ hidden, tables = [] }) => hidden !== true && tables.length === 0,
);

describe('the sheets that answer, worked out anew by the grid', () => {
  let folder: string;
  let workbench: BuiltWorkbench;
  let browser: Browser;
  let open: PageTools;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'pour-ledger-grid-'));
    const file = join(folder, 'ledger.xlsx');
    await copyFile(demoFile, file);
    workbench = await startBuilt([file], folder);
    browser = await startChromium();
    open = await openBuilt(browser, workbench.address, `${TODAY}T09:00:00`);
  });
  afterAll(async () => {
    await browser.close();
    await workbench.close();
    await rm(folder, { recursive: true });
  });

  it.each(answering.map((sheet) => [sheet.name, sheet] as const))(
    '%s shows what the file holds',
    async (name, sheet) => {
      const shown = await open.values(name, usedRange(sheet));
      for (const { row, column, value } of sheet.cells ?? []) {
        const found = shown[row]?.[column] ?? '';
        const where = `${name} ${String(row + 1)},${String(column + 1)}`;
        if (typeof value === 'number') expect(Number(found), where).toBeCloseTo(value, 6);
        else expect(found, where).toBe(value);
      }
    },
  );
});

function usedRange({ cells = [] }: NewSheet): string {
  return rangeAt({
    startRow: 0,
    startColumn: 0,
    endRow: Math.max(...cells.map(({ row }) => row)),
    endColumn: Math.max(...cells.map(({ column }) => column)),
  });
}
