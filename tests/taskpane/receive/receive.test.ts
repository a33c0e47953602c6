import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { column, focused, heading, tables, usePane } from '../pane-steps.ts';

const openPane = usePane();

async function openReceive(): Promise<Page> {
  const page = await openPane();
  await page.locator('#tab-receive').click();
  await heading(page).getByText('What came?').waitFor();
  return page;
}

/** Two packs of base for 18 and 100 g of scent for 14, freight 4. */
async function enterDelivery(page: Page): Promise<void> {
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
}

async function toPreview(page: Page): Promise<void> {
  await page.locator('#next').click();
  await page.locator('pour-receive-preview').waitFor();
}

describe('a delivery', () => {
  it('is previewed with its landed costs, then stands in Lots', async () => {
    const page = await openReceive();
    const before = await tables(page);
    await enterDelivery(page);
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
    await preview.getByText('A delivery can’t be undone here.').waitFor();
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
    await enterDelivery(page);
    await page.locator('#share-by').selectOption('By weight');
    await toPreview(page);
    await page.locator('#record').click();
    await page.locator('pour-receive-done').waitFor();
    // By hand: 4 × 2000 ÷ 2100 = 3.809…
    expect((await column(page, 'Lots', 'Freight')).slice(-2)).toEqual([3.81, 0.19]);
  });

  it('says that a price is far from the last', async () => {
    const page = await openReceive();
    await page.locator('#material-0').selectOption('Clear base');
    await page.locator('#packs-0').fill('1');
    await page.locator('#paid-0').fill('90');
    await toPreview(page);
    await page.getByText('Far from the last price: check it.').waitFor();
  });

  it('posts once on a double click', async () => {
    const page = await openReceive();
    await enterDelivery(page);
    await toPreview(page);
    const release = await page.evaluateHandle(() => window.pane.port.hold());
    await page.locator('#record').dblclick();
    await page.getByText('Recording…').waitFor();
    await release.evaluate((open) => {
      open();
    });
    await page.locator('pour-receive-done').waitFor();
    expect(await page.evaluate(() => window.pane.port.asked.length)).toBe(1);
    expect(await column(page, 'Lots', 'Lot')).toHaveLength(10);
  });

  it('finishes what broke off halfway, even after a reload', async () => {
    const page = await openReceive();
    await enterDelivery(page);
    await toPreview(page);
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'breaks halfway', rows: 1 });
    });
    await page.locator('#record').click();
    await page.getByText('some of its lines are in the workbook').waitFor();
    await page.reload();
    await page.getByText('some of its lines are in the workbook').waitFor();
    await page.locator('#record').click();
    await page.locator('pour-receive-done').waitFor();
    expect((await column(page, 'Lots', 'Quantity')).slice(-2)).toEqual([2000, 100]);
    expect(await column(page, 'Lots', 'Lot')).toHaveLength(10);
  });

  it('finds everything as it was left after a reload, and lets a line go', async () => {
    const page = await openReceive();
    await enterDelivery(page);
    const fields = () =>
      page
        .locator('pour-receive')
        .evaluate((element) =>
          [...(element.shadowRoot?.querySelectorAll('input, select') ?? [])].map(
            (field) => (field as HTMLInputElement).value,
          ),
        );
    const before = await fields();
    expect(before).toContain('SO-77');
    await page.reload();
    await page.locator('#lot-1').waitFor();
    expect(await fields()).toEqual(before);
    await page.locator('fluent-button[aria-label="Remove Clear base"]').click();
    expect(await page.locator('#material-0').inputValue()).toBe('Sweet orange');
    expect(await page.locator('#material-1').count()).toBe(0);
  });
});

describe('what can’t be', () => {
  it.each([
    ['nothing', async () => undefined, 'Nothing has come yet.', ''],
    [
      'a lot number that is taken',
      (page: Page) => page.locator('#lot-0').fill('L-1'),
      'Lot L-1 is in Lots already. Give this one another number.',
      '',
    ],
    [
      'packs and a quantity',
      (page: Page) => page.locator('#quantity-0').fill('5'),
      'Give packs or a quantity of Clear base, not both.',
      'packs-0',
    ],
    [
      'less than nothing paid',
      (page: Page) => page.locator('#paid-0').fill('-1'),
      'Paid for Clear base is "-1".',
      'paid-0',
    ],
    [
      'a lot past its best',
      (page: Page) => page.locator('#best-before-0').fill('2026-01-01'),
      'Clear base is past its best before on the day it came.',
      '',
    ],
  ] as const)('is said: %s', async (_, go, sentence, field) => {
    const page = await openReceive();
    if (sentence !== 'Nothing has come yet.') {
      await page.locator('#material-0').selectOption('Clear base');
      await page.locator('#packs-0').fill('1');
      await page.locator('#paid-0').fill('9');
    }
    await go(page);
    await page.locator('#next').click();
    await page.locator('.notice').getByText(sentence).waitFor();
    if (field !== '') expect(await focused(page)).toBe(field);
    expect(await page.evaluate(() => window.pane.port.asked.length)).toBe(0);
  });
});
