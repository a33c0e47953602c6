import type { Page } from 'playwright-core';
import type { TaskWalk } from '../task-walk.ts';
import { lumpyWorkshop } from './lumpy-workshop.ts';

const choose = (page: Page, material: string) => page.locator('#material').selectOption(material);

/** Pictures and tables of a material used in lumps, and a sentence for one never used. */
export const reorderWalk: TaskWalk = {
  name: 'reorder',
  tables: lumpyWorkshop,
  pages: [
    [
      'two years',
      async (page) => {
        await choose(page, 'Clear base');
        await page.locator('pour-picture').first().waitFor();
      },
    ],
    [
      'the tables behind them',
      async (page) => {
        for (const button of await page.locator('.toggle').all()) await button.click();
      },
    ],
    ['a sentence', (page) => choose(page, 'Wrapper')],
  ],
};
