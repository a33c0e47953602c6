import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { TableData } from '../../../src/workbook/port.ts';
import { tabTo } from '../access-checks.ts';
import { column, heading, tables, usePane, walkTo } from '../pane-steps.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';
import { soundWorkshop } from './sound-workshop.ts';

const openPane = usePane();

async function openCheck(tables: readonly TableData[]): Promise<Page> {
  const page = await openPane(tables);
  await page.locator('#tab-care').click();
  await page.locator('pour-check').waitFor();
  return page;
}

/** Everything a pour writes, in the workbook of a colleague who has it whole. */
async function pouredBy(page: Page): Promise<readonly TableData[]> {
  await page.locator('#tab-pour').click();
  await walkTo(page, 'done');
  return tables(page);
}

/** Shows the repair of the first finding and adds its lines. */
async function mend(page: Page): Promise<void> {
  await page.locator('#mend-1').click();
  await page.locator('pour-check-preview').waitFor();
  await page.locator('#record').click();
  await page.locator('pour-check-done').waitFor();
}

/** Another's hand takes all rows of a table away. */
const empty = (page: Page, name: string): Promise<void> =>
  page.evaluate((gone) => {
    window.pane.port.edit((all) =>
      all.map((table) => (table.name === gone ? { ...table, rows: [] } : table)),
    );
  }, name);

const rowsOfTable = (all: readonly TableData[], name: string) =>
  all.find((table) => table.name === name)?.rows ?? [];

/** Whether every row that stood before stands unchanged in its place. */
function expectOnlyAppended(before: readonly TableData[], after: readonly TableData[]): void {
  for (const { name, rows } of before)
    expect(rowsOfTable(after, name).slice(0, rows.length)).toEqual(rows);
}

describe('the health check', () => {
  it('says of a sound book that it is sound, and what it looked at', async () => {
    const page = await openCheck(soundWorkshop);
    await heading(page).getByText('The book is sound').waitFor();
    await page.getByText('Looked at 0 ledger lines, 0 batches and 8 lots.').waitFor();
    expect(await page.locator('pour-check li').count()).toBe(0);
    // A setting that nothing reads would leave labour at 0 without a word.
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) =>
          table.name === 'Settings'
            ? {
                ...table,
                rows: [...table.rows, table.headers.map((_, at) => ['Hourly rate', 20][at] ?? '')],
              }
            : table,
        ),
      );
    });
    const said = page.getByText('The setting "Hourly rate" is not one that is used here.');
    await page.getByText('Assumed where the workbook leaves it open').click();
    await said.waitFor();
    await page.locator('#tab-pour').click();
    await page.getByText('Settings to look at').click();
    await said.waitFor();
  });

  it('shows the first ten of many things, and the next as those are mended', async () => {
    const lost = Array.from(
      { length: 12 },
      (_, at) => `W-${String(at)}|2026-11-01|used|Wrapper|-1|L-8|-0.15|B-${String(at)}||`,
    );
    const page = await openCheck(withRows(soundWorkshop, 'LedgerLines', () => rowsOf(lost)));
    await heading(page).getByText('12 things to look at').waitFor();
    expect(await page.locator('pour-check li').count()).toBe(10);
    await page.getByText('And 2 more things.').waitFor();
    await mend(page);
    await page.locator('#another').click();
    await heading(page).getByText('11 things to look at').waitFor();
    await page.getByText('batch B-10, which is not in Batches').waitFor();
    await page.getByText('And 1 more thing.').waitFor();
  });

  it('shows the lines before they are written, writes them, and checks again', async () => {
    const page = await openCheck(
      withRows(soundWorkshop, 'LedgerLines', () =>
        rowsOf(['W-1|2026-11-01|wasted|Wrapper|-120|L-8|-18|||']),
      ),
    );
    await heading(page).getByText('2 things to look at').waitFor();
    const before = await tables(page);
    await page.locator('#mend-1').click();
    await page.getByText('Count in 20 of lot L-8 on 1 Nov 2026.').waitFor();
    // 15.00 ÷ 100 wrappers × 20 = 3.00.
    await page.getByRole('row', { name: /Wrapper counted, lot L-8.*20 \$3\.00/u }).waitFor();
    expect(await tables(page)).toEqual(before);
    await page.locator('#record').click();
    await page.locator('pour-check-done').waitFor();
    await page.getByText('The book is sound now.').waitFor();
    expect(await column(page, 'LedgerLines', 'Quantity')).toEqual([-120, 20]);
    expectOnlyAppended(before, await tables(page));
    await page.locator('#another').click();
    await heading(page).getByText('The book is sound').waitFor();
  });

  it('offers no lines where only the maker can know', async () => {
    const page = await openCheck(
      withRows(
        withRows(soundWorkshop, 'LedgerLines', () =>
          rowsOf(['N-1|2026-11-01|used|Wrapper|-6|L-8||B-N||']),
        ),
        'Batches',
        () => rowsOf(['B-N|2026-11-01|Plain Wave|6|0|0|30|0|0|2026-11-02|recorded||']),
      ),
    );
    await page.getByText('Only you can know what happened').waitFor();
    expect(await page.locator('#mend-1').count()).toBe(0);
  });

  it('comes back to the repair after a reload, and forgets one that someone else made', async () => {
    const page = await openCheck(
      withRows(soundWorkshop, 'LedgerLines', () =>
        rowsOf(['W-1|2026-11-01|wasted|Wrapper|-120||-18|||']),
      ),
    );
    await page.locator('#mend-1').click();
    await page.locator('pour-check-preview').waitFor();
    await page.reload();
    await page.locator('pour-check-preview').waitFor();
    await empty(page, 'LedgerLines');
    await heading(page).getByText('The book is sound').waitFor();
  });
});

describe('a half-seen batch', () => {
  it('gets its moves where only its line is seen', async () => {
    const page = await openPane(soundWorkshop);
    const whole = await pouredBy(page);
    await empty(page, 'LedgerLines');
    await page.locator('#tab-care').click();
    await page.getByText('1. Batch without ledger lines').waitFor();
    const before = await tables(page);
    await mend(page);
    await page.getByText('The book is sound now.').waitFor();
    expectOnlyAppended(before, await tables(page));
    const facts = (all: readonly TableData[]) =>
      rowsOfTable(all, 'LedgerLines').map((row) => row.slice(0, 8));
    expect(facts(await tables(page))).toEqual(facts(whole));
  });

  it('gets its line where only its moves are seen', async () => {
    const page = await openPane(soundWorkshop);
    const whole = await pouredBy(page);
    await empty(page, 'Batches');
    await page.locator('#tab-care').click();
    await page.getByText('1. Ledger lines without a batch').waitFor();
    const before = await tables(page);
    await mend(page);
    await page.getByText('The book is sound now.').waitFor();
    expectOnlyAppended(before, await tables(page));
    const [line] = rowsOfTable(await tables(page), 'Batches');
    expect(line?.slice(0, 5)).toEqual(rowsOfTable(whole, 'Batches')[0]?.slice(0, 5));
  });

  it('is taken back where the host broke off and the form that wrote it is gone', async () => {
    const page = await openPane(soundWorkshop);
    await walkTo(page, 'preview');
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'breaks halfway', rows: 4 });
    });
    await page.locator('#record').click();
    await page.getByText('The workbook broke off').waitFor();
    // Another machine, which knows nothing of the form.
    await page.evaluate(() => {
      for (const key of Object.keys(sessionStorage))
        if (key.startsWith('memory ')) sessionStorage.removeItem(key);
    });
    await page.reload();
    await page.locator('#tab-care').click();
    await page.getByText('1. Ledger lines without a batch').waitFor();
    const before = await tables(page);
    await mend(page);
    await page.getByText('The book is sound now.').waitFor();
    expectOnlyAppended(before, await tables(page));
    const quantities = (await column(page, 'LedgerLines', 'Quantity')).map(Number);
    expect(quantities).toHaveLength(8);
    expect(quantities.reduce((sum, quantity) => sum + quantity, 0)).toBeCloseTo(0, 9);
  });
});

describe('the keyboard alone', () => {
  it('mends a finding', async () => {
    const page = await openCheck(smallWorkshop);
    await tabTo(page, 'mend-1');
    await page.keyboard.press('Enter');
    await page.locator('pour-check-preview').waitFor();
    await tabTo(page, 'record');
    await page.keyboard.press('Enter');
    await page.locator('pour-check-done').waitFor();
  });
});

describe('what no line can mend', () => {
  const twice = withRows(soundWorkshop, 'LedgerLines', () =>
    rowsOf(Array<string>(2).fill('W-1|2026-11-03|wasted|Wrapper|-1|L-8|-0.15|||')),
  );

  it('explains an id that stands twice, tells the lines apart, then takes the second back', async () => {
    const page = await openPane(twice);
    await heading(page).getByText('Mend this first').waitFor();
    await page.getByText('"W-1" stands in row 1 already').waitFor();
    await page
      .getByText('LedgerLines, row 2: W-1 becomes W-1.2. It says the same as row 1.')
      .waitFor();
    expect(await tables(page)).toEqual(twice);
    await page.locator('#tell-apart').click();
    await page.getByText('1. Ledger line written twice').waitFor();
    await mend(page);
    await page.getByText('The book is sound now.').waitFor();
    expect(await column(page, 'LedgerLines', 'Entry')).toEqual(['W-1', 'W-1.2', 'W-1.2.R']);
  });

  it('says why where the host refuses to tell them apart', async () => {
    const page = await openPane(twice);
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'refuses', sentence: 'The sheet is protected.' });
    });
    await page.locator('#tell-apart').click();
    await page.getByText('Nothing was written. The sheet is protected.').waitFor();
  });

  it('names what leads nowhere', async () => {
    const page = await openPane(soundWorkshop);
    await page.evaluate(() => {
      window.pane.port.brokenNames = () => Promise.resolve(['Fragrances']);
    });
    await page.locator('#tab-care').click();
    await heading(page).getByText('1 thing to look at').waitFor();
    await page.getByText('The name Fragrances pointed to cells that were deleted').waitFor();
  });
});
