import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { column, usePane, walkTo } from '../pane-steps.ts';
import { smallWorkshop } from '../small-workshop.ts';

const openPane = usePane();

describe('posting once', () => {
  it('posts once on a double click', async () => {
    const page = await openPane();
    await walkTo(page, 'preview');
    const release = await page.evaluateHandle(() => window.pane.port.hold());
    await page.locator('#record').dblclick();
    await page.getByText('Recording…').waitFor();
    await release.evaluate((open) => {
      open();
    });
    await page.locator('pour-done').waitFor();
    expect(await page.evaluate(() => window.pane.port.asked.length)).toBe(1);
    expect(await column(page, 'Batches', 'Batch')).toHaveLength(2);
  });

  it('posts once on the try after a refusal, and says what was refused', async () => {
    const page = await openPane();
    await walkTo(page, 'preview');
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'refuses', sentence: 'The sheet is protected.' });
    });
    await page.locator('#record').click();
    await page.getByText('Nothing was written. The sheet is protected.').waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').waitFor();
    expect(await column(page, 'Batches', 'Batch')).toHaveLength(2);
  });

  it('finishes a recording that broke off halfway, even after a reload', async () => {
    const page = await openPane();
    await walkTo(page, 'preview');
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'breaks halfway', rows: 4 });
    });
    await page.locator('#record').click();
    await page.getByText('some of its lines are in the workbook').waitFor();
    await page.reload();
    await page.getByText('some of its lines are in the workbook').waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').waitFor();
    const entries = await column(page, 'Moves', 'Entry');
    expect(new Set(entries).size).toBe(entries.length);
    expect(await column(page, 'Batches', 'Batch')).toHaveLength(2);
  });
});

describe('a reload', () => {
  it.each(['choose', 'weigh', 'outcome', 'preview', 'done'] as const)(
    'at %s finds everything as it was left',
    async (step) => {
      const page = await openPane();
      await walkTo(page, step);
      if (step === 'weigh') await page.getByText('Blue liquid').click();
      if (step === 'outcome') {
        await page.locator('#good').fill('4');
        await page.locator('#note').fill('<b>thick</b>');
      }
      const shown = () =>
        page.locator(`pour-${step}`).evaluate((element) => {
          const fields =
            element.shadowRoot?.querySelectorAll('input, select, fluent-checkbox') ?? [];
          return {
            text: element.shadowRoot?.querySelector('h2')?.parentElement?.textContent,
            fields: [...fields].map((field) =>
              'checked' in field && field.localName === 'fluent-checkbox'
                ? field.checked
                : (field as HTMLInputElement).value,
            ),
          };
        });
      const before = await shown();
      await page.reload();
      await page.locator(`pour-${step}`).waitFor();
      expect(await shown()).toEqual(before);
      if (step === 'done') expect(await column(page, 'Batches', 'Batch')).toHaveLength(2);
    },
  );
});

describe('names that look like code', () => {
  it('stay text everywhere', async () => {
    const formula = '=HYPERLINK("x")';
    const tag = '<img src=x onerror="document.title=1">';
    const swap = (cell: Cell): Cell =>
      typeof cell !== 'string'
        ? cell
        : cell
            .replaceAll('Harbour Light', formula)
            .replaceAll('Sweet orange', tag)
            .replaceAll('Blue', `${tag}Blue`);
    const named = smallWorkshop.map((table) => ({
      ...table,
      rows: table.rows.map((row) => row.map(swap)),
    }));
    const page = await openPane({ tables: named });
    await page.locator('#design').selectOption(formula);
    await page.locator('#bars').fill('6');
    for (const step of ['weigh', 'outcome', 'preview']) {
      await page.locator('#next').click();
      await page.locator(`pour-${step}`).waitFor();
      expect(await page.locator('img').count()).toBe(0);
    }
    await page.getByText(tag, { exact: false }).first().waitFor();
    await page.locator('#record').click();
    await page.getByText(formula, { exact: false }).first().waitFor();
    expect(await column(page, 'Batches', 'Design')).toEqual(['Plain Wave', formula]);
    expect(await page.title()).toBe('Pour Ledger');
    expect(await page.locator('img').count()).toBe(0);
  });
});
