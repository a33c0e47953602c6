import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { tabTo } from './access-checks.ts';
import { marketWorkshop } from './market-workshop.ts';
import { choose, column, focused, heading, usePane, walkTo } from './pane-steps.ts';

const openPane = usePane();

describe('the tasks', () => {
  it('keep a draft each, and come back after a reload to the one shown last', async () => {
    const page = await openPane(marketWorkshop);
    await choose(page, '7');
    await page.locator('#tab-sell').click();
    expect(await focused(page)).toBe('tab-sell');
    await page.locator('#bars-0-0').fill('2');
    await page.reload();
    await heading(page).getByText('What was sold?').waitFor();
    expect(await page.locator('#bars-0-0').inputValue()).toBe('2');
    await page.locator('#tab-pour').click();
    expect(await page.locator('#bars').inputValue()).toBe('7');
    expect(await page.locator('[role=tab][aria-selected=true]').textContent()).toMatch(/Pour/u);
  });

  it('write one after the other, never from what the other is about to change', async () => {
    const page = await openPane(marketWorkshop);
    await walkTo(page, 'preview');
    const release = await page.evaluateHandle(() => window.pane.port.hold());
    await page.locator('#record').click();
    await page.getByText('Recording…').waitFor();
    await page.locator('#tab-sell').click();
    await page.locator('#bars-0-0').fill('2');
    await page.locator('#next').click();
    await page.locator('#record').click();
    await page.getByText('Recording…').waitFor();
    expect(await page.evaluate(() => window.pane.port.asked.length)).toBe(1);
    await release.evaluate((open) => {
      open();
    });
    await page.locator('pour-sell-done').waitFor();
    await page.locator('#tab-pour').click();
    await page.locator('pour-done').waitFor();
    expect(await column(page, 'Sales', 'Bars')).toEqual([2]);
    expect(await column(page, 'Batches', 'Batch')).toHaveLength(3);
  });

  it('are moved between with arrow keys, Home and End', async () => {
    const page = await openPane(marketWorkshop);
    const tabs = await page.locator('[role=tab]').evaluateAll((all) => all.map(({ id }) => id));
    const [first = '', second = ''] = tabs;
    const last = tabs.at(-1) ?? '';
    await tabTo(page, first);
    for (const [key, tab] of [
      ['ArrowRight', second],
      ['End', last],
      ['ArrowRight', first],
      ['ArrowLeft', last],
      ['Home', first],
    ] as const) {
      await page.keyboard.press(key);
      await page.locator(`#${tab}[aria-selected=true]`).waitFor();
      expect(await focused(page)).toBe(tab);
    }
  });

  it('leave the keys to the cell that is being typed in, though another page shows', async () => {
    const page = await openPane();
    await page.evaluate(() => {
      document.body.append(Object.assign(document.createElement('input'), { id: 'cell' }));
    });
    await page.locator('#cell').focus();
    await page.keyboard.type('half');
    await editMaterials(page, [['Half a line']]);
    await heading(page).getByText('Mend this first').waitFor();
    await page.keyboard.type(' typed');
    await editMaterials(page, []);
    await heading(page).getByText('What will you pour?').waitFor();
    await page.keyboard.type(' on');
    expect(await page.locator('#cell').inputValue()).toBe('half typed on');
  });
});

/** Puts these rows below those of the small workshop's materials. */
const editMaterials = (page: Page, more: readonly (readonly Cell[])[]) =>
  page.evaluate((rows) => {
    window.pane.port.edit((tables) =>
      tables.map((table) =>
        table.name === 'Materials'
          ? { ...table, rows: [...table.rows.filter(([name]) => name !== 'Half a line'), ...rows] }
          : table,
      ),
    );
  }, more);
