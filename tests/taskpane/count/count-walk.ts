import { marketWorkshop } from '../market-workshop.ts';
import { recordingPages, type FormWalk } from '../task-walk.ts';

/** Counting the shelf: a base short, a leftover found, bars short, and one that agrees. */
export const countWalk: FormWalk = {
  name: 'count',
  tables: marketWorkshop,
  next: '#next',
  steps: {
    first: 'pour-count',
    enter: 'pour-count',
    preview: 'pour-count-preview',
    done: 'pour-count-done',
  },
  async enter(page) {
    await page.getByLabel('Clear base').fill('2200');
    await page.getByLabel('Blue leftover').fill('15');
    await page.getByLabel('Plain Wave').fill('5');
    await page.getByLabel('Wrapper').fill('100');
  },
  adds: [['LedgerLines', 'Quantity', [-100, 3, -1]]],
  refusals: [
    ['nothing counted', async () => undefined, 'Nothing is counted yet.', ''],
    [
      'a word',
      (page) => page.getByLabel('Clear base').fill('much'),
      'Clear base is "much". Type a plain number, 0 or more.',
      'base-0',
    ],
    [
      'half a bar',
      (page) => page.getByLabel('Plain Wave').fill('5.5'),
      'Plain Wave is 5.5. Type a whole number, 0 or more.',
      'bars-1',
    ],
    [
      'less than nothing',
      (page) => page.getByLabel('Clear base').fill('-1'),
      'Clear base is "-1". Type a plain number, 0 or more.',
      'base-0',
    ],
  ],
  keys: [
    { to: 'base-0', type: '2290' },
    { to: 'next', press: 'Enter', shows: 'pour-count-preview' },
    { to: 'record', press: 'Enter', shows: 'pour-count-done' },
  ],
  keysAdd: ['LedgerLines', 'Quantity', [-10]],
  pages: [
    ['what is on the shelf', (page) => page.locator('pour-count').waitFor()],
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
      'nothing differs',
      async (page) => {
        await page.getByLabel('Clear base').fill('2300');
        await page.locator('#next').click();
        await page.locator('pour-count-preview').waitFor();
      },
    ],
    [
      'differences',
      async (page) => {
        await page.locator('#back').click();
        await page.getByLabel('Clear base').fill('20');
        await page.getByLabel('White base').fill('20');
        await page.getByLabel('Wrapper').fill('100');
        await page.locator('#next').click();
        await page.locator('pour-count-preview').waitFor();
      },
    ],
    ...recordingPages('pour-count-done'),
    ['again', (page) => page.locator('#another').click()],
  ],
};
