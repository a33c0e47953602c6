import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { findMaterial, itemOfMaterial } from '../../../src/domain/book/find.ts';
import { serviceCheck } from '../../../src/domain/reorder/service-check.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { daysWithout } from '../../../src/domain/reorder/stock-year.ts';
import { bookOf } from '../book-of.ts';
import { tables, usePane } from '../pane-steps.ts';
import { withRows } from '../small-workshop.ts';
import { lumpyWorkshop } from './lumpy-workshop.ts';

/** 2026-11-25, the pane's day in tests. */
const DAY = 46_351;

const openPane = usePane();
const open = async (page: Page, material?: string): Promise<void> => {
  await page.locator('#tab-reorder').click();
  if (material !== undefined) await page.locator('#material').selectOption(material);
};

describe('when to order again', () => {
  it('shows both points, which to trust, and a year with each, and writes nothing', async () => {
    const page = await openPane(lumpyWorkshop);
    const before = await tables(page);
    await open(page, 'Clear base');
    // Mean 10, SD 30.17: 100 + 1.645 × √10 × 30.17 = 257 (as in tests/domain/reorder).
    await page.getByRole('row', { name: /Order at or below 257 g \d{3} g/u }).waitFor();
    await page.getByText(/^With 257 g, .* Trust \d+ g, which lasted in 9\d of 100\.$/u).waitFor();
    expect(await page.getByRole('img').count()).toBe(2);
    expect(await tables(page)).toEqual(before);
  });

  it('opens at a material that is to be ordered, and says so', async () => {
    const page = await openPane(
      withRows(lumpyWorkshop, 'Lots', (rows) =>
        rows.map((row) => (row[1] === 'Clear base' ? row.with(3, 550) : row)),
      ),
    );
    await open(page);
    expect(await page.locator('#material').inputValue()).toBe('Clear base');
    await page.getByText('Order now.').waitFor();
  });

  it('says why Now and the sheets don’t name what its own point does', async () => {
    // Clear base lies there in two lots.
    const withStock = (g: number) =>
      withRows(lumpyWorkshop, 'Lots', (rows) =>
        rows.map((row) => (row[1] === 'Clear base' ? row.with(3, g) : row)),
      );
    const book = bookOf(withStock(550));
    const found = findMaterial(book, 'Clear base');
    if (!found.ok) throw new Error(found.failure.sentence);
    const stock = onHand(book, itemOfMaterial(found.value), DAY).toNumber();
    const check = serviceCheck(book, found.value, DAY);
    if (!check.ok) throw new Error(check.failure.sentence);
    const between = Math.floor((check.value.usual.point + check.value.own.point) / 2);
    const page = await openPane(withStock(550 + (between - stock) / 2));
    await open(page, 'Clear base');
    await page.getByText('Order now.').waitFor();
    await page
      .getByText(
        'Now and the Reorder sheet go by the usual formula for all materials, 257 g for this one, so they don’t say so before that.',
      )
      .waitFor();
  });

  it('has the figures of each picture in a table', async () => {
    const page = await openPane(lumpyWorkshop);
    await open(page, 'Clear base');
    const book = bookOf(lumpyWorkshop);
    const material = findMaterial(book, 'Clear base');
    const today = await page.evaluate(() => window.pane.port.today());
    const check = material.ok
      ? serviceCheck(book, material.value, Number(new Date(today)) / 86_400_000 + 25_569)
      : material;
    if (!check.ok) throw new Error(check.failure.sentence);
    const missing = daysWithout(check.value.usual.year);
    expect(missing).toBeGreaterThan(0);
    await page
      .getByText(new RegExp(`for ${String(missing)} days in all`, 'u'))
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Show as table: A year by the usual formula' }).click();
    expect(
      await page
        .getByRole('row')
        .filter({ hasText: /^\s*\d/u })
        .count(),
    ).toBe(52);
  });

  it('keeps the material through a reload', async () => {
    const page = await openPane(lumpyWorkshop);
    await open(page, 'Clear base');
    await page.reload();
    await page.getByRole('row', { name: /Order at or below 257 g/u }).waitFor();
    expect(await page.locator('#material').inputValue()).toBe('Clear base');
  });

  it.each([
    ['Wrapper', /Wrapper has no use recorded yet/u],
    ['White base', /Fill in Lead days for White base in Materials/u],
  ])('%s: a sentence', async (material, sentence) => {
    const page = await openPane(lumpyWorkshop);
    await open(page, material);
    await page.getByText(sentence).waitFor();
    expect(await page.getByRole('img').count()).toBe(0);
  });
});
