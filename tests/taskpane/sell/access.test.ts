import { describe, expect, it } from 'vitest';
import { checkAccess, type Places, tabTo } from '../access-checks.ts';
import { marketWorkshop } from '../market-workshop.ts';
import { column, usePane } from '../pane-steps.ts';

const places: Places = [
  ['what was sold', (page) => page.locator('#tab-sell').click()],
  ['with a problem', (page) => page.locator('#next').click()],
  [
    'with bars, too many, and a fair',
    async (page) => {
      await page.locator('#fair').selectOption('Spring Fair');
      await page.locator('#bars-0-0').fill('11');
      await page.getByText('Some at another price').click();
      await page.locator('#bars-1-0').fill('x');
    },
  ],
  [
    'rows that can’t be taken',
    async (page) => {
      await page.locator('summary').click();
      await page.locator('#pasted').fill('Moon\t1\nHarbour Light\tx');
      await page.locator('#take-rows').click();
    },
  ],
  [
    'look over',
    async (page) => {
      await page.locator('#pasted').fill('Harbour Light\t2\nPlain Wave\t1');
      await page.locator('#take-rows').click();
      await page.locator('#next').click();
      await page.locator('pour-sell-preview').waitFor();
    },
  ],
  [
    'recorded',
    async (page) => {
      await page.locator('#record').click();
      await page.locator('pour-sell-done').waitFor();
    },
  ],
  ['undo?', (page) => page.locator('#undo').click()],
  ['undone', (page) => page.locator('#yes').click()],
  ['again, with last days', (page) => page.locator('#another').click()],
];

checkAccess(places, marketWorkshop);

const openPane = usePane();

describe('the keyboard alone', () => {
  it('moves between tasks and records sales', async () => {
    const page = await openPane({ tables: marketWorkshop });
    await tabTo(page, 'tab-pour');
    await page.keyboard.press('ArrowRight');
    await page.locator('pour-sell').waitFor();
    await page.keyboard.press('End');
    await page.keyboard.press('Home');
    await page.locator('pour-choose').waitFor();
    await page.keyboard.press('ArrowRight');
    await tabTo(page, 'bars-0-0');
    await page.keyboard.type('2');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    await page.getByText('3 bars, $21.00').waitFor();
    await tabTo(page, 'next');
    await page.keyboard.press('Enter');
    await page.locator('pour-sell-preview').waitFor();
    await tabTo(page, 'record');
    await page.keyboard.press('Enter');
    await page.locator('pour-sell-done').waitFor();
    expect(await column(page, 'Sales', 'Bars')).toEqual([3]);
  });
});
