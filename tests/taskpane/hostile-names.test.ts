import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { marketWorkshop } from './market-workshop.ts';
import { column, usePane } from './pane-steps.ts';
import { rowsOf, smallWorkshop, withRows } from './small-workshop.ts';

const openPane = usePane();
const tag = '<img src=x onerror="document.title=1">';
const formula = '=HYPERLINK("x")';
const swap = (cell: Cell): Cell =>
  typeof cell !== 'string'
    ? cell
    : cell
        .replaceAll('Harbour Light', formula)
        .replaceAll('Quay Fair', `${tag}Fair`)
        .replaceAll('Clear base', `${tag}base`);
const sold = withRows(marketWorkshop, 'Sales', () =>
  rowsOf(['S-1.01|2026-11-21|Harbour Light|1|7|Quay Fair|0']),
);
const named = sold.map((table) => ({ ...table, rows: table.rows.map((row) => row.map(swap)) }));

describe('names that look like code', () => {
  it('stay text in every task, and in what is written', async () => {
    const page = await openPane(named);
    for (const task of ['receive', 'count', 'costs', 'now', 'sell']) {
      await page.locator(`#tab-${task}`).click();
      await page.locator(`pour-${task} h2`).waitFor();
      expect(await page.locator('img').count()).toBe(0);
    }
    await page.locator('#fair').selectOption(`${tag}Fair`);
    await page.getByLabel(`Bars of ${formula}`, { exact: true }).fill('2');
    await page.locator('#next').click();
    await page.locator('#record').click();
    await page.locator('pour-sell-done').getByText(`${tag}Fair so far`).waitFor();
    expect(await column(page, 'Sales', 'Design')).toEqual([formula, formula]);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).toBe('Pour Ledger');
  });

  it('stay text in every step of a pour', async () => {
    const poured = smallWorkshop.map((table) => ({
      ...table,
      rows: table.rows.map((row) => row.map(swap)),
    }));
    const page = await openPane(poured);
    await page.locator('#design').selectOption(formula);
    await page.locator('#bars').fill('6');
    for (const step of ['weigh', 'outcome', 'preview']) {
      await page.locator('#next').click();
      await page.locator(`pour-${step}`).waitFor();
      expect(await page.locator('img').count()).toBe(0);
    }
    await page.getByText(`${tag}base`, { exact: false }).first().waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').getByText(formula, { exact: false }).first().waitFor();
    expect(await column(page, 'Batches', 'Design')).toEqual(['Plain Wave', formula]);
    expect(await page.title()).toBe('Pour Ledger');
    expect(await page.locator('img').count()).toBe(0);
  });
});
