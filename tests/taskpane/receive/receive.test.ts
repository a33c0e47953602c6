import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';
import { column, heading, tables, usePane } from '../pane-steps.ts';
import { receiveWalk } from './receive-walk.ts';

const openPane = usePane();

async function openReceive(): Promise<Page> {
  const page = await openPane();
  await page.locator('#tab-receive').click();
  await heading(page).getByText('What came?').waitFor();
  return page;
}

async function toPreview(page: Page): Promise<void> {
  await page.locator('#next').click();
  await page.locator('pour-receive-preview').waitFor();
}

describe('a delivery', () => {
  it('is previewed with its landed costs, then stands in Lots', async () => {
    const page = await openReceive();
    const before = await tables(page);
    await receiveWalk.enter(page);
    await toPreview(page);
    const preview = page.locator('pour-receive-preview');
    // By hand: freight 4 by 18 to 14; (18 + 2.25) ÷ 2000 = 0.010125; (14 + 1.75) ÷ 100 = 0.1575.
    await preview
      .getByRole('row', {
        name: /Clear base lot R20261125-\S+\.01 Last \$0\.009 a g\. 2000 g \$18\.00 \+ \$2\.25 \$0\.01013 a g/u,
      })
      .waitFor();
    await preview
      .getByRole('row', {
        name: /Sweet orange lot SO-77, best before 1 Nov 2027 Last \$0\.15 a g\. 100 g \$14\.00 \+ \$1\.75 \$0\.1575 a g/u,
      })
      .waitFor();
    await preview.getByRole('row', { name: 'Sweet orange 50 g 150 g' }).waitFor();
    await preview.getByText('Undo takes the delivery back until something is used of it').waitFor();
    expect(await preview.getByText('can’t be undone').count()).toBe(0);
    expect(await tables(page)).toEqual(before);
    await page.locator('#record').click();
    await heading(page).getByText('Recorded').waitFor();
    await page.getByRole('row', { name: 'Clear base 4300 g' }).waitFor();
    expect((await column(page, 'Lots', 'Quantity')).slice(-2)).toEqual([2000, 100]);
    expect((await column(page, 'Lots', 'Freight')).slice(-2)).toEqual([2.25, 1.75]);
    expect((await column(page, 'Lots', 'Best before')).at(-1)).toBe(readDay('2027-11-01'));
    await page.locator('#another').click();
    await heading(page).getByText('What came?').waitFor();
    expect(await page.locator('#supplier').inputValue()).toBe('');
  });

  it('shares the freight by weight', async () => {
    const page = await openReceive();
    await receiveWalk.enter(page);
    await page.locator('#share-by').selectOption('By weight');
    await toPreview(page);
    await page.locator('#record').click();
    await page.locator('pour-receive-done').waitFor();
    // By hand: 4 × 2000 ÷ 2100 = 3.809…
    expect((await column(page, 'Lots', 'Freight')).slice(-2)).toEqual([3.81, 0.19]);
  });

  it('asks for a yes where a price is far from the last', async () => {
    const page = await openReceive();
    await page.locator('#material-0').selectOption('Clear base');
    await page.locator('#packs-0').fill('1');
    await page.locator('#paid-0').fill('90');
    await toPreview(page);
    // By hand: 90 for 1000 g, where 18 bought 2000 g the last time.
    await page
      .getByText('Clear base: $0.09 a g is far from the last price, $0.009 a g. Check packs')
      .waitFor();
    const record = page.locator('#record');
    expect(await record.count()).toBe(0);
    await page.getByText('Clear base did cost $0.09 a g').click();
    await record.click();
    await page.locator('pour-receive-done').waitFor();
    expect((await column(page, 'Lots', 'Paid')).at(-1)).toBe(90);
  });

  it('asks whether a supplier that nothing came from before is a new one', async () => {
    const tables = smallWorkshop.map((table) =>
      table.name === 'Lots'
        ? {
            ...table,
            headers: [...table.headers, 'Supplier'],
            rows: table.rows.map((row) => [...row, 'Cove Supply']),
          }
        : table,
    );
    const page = await openPane(tables);
    await page.locator('#tab-receive').click();
    await page.locator('#supplier').fill('Cove Suply');
    await page.locator('#material-0').selectOption('Clear base');
    await page.locator('#packs-0').fill('1');
    await page.locator('#paid-0').fill('9');
    await toPreview(page);
    await page
      .getByText('Nothing came from Cove Suply before. Did you mean Cove Supply?')
      .waitFor();
    expect(await page.locator('#record').count()).toBe(0);
    await page.locator('#back').click();
    await page.locator('#supplier').fill('cove supply');
    await toPreview(page);
    expect(await page.getByText('Nothing came from').count()).toBe(0);
    await page.locator('#record').click();
    await page.locator('pour-receive-done').waitFor();
  });

  it('can be undone from its last page: its lines are cleared, stock is as if it never came', async () => {
    const page = await openReceive();
    const before = await column(page, 'Lots', 'Lot');
    await receiveWalk.enter(page);
    await toPreview(page);
    await page.locator('#record').click();
    await heading(page).getByText('Recorded').waitFor();
    await page.locator('#undo').click();
    await page.getByText(/^Undo delivery R20261125-\S+, R20261125-\S+\.01, SO-77\?/u).waitFor();
    await page.getByText('brings it back when the two are merged.').waitFor();
    expect((await column(page, 'Lots', 'Lot')).length).toBe(before.length + 2);
    await page.locator('#yes').click();
    await heading(page).getByText('Undone').waitFor();
    await page.getByText('Stock and costs are as if it never came.').waitFor();
    expect(await column(page, 'Lots', 'Lot')).toEqual([...before, '', '']);
    expect(await column(page, 'Lots', 'Freight')).toEqual([...before.map(() => ''), '', '']);
    await page.locator('#another').click();
    await heading(page).getByText('What came?').waitFor();
    expect(await page.locator('pour-undo-button[name*="SO-77"]').count()).toBe(0);
    await receiveWalk.enter(page);
    await toPreview(page);
    await page.getByRole('row', { name: 'Sweet orange 50 g 150 g' }).waitFor();
  });

  it('can be undone from the list of last deliveries, all that came together at once', async () => {
    const page = await openReceive();
    await receiveWalk.enter(page);
    await toPreview(page);
    await page.locator('#record').click();
    await page.locator('#another').click();
    await page.getByText('25 Nov 2026 · Clear base 2000 g, Sweet orange 100 g').waitFor();
    await page.locator('pour-undo-button[name*="SO-77"] #undo').click();
    await page.locator('#yes').click();
    await page.getByText(/Undone: R20261125-\S+\.01, SO-77\./u).waitFor();
    expect((await column(page, 'Lots', 'Lot')).slice(-2)).toEqual(['', '']);
  });

  it('is not undone once a line of the ledger names it, and says what to do', async () => {
    const page = await openPane(
      withRows(smallWorkshop, 'LedgerLines', (rows) => [
        ...rows,
        ...rowsOf(['W-1|2026-11-03|wasted|Clear base|-20|L-2|-0.18|||']),
      ]),
    );
    await page.locator('#tab-receive').click();
    const before = await tables(page);
    await page.locator('pour-undo-button[name$="L-2"] #undo').click();
    await page.locator('#yes').click();
    await page
      .getByText(
        "Lot L-2 of Clear base can't be undone, since it is named by ledger line W-1. Put the quantity right by a count instead, and a wrong price in Lots.",
      )
      .waitFor();
    expect(await tables(page)).toEqual(before);
  });

  it('is not undone where a partner changes its row meanwhile', async () => {
    const page = await openReceive();
    await page.locator('pour-undo-button[name$="L-2"] #undo').click();
    await page.evaluate(() => {
      Object.assign(window, { release: window.pane.port.hold() });
    });
    await page.locator('#yes').click();
    await page.waitForFunction(() => window.pane.port.asked.length === 1);
    const changed = withRows(smallWorkshop, 'Lots', (rows) =>
      rows.map((row) => (row[0] === 'L-2' ? row.with(4, 19) : row)),
    );
    await page.evaluate((now) => {
      window.pane.port.edit(() => now);
      (window as unknown as { release(): void }).release();
    }, changed);
    await page.getByText('Paid was 18 and is 19 now, perhaps by a partner.').waitFor();
    expect(await tables(page)).toEqual(changed);
  });

  it('lets a line go', async () => {
    const page = await openReceive();
    await receiveWalk.enter(page);
    await page.locator('fluent-button[aria-label="Remove Clear base"]').click();
    expect(await page.locator('#material-0').inputValue()).toBe('Sweet orange');
    expect(await page.locator('#material-1').count()).toBe(0);
  });
});
