import type { Page } from 'playwright-core';
import { smallWorkshop } from '../small-workshop.ts';
import { recordingPages, type Refusal, type FormWalk, undoingPages } from '../task-walk.ts';

const onePack = async (page: Page): Promise<void> => {
  await page.locator('#material-0').selectOption('Clear base');
  await page.locator('#packs-0').fill('1');
  await page.locator('#paid-0').fill('9');
};

/** A pack of base, with one thing about it that can't be. */
const packBut = (
  what: string,
  field: string,
  typed: string,
  sentence: string,
  toMend = '',
): Refusal => [
  what,
  async (page) => {
    await onePack(page);
    await page.locator(field).fill(typed);
  },
  sentence,
  toMend,
];

/** A delivery: two packs of base for 18 and 100 g of scent for 14, freight 4. */
export const receiveWalk: FormWalk = {
  name: 'receive',
  tables: smallWorkshop,
  next: '#next',
  steps: {
    first: 'pour-receive',
    enter: 'pour-receive',
    preview: 'pour-receive-preview',
    done: 'pour-receive-done',
  },
  async enter(page) {
    await page.locator('#supplier').fill('Cove Supply');
    await page.locator('#material-0').selectOption('Clear base');
    await page.locator('#packs-0').fill('2');
    await page.getByText('2000 g in all').waitFor();
    await page.locator('#paid-0').fill('18');
    await page.locator('#add-line').click();
    await page.locator('#material-1').selectOption('Sweet orange');
    await page.locator('#quantity-1').fill('100');
    await page.locator('#paid-1').fill('14');
    await page.locator('#best-before-1').fill('2027-11-01');
    await page.locator('#lot-1').fill('SO-77');
    await page.locator('#freight').fill('4');
  },
  adds: [['Lots', 'Quantity', [2000, 100]]],
  refusals: [
    ['nothing came', async () => undefined, 'Nothing has come yet.', ''],
    packBut(
      'a lot number that is taken',
      '#lot-0',
      'L-1',
      'Lot L-1 is in Lots already. Give this one another number.',
    ),
    packBut(
      'packs and a quantity',
      '#quantity-0',
      '5',
      'Give packs or a quantity of Clear base, not both.',
      'packs-0',
    ),
    packBut('less than nothing paid', '#paid-0', '-1', 'Paid for Clear base is "-1".', 'paid-0'),
    packBut(
      'a lot past its best',
      '#best-before-0',
      '2026-01-01',
      'Clear base is past its best before on the day it came.',
    ),
  ],
  keys: [
    { to: 'material-0', type: 'Clear' },
    { to: 'packs-0', type: '3' },
    { to: 'paid-0', type: '27' },
    { to: 'next', press: 'Enter', shows: 'pour-receive-preview' },
    { to: 'record', press: 'Enter', shows: 'pour-receive-done' },
  ],
  keysAdd: ['Lots', 'Quantity', [3000]],
  pages: [
    ['what came', (page) => page.locator('pour-receive').waitFor()],
    ['with a problem', (page) => page.locator('#next').click()],
    [
      'with lines, one of them wrong',
      async (page) => {
        await onePack(page);
        await page.locator('#quantity-0').fill('1');
        await page.locator('#add-line').click();
        await page.locator('#material-1').selectOption('Blue liquid');
        await page.locator('#paid-1').fill('x');
        await page.locator('#next').click();
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
        for (const asked of await page.locator('[id^="sure-"]').all()) await asked.click();
      },
    ],
    ...recordingPages('pour-receive-done'),
    ...undoingPages,
  ],
};
