import type { Page } from 'playwright-core';
import { marketWorkshop } from '../market-workshop.ts';
import { recordingPages, undoingPages, type FormWalk } from '../task-walk.ts';

/** One bar, and a day on which it can't have been sold. */
const soldOn = (iso: string) => async (page: Page) => {
  await page.locator('#bars-0-0').fill('1');
  await page.locator('#sold-on').fill(iso);
};

/** A day at a fair: 4 Harbour Light at 7.70 and 1 at 5.50, 3 Plain Wave at 4.40; fees 1.50. */
export const sellWalk: FormWalk = {
  name: 'sell',
  tables: marketWorkshop,
  next: '#next',
  steps: {
    first: 'pour-sell',
    enter: 'pour-sell',
    preview: 'pour-sell-preview',
    done: 'pour-sell-done',
  },
  async enter(page) {
    await page.locator('#fair').selectOption('Quay Fair');
    await page.locator('#bars-0-0').fill('3');
    await page.getByRole('button', { name: 'One more: Bars of Harbour Light' }).click();
    await page.getByLabel('Price of Harbour Light').fill('7,70');
    await page.getByText('Some at another price').first().click();
    await page.getByLabel('Bars of Harbour Light, price 2', { exact: true }).fill('1');
    await page.getByLabel('Price of Harbour Light, price 2').fill('5.5');
    await page.getByLabel('Bars of Plain Wave', { exact: true }).fill('3');
    await page.getByLabel('Price of Plain Wave').fill('4.4');
    await page.locator('#fees').fill('1.5');
    await page.getByText('8 bars, $49.50').waitFor();
  },
  adds: [
    ['Sales', 'Bars', [4, 1, 3]],
    ['Sales', 'Fair', ['Quay Fair', 'Quay Fair', 'Quay Fair']],
    ['LedgerLines', 'Quantity', [-5, -3]],
  ],
  refusals: [
    ['nothing sold', async () => undefined, 'Nothing is sold yet.', ''],
    [
      'more than is in stock',
      (page) => page.locator('#bars-1-0').fill('7'),
      '7 bars of Plain Wave are more than the 6 in stock.',
      'bars-1-0',
    ],
    [
      'more than was there on the day',
      soldOn('2026-10-20'),
      '1 bar of Harbour Light is more than the 0 in stock.',
      'bars-0-0',
    ],
    [
      'no bars',
      (page) => page.locator('#bars-0-0').fill('0'),
      'Bars of Harbour Light is 0. Type a whole number, 1 or more.',
      'bars-0-0',
    ],
    [
      'a negative price',
      async (page) => {
        await page.locator('#bars-0-0').fill('1');
        await page.locator('#price-0-0').fill('-2');
      },
      'Price of Harbour Light is "-2".',
      'price-0-0',
    ],
    [
      'a day to come',
      soldOn('2026-11-26'),
      'Date sold is 26 Nov 2026, which is still to come.',
      '',
    ],
  ],
  keys: [
    { to: 'bars-0-0', type: '2' },
    { press: 'Tab' },
    { press: 'Space' },
    { to: 'next', press: 'Enter', shows: 'pour-sell-preview' },
    { to: 'record', press: 'Enter', shows: 'pour-sell-done' },
    { to: 'undo', press: 'Enter', shows: '#question' },
    { to: 'yes', press: 'Enter', shows: 'h2:has-text("Undone")' },
  ],
  keysAdd: ['Sales', 'Bars', [3, -3]],
  pages: [
    ['what was sold', (page) => page.locator('pour-sell').waitFor()],
    ['with a problem', (page) => page.locator('#next').click()],
    [
      'with bars, too many, and a fair',
      async (page) => {
        await page.locator('#fair').selectOption('Spring Fair');
        await page.locator('#bars-0-0').fill('11');
        await page.getByText('Some at another price').click();
        await page.locator('#bars-1-0').fill('x');
        await page.locator('#next').click();
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
        await page.getByText('These bars were sold at Spring Fair').click();
      },
    ],
    ...recordingPages('pour-sell-done'),
    ...undoingPages,
  ],
};
