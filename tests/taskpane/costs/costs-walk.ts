import { marketWorkshop } from '../market-workshop.ts';
import { rowsOf, withRows } from '../small-workshop.ts';
import type { TaskWalk } from '../task-walk.ts';

/** Pictures of costs and of a fair that sold 20 bars. */
export const costsWalk: TaskWalk = {
  name: 'costs',
  tables: withRows(marketWorkshop, 'Sales', () =>
    rowsOf(['S-1.01|2026-11-21|Harbour Light|20|7.7|Quay Fair|0']),
  ),
  pages: [
    ['pictures', (page) => page.locator('pour-costs').waitFor()],
    [
      'tables',
      async (page) => {
        for (const button of await page.locator('.toggle').all()) await button.click();
      },
    ],
  ],
};
