import type { Page } from 'playwright-core';
import type { TableData } from '../../../src/workbook/port.ts';
import { rowsOf, withRows } from '../small-workshop.ts';
import { recordingPages, type TaskWalk } from '../task-walk.ts';
import { soundWorkshop } from './sound-workshop.ts';

/** The sound workshop as someone else went on with it: a lot, two losses, a price and a recipe. */
export const otherCopy: readonly TableData[] = [
  ['Lots', ['L-9|Clear base|2026-11-02|500|4.5||']] as const,
  [
    'LedgerLines',
    [
      'W-1|2026-11-03|wasted|Clear base|-20|L-9|-0.18|||',
      'W-2|2026-11-03|wasted|Wrapper|-1|L-8|-0.15|||',
    ],
  ] as const,
].reduce<readonly TableData[]>(
  (tables, [name, lines]) => withRows(tables, name, (rows) => [...rows, ...rowsOf(lines)]),
  withRows(
    withRows(soundWorkshop, 'Materials', (rows) =>
      rows.map((row) => (row[0] === 'Clear base' ? row.with(6, 8) : row)),
    ),
    'Colours',
    (rows) => rows.map((row) => (row[0] === 'Pearl' && row[2] === 50 ? row.with(2, 60) : row)),
  ),
);

/** Opens the page on which a copy is chosen. */
export async function toMerge(page: Page): Promise<void> {
  await page.locator('#tab-care').click();
  await page.locator('#tab-merge').click();
  await page.locator('pour-merge').waitFor();
}

/** Gives the page a copy; in memory a workbook's file is its tables. */
export const giveCopy = (page: Page, copy: readonly TableData[]): Promise<void> =>
  page.locator('#copy').setInputFiles({
    name: 'other.xlsx',
    mimeType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    buffer: Buffer.from(JSON.stringify(copy)),
  });

/** Chooses a copy, and waits for what it brings in. */
export async function chooseCopy(page: Page, copy: readonly TableData[]): Promise<void> {
  await giveCopy(page, copy);
  await page.locator('pour-merge-preview').waitFor();
}

/** Chooses the other copy's version of what differs and may be chosen. */
export const takeTheOthers = (page: Page): Promise<void> =>
  page.getByLabel('Take the other’s').check();

/** Holds the reading of files back; `release` in the page lets it go on. */
export const holdReading = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const { files } = window.pane.port;
    const read = files.readTables.bind(files);
    const gate = new Promise<void>((resolve) => {
      Object.assign(window, { release: resolve });
    });
    Object.assign(files, {
      readTables(bytes: Uint8Array, signal: AbortSignal) {
        Object.assign(window, { reading: signal });
        return gate.then(() => read(bytes, signal));
      },
    });
  });

/** Whether the host was told to stop the reading that was held back. */
export const isReadingStopped = (page: Page): Promise<boolean> =>
  page.evaluate(() => (window as unknown as { reading: AbortSignal }).reading.aborted);

export const release = (page: Page): Promise<void> =>
  page.evaluate(() => {
    (window as unknown as { release(): void }).release();
  });

/** Bringing a copy in, with all that can be said of one; then a copy for a partner. */
export const mergeWalk: TaskWalk = {
  name: 'care',
  tables: soundWorkshop,
  pages: [
    ['choose a copy', toMerge],
    [
      'no workbook',
      async (page) => {
        await page
          .locator('#copy')
          .setInputFiles({ name: 'x.xlsx', mimeType: '', buffer: Buffer.from('no') });
        await page.getByText('This is not an .xlsx workbook.').waitFor();
      },
    ],
    [
      'being read',
      async (page) => {
        await holdReading(page);
        await giveCopy(page, otherCopy);
        await page.locator('#stop').waitFor();
      },
    ],
    [
      'stopped',
      async (page) => {
        await page.locator('#stop').click();
        await page.getByText('Stopped. Nothing was brought in').waitFor();
        await release(page);
      },
    ],
    ['what comes in', (page) => chooseCopy(page, otherCopy)],
    ['chosen', takeTheOthers],
    ...recordingPages('pour-merge-done'),
    [
      'a copy for a partner',
      async (page) => {
        await page.locator('#tab-partner').click();
        await page.locator('pour-partner').waitFor();
      },
    ],
    ['made', (page) => page.locator('#make').click()],
  ],
};
