import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { ValueWorkbook } from '../../../src/workbook/port.ts';
import { tabTo } from '../access-checks.ts';
import { focused, usePane } from '../pane-steps.ts';
import { withRows } from '../small-workshop.ts';
import { soundWorkshop } from './sound-workshop.ts';

const openPane = usePane();
const given = (page: Page): Promise<readonly ValueWorkbook[]> =>
  page.evaluate(() => window.pane.port.given);

async function openShare(tables = soundWorkshop): Promise<Page> {
  const page = await openPane(tables);
  await page.locator('#tab-care').click();
  await page.locator('#tab-partner').click();
  await page.locator('pour-partner').waitFor();
  return page;
}

describe('a copy for a partner', () => {
  it('is without costs unless asked, and says where it is', async () => {
    const page = await openShare();
    await page.locator('#make').click();
    await page.getByText('pour-ledger-no-costs-2026-11-25.xlsx is here.').waitFor();
    await page.getByLabel('With costs, prices and suppliers').check();
    await page.locator('#make').click();
    await page.getByText('pour-ledger-2026-11-25.xlsx is here.').waitFor();
    const lots = (await given(page)).map(({ sheets }) =>
      sheets.find(({ name }) => name === 'Lots')?.columns.map(({ header }) => header),
    );
    expect(lots).toEqual([
      ['Lot', 'Material', 'Received', 'Quantity', 'Best before'],
      ['Lot', 'Material', 'Received', 'Quantity', 'Paid', 'Freight', 'Best before'],
    ]);
    expect(await page.evaluate(() => window.pane.port.written.length)).toBe(0);
  });

  it('says that it is being made and can be stopped, which hands nothing over', async () => {
    const page = await openShare();
    await page.evaluate(() => {
      const { files } = window.pane.port;
      const give = files.give.bind(files);
      Object.assign(files, {
        give: (_: unknown, signal: AbortSignal) =>
          new Promise((_resolve, reject) => {
            signal.addEventListener('abort', () => {
              Object.assign(files, { give });
              reject(signal.reason as Error);
            });
          }),
      });
    });
    await page.locator('#make').click();
    await page.getByRole('status').getByText('Making the copy…').waitFor();
    await tabTo(page, 'stop');
    await page.keyboard.press('Enter');
    await page.getByRole('status').getByText('Stopped. No copy was made.').waitFor();
    expect(await focused(page)).toBe('make');
    expect(await given(page)).toEqual([]);
    await page.locator('#make').click();
    await page.getByText('pour-ledger-no-costs-2026-11-25.xlsx is here.').waitFor();
  });

  it('warns of a supplier whose name is part of another name', async () => {
    const page = await openShare(
      withRows(
        soundWorkshop.map((table) =>
          table.name === 'Lots'
            ? {
                ...table,
                headers: [...table.headers, 'Supplier'],
                rows: table.rows.map((row) => [...row, row[0] === 'L-8' ? 'Wrapper' : '']),
              }
            : table,
        ),
        'LedgerLines',
        () => [],
      ),
    );
    await page.getByText('Materials still has "Wrapper" in it').waitFor();
  });
});
