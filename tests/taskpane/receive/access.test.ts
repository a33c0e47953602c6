import { describe, expect, it } from 'vitest';
import { checkAccess, type Places, tabTo } from '../access-checks.ts';
import { column, usePane } from '../pane-steps.ts';

const places: Places = [
  ['what came', (page) => page.locator('#tab-receive').click()],
  ['with a problem', (page) => page.locator('#next').click()],
  [
    'with lines, one of them wrong',
    async (page) => {
      await page.locator('#material-0').selectOption('Clear base');
      await page.locator('#packs-0').fill('2');
      await page.locator('#quantity-0').fill('1');
      await page.locator('#add-line').click();
      await page.locator('#material-1').selectOption('Blue liquid');
      await page.locator('#paid-1').fill('x');
    },
  ],
  [
    'look over',
    async (page) => {
      await page.locator('#quantity-0').fill('');
      await page.locator('#paid-0').fill('90');
      await page.locator('#packs-1').fill('1');
      await page.locator('#paid-1').fill('6');
      await page.locator('#freight').fill('3');
      await page.locator('#next').click();
      await page.locator('pour-receive-preview').waitFor();
    },
  ],
  [
    'recorded',
    async (page) => {
      await page.locator('#record').click();
      await page.locator('pour-receive-done').waitFor();
    },
  ],
];

checkAccess(places);

const openPane = usePane();

describe('the keyboard alone', () => {
  it('records a delivery', async () => {
    const page = await openPane();
    await page.locator('#tab-receive').click();
    await page.locator('pour-receive').waitFor();
    await tabTo(page, 'material-0');
    await page.keyboard.type('Clear');
    await tabTo(page, 'packs-0');
    await page.keyboard.type('3');
    await tabTo(page, 'paid-0');
    await page.keyboard.type('27');
    await tabTo(page, 'next');
    await page.keyboard.press('Enter');
    await page.locator('pour-receive-preview').waitFor();
    await tabTo(page, 'record');
    await page.keyboard.press('Enter');
    await page.locator('pour-receive-done').waitFor();
    expect((await column(page, 'Lots', 'Quantity')).at(-1)).toBe(3000);
  });
});
