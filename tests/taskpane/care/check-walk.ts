import { marketWorkshop } from '../market-workshop.ts';
import { rowsOf, withRows } from '../small-workshop.ts';
import { recordingPages, type WritingWalk } from '../task-walk.ts';

/** Checking a book of which some things can be mended by lines and some only by the maker. */
export const checkWalk: WritingWalk = {
  name: 'care',
  tables: withRows(
    withRows(marketWorkshop, 'LedgerLines', (rows) => [
      ...rows,
      ...rowsOf([
        'W-1|2026-11-01|used|Wrapper|-60|L-8|-9|B-9||',
        'W-2|2026-11-01|used|Clear base|-10|L-1|-0.08|B-9||',
        'N-1|2026-11-01|used|Wrapper|-1|L-8||B-N||',
      ]),
    ]),
    'Batches',
    (rows) => [
      ...rows,
      ...rowsOf(['B-N|2026-11-01|Plain Wave|6|0|0|30|0|0|2026-11-02|recorded||']),
    ],
  ),
  steps: {
    first: 'pour-check',
    enter: 'pour-check',
    preview: 'pour-check-preview',
    done: 'pour-check-done',
  },
  enter: async () => undefined,
  next: '#mend-1',
  adds: [['LedgerLines', 'Quantity', [60, 10]]],
  pages: [
    ['findings', (page) => page.locator('pour-check').waitFor()],
    [
      'lines',
      async (page) => {
        await page.locator('[id^=mend-]').first().click();
        await page.locator('pour-check-preview').waitFor();
      },
    ],
    ...recordingPages('pour-check-done'),
    ['what is left', (page) => page.locator('#another').click()],
  ],
};
