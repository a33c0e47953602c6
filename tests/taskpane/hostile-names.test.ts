import { describe, expect, it } from 'vitest';
import type { Cell, TableData } from '../../src/workbook/port.ts';
import { checkWalk } from './care/check-walk.ts';
import { chooseCopy, otherCopy, takeTheOthers, toMerge } from './care/merge-walk.ts';
import { soundWorkshop } from './care/sound-workshop.ts';
import { marketWorkshop } from './market-workshop.ts';
import { column, usePane } from './pane-steps.ts';
import { rowsOf, smallWorkshop, withRows } from './small-workshop.ts';

const openPane = usePane();
/** Names that a page might run, and words that every object of the language has by itself. */
const sets = [
  {
    design: '=HYPERLINK("x")',
    fair: '<img src=x onerror="document.title=1">Fair',
    base: '<img src=x onerror="document.title=1">base',
  },
  { design: 'constructor', fair: 'toString', base: '__proto__' },
  { design: '__proto__', fair: 'constructor', base: 'constructor' },
];

describe.each(sets)('names such as $design, $fair, $base', ({ design, fair, base }) => {
  const swap = (cell: Cell): Cell =>
    typeof cell !== 'string'
      ? cell
      : cell
          .replaceAll('Harbour Light', design)
          .replaceAll('Quay Fair', fair)
          .replaceAll('Clear base', base);
  const swapped = (tables: readonly TableData[]): TableData[] =>
    tables.map((table) => ({ ...table, rows: table.rows.map((row) => row.map(swap)) }));
  const sold = withRows(marketWorkshop, 'Sales', () =>
    rowsOf(['S-1.01|2026-11-21|Harbour Light|1|7|Quay Fair|0']),
  );

  it('stay text in every task, and in what is written', async () => {
    const page = await openPane(swapped(sold));
    for (const task of ['receive', 'count', 'costs', 'reorder', 'now', 'sell']) {
      await page.locator(`#tab-${task}`).click();
      await page.locator(`pour-${task} h2`).first().waitFor();
      expect(await page.locator('img').count()).toBe(0);
    }
    await page.locator('#fair').selectOption(fair);
    await page.getByLabel(`Bars of ${design}`, { exact: true }).fill('2');
    await page.locator('#next').click();
    await page.locator('#record').click();
    await page.locator('pour-sell-done').getByText(`${fair} so far`).waitFor();
    expect(await column(page, 'Sales', 'Design')).toEqual([design, design]);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).toBe('Pour Ledger');
  });

  it('stay text in every step of a pour', async () => {
    const page = await openPane(swapped(smallWorkshop));
    await page.locator('#design').selectOption(design);
    await page.locator('#bars').fill('6');
    for (const step of ['weigh', 'outcome', 'preview']) {
      await page.locator('#next').click();
      await page.locator(`pour-${step}`).waitFor();
      expect(await page.locator('img').count()).toBe(0);
    }
    await page.getByText(base, { exact: false }).first().waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').getByText(design, { exact: false }).first().waitFor();
    expect(await column(page, 'Batches', 'Design')).toEqual(['Plain Wave', design]);
    expect(await page.title()).toBe('Pour Ledger');
    expect(await page.locator('img').count()).toBe(0);
  });

  it('are counted by what was typed, and by nothing else', async () => {
    const page = await openPane(swapped(smallWorkshop));
    await page.locator('#tab-count').click();
    const field = page.getByLabel(base, { exact: true });
    expect(await field.inputValue()).toBe('');
    await page.getByRole('status').getByText('0 of').waitFor();
    await field.fill('1000');
    await page.getByRole('status').getByText('1 of').waitFor();
    await page.locator('#next').click();
    await page.locator('pour-count-preview').getByText(base).first().waitFor();
  });

  it('stay text in the health check, which mends what it finds', async () => {
    const page = await openPane(swapped(checkWalk.tables));
    await page.locator('#tab-care').click();
    await page.locator('pour-check').waitFor();
    const before = (await column(page, 'LedgerLines', 'Entry')).length;
    await page.locator('#mend-1').click();
    await page.locator('pour-check-preview').waitFor();
    expect(await page.locator('img').count()).toBe(0);
    await page.locator('#record').click();
    await page.locator('pour-check-done').waitFor();
    expect((await column(page, 'LedgerLines', 'Entry')).length).toBe(before + 2);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).toBe('Pour Ledger');
  });

  it('are compared with another copy like any other', async () => {
    const page = await openPane(swapped(soundWorkshop));
    await toMerge(page);
    await chooseCopy(page, swapped(otherCopy));
    const preview = page.locator('pour-merge-preview');
    await preview.getByRole('row', { name: 'Pack price 9 8' }).waitFor();
    expect(await page.locator('img').count()).toBe(0);
    await takeTheOthers(page);
    await page.locator('#record').click();
    await page.locator('pour-merge-done').waitFor();
    const at = (await column(page, 'Materials', 'Material')).indexOf(base);
    expect((await column(page, 'Materials', 'Pack price'))[at]).toBe(8);
    expect((await column(page, 'Lots', 'Material')).at(-1)).toBe(base);
    expect(await page.title()).toBe('Pour Ledger');
  });

  it('come in from another copy as what this one does not have', async () => {
    const page = await openPane(soundWorkshop);
    const other = (
      [
        ['Materials', `${base}|base|g|||1000|9|`],
        ['Lots', `${fair}|${base}|2026-11-02|500|4.5||`],
        ['LedgerLines', `${design}|2026-11-03|wasted|${base}|-20|${fair}|-0.18|||`],
      ] as const
    ).reduce<readonly TableData[]>(
      (tables, [name, line]) => withRows(tables, name, (rows) => [...rows, ...rowsOf([line])]),
      soundWorkshop,
    );
    await toMerge(page);
    await chooseCopy(page, other);
    expect(await page.locator('img').count()).toBe(0);
    await page.locator('#record').click();
    await page.locator('pour-merge-done').waitFor();
    expect((await column(page, 'Materials', 'Material')).at(-1)).toBe(base);
    expect((await column(page, 'Lots', 'Lot')).at(-1)).toBe(fair);
    expect((await column(page, 'LedgerLines', 'Entry')).at(-1)).toBe(design);
  });

  it('are in the copy for a partner', async () => {
    const page = await openPane(swapped(soundWorkshop));
    await page.locator('#tab-care').click();
    await page.locator('#tab-partner').click();
    await page.locator('#make').click();
    await page.getByText('pour-ledger-no-costs-2026-11-25.xlsx is here.').waitFor();
    const [workbook] = await page.evaluate(() => window.pane.port.given);
    const materials = workbook?.sheets.find(({ name }) => name === 'Materials');
    expect(materials?.rows.map(([name]) => name)).toContain(base);
    expect(await page.locator('img').count()).toBe(0);
  });
});
