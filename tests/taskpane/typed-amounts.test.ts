import { expect, it } from 'vitest';
import { marketWorkshop } from './market-workshop.ts';
import { column, usePane, walkTo } from './pane-steps.ts';
import { smallWorkshop } from './small-workshop.ts';

const openPane = usePane();

it('shows what pounds and a sign of money come to before they are recorded', async () => {
  const page = await openPane(smallWorkshop);
  await page.locator('#tab-receive').click();
  await page.locator('#material-0').selectOption('Clear base');
  await page.locator('#quantity-0').fill('10 lb');
  // 1 lb = 453.59237 g: NIST Handbook 44, appendix C.
  await page.getByText('10 lb = 4,535.92 g').waitFor();
  await page.locator('#paid-0').fill('$40,50');
  await page.getByText('$40,50 = 40.50 USD').waitFor();
  await page.locator('#next').click();
  await page.locator('pour-receive-preview').waitFor();
  await page.locator('#record').click();
  await page.locator('pour-receive-done').waitFor();
  expect((await column(page, 'Lots', 'Quantity')).at(-1)).toBe(4535.92);
  expect((await column(page, 'Lots', 'Paid')).at(-1)).toBe(40.5);
});

it('asks back what can be read in two ways, beside the field', async () => {
  const page = await openPane(smallWorkshop);
  await page.locator('#tab-receive').click();
  await page.locator('#material-0').selectOption('Clear base');
  await page.locator('#quantity-0').fill('1,234 g');
  await page.getByText('Type 1234 or 1.234: it can be read as either.').waitFor();
  await page.locator('#paid-0').fill('€9');
  await page.getByText('Money is in USD here, as Settings say.').waitFor();
});

it('counts the shelf in the units it is weighed in', async () => {
  const page = await openPane(marketWorkshop);
  await page.locator('#tab-count').click();
  await page.getByLabel('Clear base').fill('2,2 kg');
  await page.getByText('2,2 kg = 2200 g').waitFor();
  await page.locator('#next').click();
  await page.getByRole('row', { name: 'Clear base 2300 g 2200 g' }).first().waitFor();
});

it('takes hours for minutes of a pour', async () => {
  const page = await openPane();
  await walkTo(page, 'outcome');
  await page.locator('#minutes').fill('1h30');
  await page.getByText('1h30 = 90 min').waitFor();
  await page.locator('#next').click();
  await page.locator('#record').click();
  await page.locator('pour-done').waitFor();
  expect((await column(page, 'Batches', 'Minutes')).at(-1)).toBe(90);
});
