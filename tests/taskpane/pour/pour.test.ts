import { describe, expect, it } from 'vitest';
import type { Cell } from '../../../src/workbook/port.ts';
import { choose, column, focused, heading, tables, usePane, walkTo } from '../pane-steps.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';

const openPane = usePane();
const yieldAt =
  smallWorkshop.find(({ name }) => name === 'Designs')?.headers.indexOf('Yield %') ?? -1;

describe('a bar that its mold can’t hold', () => {
  it('is said before anything is melted', async () => {
    const tables = withRows(smallWorkshop, 'Molds', (rows) =>
      rows.map((row) => (row[0] === 'Bar loaf' ? ['Bar loaf', 'bars', 6, 450, '', 20, 100] : row)),
    );
    const page = await openPane(tables);
    await walkTo(page, 'weigh');
    // By hand: 24 tiles of 25 ÷ 36 g, 60 g poured, 1 g of scent and 6 drops of 0.04 g.
    await page
      .locator('pour-weigh')
      .getByText('one bar come to 77.907 g, and one cavity of Bar loaf holds 75 g')
      .waitFor();
  });

  it('is not said of one that fits', async () => {
    const page = await openPane();
    await walkTo(page, 'weigh');
    await page.locator('pour-weigh').getByText('Stock is enough').waitFor();
    expect(await page.locator('pour-weigh').getByText('it would run over').count()).toBe(0);
  });
});

describe('the whole flow', () => {
  it('weighs out, records what differed, and undoes it exactly', async () => {
    const page = await openPane();
    const before = await tables(page);
    await choose(page);
    await page.locator('#next').click();
    await page.getByText('Stock is enough for all of it.').waitFor();
    expect(await page.locator('pour-weigh .card h3').allTextContents()).toEqual([
      '1. Blue',
      '2. Pearl',
      '3. Mist',
      '4. Clear base',
      '5. Into and onto the bars',
    ]);
    await page.getByText('Blue liquid').click();
    await page.getByText('1 of 12 lines ticked.').waitFor();
    // By hand: 8 drops are 0.4 g, so the recipe makes 100.4 g; 83 − 12 g are fresh: 8 × 71 ÷ 100.4 = 5.7.
    await page.getByText('6 drops', { exact: true }).waitFor();
    await page.locator('#next').click();
    await page.locator('#good').fill('5');
    await page.locator('#seconds').fill('1');
    await page.locator('summary').click();
    await page.getByLabel('Pearl mica').fill('0,2');
    await page.getByLabel('Mist × Small tiles').fill('3');
    await page.locator('#note').fill('a little thick');
    await page.locator('#next').click();
    const preview = page.locator('pour-preview');
    await preview
      .getByRole('row', { name: /Pearl mica used, lot L-5 −0\.2 g −\$0\.04/u })
      .waitFor();
    // The ledger takes what the card said: 6 drops of 20 to the ml.
    await preview.getByRole('row', { name: /Blue liquid used, lot L-4 −0\.3 ml/u }).waitFor();
    await preview.getByRole('row', { name: /Clear base used, lot L-1 −300 g −\$2\.40/u }).waitFor();
    await preview
      .getByRole('row', { name: /Mist × Small tiles spare, lot [A-Z][0-9A-Z]{3}-[0-9A-Z]{4} 3/u })
      .waitFor();
    await preview.getByRole('row', { name: /Harbour Light 0 5$/u }).waitFor();
    expect(await tables(page)).toEqual(before);
    await page.locator('#record').click();
    await heading(page).getByText('Recorded').waitFor();
    await page.getByText('5, now 5 in stock').waitFor();
    expect(await column(page, 'Batches', 'Good')).toEqual([6, 5]);
    expect(await column(page, 'Batches', 'By')).toEqual(['', 'Ada']);
    expect(await column(page, 'Batches', 'Note')).toEqual(['', 'a little thick']);
    await page.locator('#undo').click();
    await page.locator('#yes').click();
    await heading(page).getByText('Undone').waitFor();
    expect(await column(page, 'Batches', 'State')).toEqual(['posted', 'undone']);
    const moves = (await tables(page)).find(({ name }) => name === 'LedgerLines')?.rows ?? [];
    const sums = new Map<Cell | undefined, number>();
    for (const [, , , item, quantity] of moves)
      sums.set(item, (sums.get(item) ?? 0) + Math.round(Number(quantity) * 1000));
    expect(Object.fromEntries([...sums].filter(([, sum]) => sum !== 0))).toEqual({
      'Blue leftover': 12_000,
      'Blue × Small tiles': 10_000,
    });
    await page.locator('#another').click();
    await page.locator('pour-choose').getByText('undone').waitFor();
  });

  it('asks, of a second pour alike on one day, whether it is another one', async () => {
    const page = await openPane();
    await walkTo(page, 'preview');
    expect(await page.getByText('Record this pour only if').count()).toBe(0);
    await page.locator('#record').click();
    await page.locator('#another').click();
    await walkTo(page, 'preview');
    await page
      .getByText(/^6 bars of Harbour Light are recorded for .*already: \S+\. Record/u)
      .waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').waitFor();
  });

  it('takes out exactly the value that it puts back', async () => {
    const page = await openPane();
    await walkTo(page, 'preview');
    const [record] = await Promise.all([
      column(page, 'LedgerLines', 'Value'),
      page.locator('#record').click(),
    ]);
    await page.locator('pour-done').waitFor();
    const values = (await column(page, 'LedgerLines', 'Value')).slice(record.length);
    const cents = values.reduce<number>((sum, value) => sum + Math.round(Number(value) * 100), 0);
    expect(cents).toBe(0);
  });
});

describe('bars that came to nothing', () => {
  it('are asked for, never guessed, and take no packaging', async () => {
    const page = await openPane();
    await walkTo(page, 'outcome');
    expect(await page.locator('#lost').inputValue()).toBe('0');
    await page.locator('#good').fill('4');
    await page.locator('#seconds').fill('1');
    await page.getByText('1 not told of yet.').waitFor();
    expect(await page.locator('#lost').inputValue()).toBe('');
    await page.locator('#next').click();
    await page.getByText('6 bars were started, and 1 is not told of yet.').waitFor();
    expect(await focused(page)).toBe('lost');
    expect(await page.locator('pour-preview').count()).toBe(0);
    await page.locator('#lost').fill('1');
    await page.locator('summary').click();
    expect(await page.getByLabel('Wrapper').inputValue()).toBe('5');
    await page.locator('#next').click();
    await page.getByRole('row', { name: /Wrapper used, lot L-8 −5 −\$0\.75/u }).waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').waitFor();
    expect(await column(page, 'Batches', 'Lost')).toEqual(['', 1]);
    expect((await column(page, 'Batches', 'Bars')).at(-1)).toBe(6);
  });

  it('are asked for as well where the design is planned to yield less than is started', async () => {
    const half = withRows(smallWorkshop, 'Designs', (rows) =>
      rows.map((row) => (row[0] === 'Harbour Light' ? row.with(yieldAt, 80) : row)),
    );
    const page = await openPane(half);
    await walkTo(page, 'outcome', '8');
    await page.getByText('10 bars started. 2 not told of yet.').waitFor();
    await page.locator('#good').fill('10');
    await page.getByText('not told of yet').waitFor({ state: 'detached' });
    await page.locator('#next').click();
    await page.locator('pour-preview').waitFor();
  });
});

describe('short of stock', () => {
  it('is shown before anything melts, refused, then counted in where the maker says so', async () => {
    const page = await openPane();
    await walkTo(page, 'weigh', '60');
    await page.getByText('Before you melt: stock is short of 2 items.').waitFor();
    await page.getByRole('row', { name: 'Sweet orange 60 g 50 g 10 g' }).waitFor();
    await page.getByText('pour 30 bars, which stock allows').waitFor();
    await page.locator('#next').click();
    await page.locator('#next').click();
    await page.getByText('so this can’t be recorded yet').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
    await page.getByText('My count of Clear base is off').click();
    await page.getByText('Stock is short of 1 item,').waitFor();
    await page.getByText('My count of Sweet orange is off').click();
    await page.getByRole('row', { name: /Sweet orange counted, lot L-6.* 10 g/u }).waitFor();
    await page.locator('#record').click();
    await page.locator('pour-done').waitFor();
    const reasons = await column(page, 'LedgerLines', 'Reason');
    expect(reasons.filter((reason) => reason === 'counted')).toHaveLength(2);
  });
});

describe('a lot past its best before', () => {
  it('is named before anything melts, and before it is recorded', async () => {
    // L-1 is taken first; the pane's day is 2026-11-25.
    const old = withRows(smallWorkshop, 'Lots', (rows) => [
      (rows[0] ?? []).with(6, '2026-11-24'),
      ...rows.slice(1),
    ]);
    const page = await openPane(old);
    await walkTo(page, 'weigh');
    const line = page.getByText('Clear base, lot L-1, best before 24 Nov 2026: 300 g');
    await line.waitFor();
    await page.locator('#next').click();
    await page.locator('#next').click();
    await page.locator('pour-preview').waitFor();
    await line.waitFor();
    await page.locator('#record').waitFor();
  });
});

describe('a workbook that changes', () => {
  it('plans again without losing what was typed', async () => {
    const page = await openPane();
    await walkTo(page, 'weigh');
    await page.getByText('Blue liquid').click();
    await page.locator('#next').click();
    await page.locator('#good').fill('5');
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) =>
          table.name === 'Colours'
            ? {
                ...table,
                rows: table.rows.map((row) => (row[1] === 'Blue liquid' ? row.with(2, 16) : row)),
              }
            : table,
        ),
      );
    });
    expect(await page.locator('#good').inputValue()).toBe('5');
    await page.locator('#back').click();
    await page.getByText('changed: you ticked 6 drops').waitFor();
    await page.getByText('0 of 12 lines ticked.').waitFor();
  });

  it('says that the design is gone, and goes on with another', async () => {
    const page = await openPane();
    await walkTo(page, 'outcome');
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) =>
          table.name === 'Designs' || table.name === 'Layers'
            ? { ...table, rows: table.rows.filter((row) => row[0] !== 'Harbour Light') }
            : table,
        ),
      );
    });
    await page.getByText('"Harbour Light" is no longer in Designs.').waitFor();
    await page.reload();
    await page.getByText('"Harbour Light" is no longer in Designs.').waitFor();
    await page.locator('#design').selectOption('Plain Wave');
    await page.locator('#next').click();
    await page.locator('pour-weigh').waitFor();
  });

  it('shows what to mend in the tables instead of the flow', async () => {
    const bad = withRows(smallWorkshop, 'Lots', (rows) => [
      ...rows,
      ...rowsOf(['L-9|Clear base|2026-10-01|a lot|5||', 'L-9|Cleer base|soon|1|5||']),
    ]);
    const page = await openPane(bad);
    await heading(page).getByText('Mend this first').waitFor();
    const findings = await page.locator('#findings li > span:first-child').allTextContents();
    expect(findings.length).toBeGreaterThanOrEqual(3);
    for (const finding of findings)
      expect(finding).toMatch(/^Lots, row \d+, (?:Lot|Material|Received|Quantity) .*[.?]$/u);
    await page.locator('#again').click();
    await page.evaluate((good) => {
      window.pane.port.edit(() => good);
    }, smallWorkshop);
    await heading(page).getByText('What will you pour?').waitFor();
  });

  it('leads to the cell that is to be mended', async () => {
    const bad = withRows(smallWorkshop, 'Lots', (rows) => [
      ...rows,
      ...rowsOf(['L-9|Clear base|2026-10-01|a lot|5||']),
    ]);
    const page = await openPane(bad);
    await page.getByRole('button', { name: 'Show: Lots, row 9, Quantity' }).click();
    expect(await page.evaluate(() => window.pane.port.shown)).toEqual([
      { table: 'Lots', row: 9, header: 'Quantity' },
    ]);
  });
});
