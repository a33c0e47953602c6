import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import type { TableData } from '../../src/workbook/port.ts';
import { accessFindings } from './access-checks.ts';
import { checkWalk } from './care/check-walk.ts';
import { mergeWalk } from './care/merge-walk.ts';
import { costsWalk } from './costs/costs-walk.ts';
import { countWalk } from './count/count-walk.ts';
import { marketWorkshop } from './market-workshop.ts';
import { nowWalk } from './now/now-walk.ts';
import { type Sight, seeAs } from './pane-page.ts';
import { heading, usePane } from './pane-steps.ts';
import { pourWalk } from './pour/pour-walk.ts';
import { receiveWalk } from './receive/receive-walk.ts';
import { reorderWalk } from './reorder/reorder-walk.ts';
import { sellWalk } from './sell/sell-walk.ts';
import { smallWorkshop, withRows } from './small-workshop.ts';
import type { Places, TaskWalk } from './task-walk.ts';

const openPane = usePane();
const walks: readonly TaskWalk[] = [
  pourWalk,
  sellWalk,
  receiveWalk,
  countWalk,
  costsWalk,
  reorderWalk,
  nowWalk,
  checkWalk,
];
const onTab = (name: string, page: Page) => page.locator(`#tab-${name}`).click();

/** A workshop on its first day: every table with its headers and no line, but for the settings. */
const emptyWorkshop: readonly TableData[] = marketWorkshop.map((table) =>
  table.name === 'Settings' ? table : { ...table, rows: [] },
);
const badTables = withRows(smallWorkshop, 'Lots', (rows) => rows.map((row) => row.with(3, 'x')));

/** What any task may show in place of itself. */
const troubles: Places = [
  [
    'tables to mend',
    async (page) => {
      await page.evaluate((bad) => {
        window.pane.port.edit(() => bad);
      }, badTables);
      await heading(page).getByText('Mend this first').waitFor();
    },
  ],
  [
    'a workbook that can’t be read',
    async (page) => {
      await page.evaluate(() => {
        window.pane.port.load = () => Promise.reject(new Error('The connection was lost'));
      });
      await page.locator('#again').click();
      await heading(page).getByText('The workbook could not be read').waitFor();
    },
  ],
];

/** Each task's pages, the tasks with nothing to work with, and what stands in for a task. */
const tours: readonly TaskWalk[] = [
  ...walks,
  mergeWalk,
  {
    name: 'pour',
    tables: emptyWorkshop,
    pages: walks.map(({ name }) => [`${name}, in an empty workshop`, (page) => onTab(name, page)]),
  },
  { name: 'pour', tables: smallWorkshop, pages: troubles },
];

// 320 px is also a pane of 640 px at 200 % zoom: WCAG 1.4.10 asks for 320 px and no less; 1.4.4 for
// text twice as large.
const sights: readonly Sight[] = [
  { theme: 'light', width: 320, textScale: 1 },
  { theme: 'dark', width: 320, textScale: 1 },
  { theme: 'dark', width: 400, textScale: 2 },
  { theme: 'light', width: 400, textScale: 2 },
];

it.each(tours.map((tour) => [tour.pages[0]?.[0] ?? '', tour] as const))(
  '%s … can be read, reached and pressed by all, however it is looked at',
  async (_, { name, tables, pages }) => {
    const page = await openPane(tables);
    await onTab(name, page);
    const found: string[] = [];
    for (const [place, go] of pages) {
      await go(page);
      for (const sight of sights) {
        await seeAs(page, sight);
        const findings = await accessFindings(page);
        found.push(...findings.map((finding) => `${place}, ${JSON.stringify(sight)}: ${finding}`));
      }
    }
    expect(found).toEqual([]);
  },
);

it('every tab of the pane is on the tour', async () => {
  const page = await openPane();
  const tabs = await page.locator('[role=tab]').evaluateAll((all) => all.map(({ id }) => id));
  expect(tabs).toEqual(walks.map(({ name }) => `tab-${name}`));
});
