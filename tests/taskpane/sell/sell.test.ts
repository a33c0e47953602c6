import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { marketWorkshop } from '../market-workshop.ts';
import { column, heading, tables, usePane } from '../pane-steps.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';
import { sellWalk } from './sell-walk.ts';

const openPane = usePane();

async function openSell(at = marketWorkshop): Promise<Page> {
  const page = await openPane(at);
  await page.locator('#tab-sell').click();
  await heading(page).getByText('What was sold?').waitFor();
  return page;
}

async function toPreview(page: Page): Promise<void> {
  await page.locator('#next').click();
  await page.locator('pour-sell-preview').waitFor();
}

describe('a day at a fair', () => {
  it('is previewed, recorded, summed up, and undone exactly', async () => {
    const page = await openSell();
    const before = await tables(page);
    await page.getByRole('button', { name: 'type it first: Fairs' }).click();
    expect(await page.evaluate(() => window.pane.port.shown)).toEqual([{ table: 'Fairs', row: 3 }]);
    await page.locator('#fair').selectOption('Quay Fair');
    await page.getByText('stall fee $40.00, travel $12.00, other cost $0.00, 8 hours').waitFor();
    expect(await page.locator('#sold-on').inputValue()).toBe('2026-11-21');
    await sellWalk.enter(page);
    await toPreview(page);
    const preview = page.locator('pour-sell-preview');
    // Fees by takings, by hand: 1.50 × 30.80, 5.50, 13.20 ÷ 49.50.
    await preview.getByRole('row', { name: 'Harbour Light 4 $7.70 $0.93' }).waitFor();
    await preview.getByRole('row', { name: 'Harbour Light 1 $5.50 $0.17' }).waitFor();
    await preview.getByRole('row', { name: 'Plain Wave 3 $4.40 $0.40' }).waitFor();
    await preview
      .getByRole('row', { name: /Harbour Light sold, lot B-HL\. Quay Fair −5 −\$10\.00/u })
      .waitFor();
    await preview.getByRole('row', { name: 'Plain Wave 6 3', exact: true }).waitFor();
    expect(await tables(page)).toEqual(before);
    await page.locator('#record').click();
    await heading(page).getByText('Recorded').waitFor();
    // By hand: tax 10 ÷ 110 of each line = 4.50; bars 5 × 3.10 + 3 × 0.60 = 17.30; stall and travel 52;
    // 49.50 − 4.50 − 1.50 − 17.30 − 52 = −25.80, over 8 hours −3.225; 52 ÷ (43.50 − 17.30) × 8 = 15.9.
    await page
      .getByText(
        'It cost $25.80 more than it brought in. 16 bars at these prices pay for stall and travel; you sold 8.',
      )
      .waitFor();
    await page.getByText('−$3.23').waitFor();
    expect(await column(page, 'Sales', 'Bars')).toEqual([4, 1, 3]);
    expect(await column(page, 'Sales', 'Fair')).toEqual(['Quay Fair', 'Quay Fair', 'Quay Fair']);
    await page.locator('#undo').click();
    await page.locator('#yes').click();
    await heading(page).getByText('Undone').waitFor();
    expect(await column(page, 'Sales', 'Bars')).toEqual([4, 1, 3, -4, -1, -3]);
    const quantities = await column(page, 'LedgerLines', 'Quantity');
    expect(quantities.slice(-4)).toEqual([-5, -3, 5, 3]);
    await page.locator('#another').click();
    await page.getByText('undone').waitFor();
    await page.getByText('10 bars in stock').waitFor();
  });

  it('can be undone from the list of last selling days', async () => {
    const page = await openSell();
    await sellWalk.enter(page);
    await toPreview(page);
    await page.locator('#record').click();
    await page.locator('#another').click();
    await page.locator('pour-undo-button[name^="Quay Fair"] #undo').click();
    await page.locator('#yes').click();
    await page.getByText('The bars are back in stock.').waitFor();
    expect(await column(page, 'Sales', 'Bars')).toEqual([4, 1, 3, -4, -1, -3]);
  });
});

describe('rows from a sheet', () => {
  it('are taken over all or not at all, with the nearest name', async () => {
    const page = await openSell();
    await page.locator('summary').click();
    await page
      .locator('#pasted')
      .fill('Design\tBars\tPrice\nPlain Wave\t2\t$4.50\nHarbor Light\t1');
    await page.locator('#take-rows').click();
    await page.getByText('Row 3: "Harbor Light" is not a design in Designs.').waitFor();
    await page.getByText('Did you mean "Harbour Light"?').waitFor();
    await page.getByText('0 bars, $0.00').waitFor();
    await page.locator('#pasted').fill('Plain Wave\t2\t$4.50\nHarbour Light\t1');
    await page.locator('#take-rows').click();
    await page.getByText('Taken over: 2 rows, 3 bars.').waitFor();
    await page.getByText('3 bars, $16.00').waitFor();
  });

  it('can be pasted anywhere on the page', async () => {
    const page = await openSell();
    await page.locator('#bars-0-0').evaluate((field) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', 'Plain Wave\t2\nHarbour Light\t1\n');
      field.dispatchEvent(
        new ClipboardEvent('paste', { clipboardData, bubbles: true, composed: true }),
      );
    });
    await page.getByText('Taken over: 2 rows, 3 bars.').waitFor();
    expect(await page.locator('#bars-0-0').inputValue()).toBe('1');
  });
});

describe('what can’t be', () => {
  it('is said where the workbook has no table for it', async () => {
    const made = withRows(smallWorkshop, 'LedgerLines', (rows) => [
      ...rows,
      ...rowsOf(['M-3|2026-10-05|made|Plain Wave|6|B-OLD|3.6|B-OLD||']),
    ]);
    const page = await openSell(made);
    await page.locator('#bars-0-0').fill('1');
    await page.locator('#next').click();
    await page.getByText('The workbook has no Sales table to write to.').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });

  it('is looked over once more where the bars went meanwhile', async () => {
    const page = await openSell();
    await sellWalk.enter(page);
    await toPreview(page);
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) =>
          table.name === 'LedgerLines'
            ? {
                ...table,
                rows: [
                  ...table.rows,
                  ['M-9', '2026-11-22', 'sold', 'Harbour Light', -7, 'B-HL', -14, '', '', ''],
                ],
              }
            : table,
        ),
      );
    });
    await page.getByText('5 bars of Harbour Light are more than the 3 in stock.').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });
});

describe('a fair chosen for another day than its own', () => {
  it('is asked about before anything is written', async () => {
    const page = await openSell();
    await page.locator('#fair').selectOption('Quay Fair');
    await page.locator('#sold-on').fill('2026-11-22');
    await page.locator('#bars-0-0').fill('1');
    await page.locator('#next').click();
    await page
      .getByText('Quay Fair opens on 21 Nov 2026, and the date sold is 22 Nov 2026.')
      .waitFor();
    expect(await page.locator('#record').count()).toBe(0);
    await page.getByText('These bars were sold at Quay Fair on 22 Nov 2026').click();
    await page.locator('#record').click();
    await page.locator('pour-sell-done').waitFor();
  });
});

describe('sales that were undone', () => {
  it('are not shown again once another task was looked at', async () => {
    const page = await openSell();
    await page.locator('#bars-0-0').fill('1');
    await page.locator('#next').click();
    await page.locator('#record').click();
    await page.locator('#undo').click();
    await page.locator('#yes').click();
    await heading(page).getByText('Undone').waitFor();
    await page.locator('#tab-count').click();
    await page.locator('#tab-sell').click();
    await heading(page).getByText('What was sold?').waitFor();
  });
});
