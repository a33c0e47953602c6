import { describe, expect, it } from 'vitest';
import { checkAccess, type Places, tabTo } from '../access-checks.ts';
import { marketWorkshop } from '../market-workshop.ts';
import { column, usePane } from '../pane-steps.ts';

const places: Places = [
  ['what is on the shelf', (page) => page.locator('#tab-count').click()],
  ['with a problem', (page) => page.locator('#next').click()],
  [
    'with figures that can’t be',
    async (page) => {
      await page.getByLabel('Clear base').fill('x');
      await page.locator('summary').click();
      await page.locator('#other').fill('Moon');
      await page.locator('#add-other').click();
    },
  ],
  [
    'differences',
    async (page) => {
      await page.getByLabel('Clear base').fill('20');
      await page.getByLabel('Wrapper').fill('100');
      await page.locator('#next').click();
      await page.locator('pour-count-preview').waitFor();
    },
  ],
  [
    'recorded',
    async (page) => {
      await page.locator('#record').click();
      await page.locator('pour-count-done').waitFor();
    },
  ],
  ['again', (page) => page.locator('#another').click()],
];

checkAccess(places, marketWorkshop);

const openPane = usePane();

describe('the keyboard alone', () => {
  it('counts a shelf', async () => {
    const page = await openPane({ tables: marketWorkshop });
    await page.locator('#tab-count').click();
    await page.locator('pour-count').waitFor();
    await tabTo(page, 'base-0');
    await page.keyboard.type('2290');
    await tabTo(page, 'next');
    await page.keyboard.press('Enter');
    await page.locator('pour-count-preview').waitFor();
    await tabTo(page, 'record');
    await page.keyboard.press('Enter');
    await page.locator('pour-count-done').waitFor();
    expect((await column(page, 'Moves', 'Quantity')).at(-1)).toBe(-10);
  });
});
