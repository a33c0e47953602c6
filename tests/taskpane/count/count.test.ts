import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { marketWorkshop } from '../market-workshop.ts';
import { column, heading, tables, usePane } from '../pane-steps.ts';
import { countWalk } from './count-walk.ts';

const openPane = usePane();

async function openCount(): Promise<Page> {
  const page = await openPane(marketWorkshop);
  await page.locator('#tab-count').click();
  await heading(page).getByText('What is on the shelf?').waitFor();
  return page;
}

async function toPreview(page: Page): Promise<void> {
  await page.locator('#next').click();
  await page.locator('pour-count-preview').waitFor();
}

describe('a blind count', () => {
  it('shows nothing of what the ledger expects', async () => {
    const page = await openCount();
    const shown = await page.locator('pour-count').evaluate((element) => ({
      text: element.shadowRoot?.textContent ?? '',
      values: [...(element.shadowRoot?.querySelectorAll('input') ?? [])].map(({ value }) => value),
    }));
    expect(shown.values.every((value) => value === '')).toBe(true);
    expect(shown.text).not.toMatch(/2300|2,300|1000|in stock/u);
  });

  it('shows the differences with their worth, and brings the ledger to the shelf', async () => {
    const page = await openCount();
    const before = await tables(page);
    await countWalk.enter(page);
    await page.getByText('4 of 11 items counted.').waitFor();
    await toPreview(page);
    const preview = page.locator('pour-count-preview');
    // By hand: 100 g of lot L-1 (2.40 ÷ 300 g) are 0.80; 3 g at 0.12 ÷ 12 g are 0.03; one bar 3.60 ÷ 6.
    await preview.getByRole('row', { name: 'Clear base 2300 g 2200 g −$0.80' }).waitFor();
    await preview.getByRole('row', { name: 'Blue leftover 12 g 15 g $0.03' }).waitFor();
    await preview.getByRole('row', { name: 'Plain Wave 6 5 −$0.60' }).waitFor();
    await preview.getByText('In all $1.37 of stock is missing.').waitFor();
    await preview.getByText('1 item agrees with the ledger.').waitFor();
    await preview
      .getByRole('row', { name: /Clear base counted, lot L-1\. Stocktake −100 g/u })
      .waitFor();
    expect(await tables(page)).toEqual(before);
    await page.locator('#record').click();
    await heading(page).getByText('Recorded').waitFor();
    await page.getByRole('row', { name: 'Clear base 2200 g' }).waitFor();
    expect((await column(page, 'LedgerLines', 'Reason')).slice(-3)).toEqual([
      'counted',
      'counted',
      'counted',
    ]);
    expect((await column(page, 'LedgerLines', 'Quantity')).slice(-3)).toEqual([-100, 3, -1]);
    await page.locator('#another').click();
    expect(await page.getByLabel('Clear base').inputValue()).toBe('');
  });

  it('writes nothing where all agrees', async () => {
    const page = await openCount();
    await page.getByLabel('Wrapper').fill('100');
    await toPreview(page);
    await page.getByText('The 1 item counted agrees with the ledger.').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });

  it('keeps what is counted while one shelf is shown, and through a reload', async () => {
    const page = await openCount();
    await countWalk.enter(page);
    await page.locator('#kind').selectOption('Leftover soap');
    expect(await page.getByLabel('Clear base').count()).toBe(0);
    await page.reload();
    await page.getByText('4 of 11 items counted.').waitFor();
    expect(await page.getByLabel('Blue leftover').inputValue()).toBe('15');
    await page.locator('#kind').selectOption('All of it');
    expect(await page.getByLabel('Clear base').inputValue()).toBe('2200');
  });

  it('takes in a cup of soap that the ledger has never had', async () => {
    const page = await openCount();
    await page.locator('summary').click();
    await page.locator('#other').fill('Pearl leftovr');
    await page.locator('#add-other').click();
    await page.getByText('"Pearl leftovr" is not a stock item').waitFor();
    await page.locator('#other').fill('mist x small tiles');
    await page.locator('#add-other').click();
    await page.getByLabel('Mist × Small tiles').fill('18');
    await toPreview(page);
    // By hand: Mist is 15 Blue + 10 Pearl; Blue 100 g clear (0.008 × 300 + 0.009 × 2000) ÷ 2300 = 0.0088696
    // a g and 8 drops = 0.4 ml at 0.2: (0.88696 + 0.08) ÷ 100.4 = 0.0096310; Pearl (50 × 0.01 + 0.35 × 0.2)
    // ÷ 50.35 = 0.0113208; 0.6 and 0.4 of them 0.0103070 a g; 18 × 25 ÷ 36 g = 12.5 g are 0.1288.
    await page
      .getByRole('row', { name: /Mist × Small tiles Far off: check it\. 0 18 \$0\.13/u })
      .waitFor();
    await page.locator('#record').click();
    await page.locator('pour-count-done').waitFor();
    expect((await column(page, 'LedgerLines', 'Material')).at(-1)).toBe('Mist × Small tiles');
  });
});
