import { describe, expect, it } from 'vitest';
import { tables, usePane } from '../pane-steps.ts';
import { withRows } from '../small-workshop.ts';
import { costsWalk } from './costs-walk.ts';

const openPane = usePane();

describe('the pictures', () => {
  it('are images with words, each with a table behind it', async () => {
    const page = await openPane(costsWalk.tables);
    const before = await tables(page);
    await page.locator('#tab-costs').click();
    const image = page.getByRole('img', { name: /Where a bar’s cost goes/u });
    await image.waitFor();
    expect(await page.getByRole('img').count()).toBe(4);
    const toggle = page.getByRole('button', { name: 'Show as table: Where a bar’s cost goes' });
    await toggle.focus();
    await page.keyboard.press('Enter');
    await page.getByRole('row', { name: /Labour \$1\.00/u }).waitFor();
    expect(await image.count()).toBe(0);
    await page.keyboard.press('Enter');
    await image.waitFor();
    expect(await tables(page)).toEqual(before);
  });

  it('are of the design and fair chosen, after a reload too', async () => {
    const page = await openPane(costsWalk.tables);
    await page.locator('#tab-costs').click();
    await page.locator('#design').selectOption('Plain Wave');
    await page.locator('#fair').selectOption('Quay Fair');
    await page
      .getByText(/At \$4\.00 each, \d+ bars pay/u)
      .first()
      .waitFor();
    await page.reload();
    await page
      .getByText(/At \$4\.00 each, \d+ bars pay/u)
      .first()
      .waitFor();
    expect(await page.locator('#design').inputValue()).toBe('Plain Wave');
    expect(await page.locator('#fair').inputValue()).toBe('Quay Fair');
  });

  it('say that work costs nothing as long as no rate is set', async () => {
    const withRate = (rate: number | string) =>
      withRows(costsWalk.tables, 'Settings', (rows) =>
        rows.map((row) => (row[0] === 'Labour rate per hour' ? row.with(1, rate) : row)),
      );
    const page = await openPane(withRate(''));
    await page.locator('#tab-costs').click();
    await page.getByText('Your work counts as nothing here.').waitFor();
    await page.evaluate((good) => {
      window.pane.port.edit(() => good);
    }, withRate(12));
    await page.getByText('Your work counts as nothing here.').waitFor({ state: 'detached' });
  });

  it('follow the workbook', async () => {
    const page = await openPane(costsWalk.tables);
    await page.locator('#tab-costs').click();
    await page
      .getByText(/In a batch of 12 a bar costs/u)
      .first()
      .waitFor();
    const said = page.locator('pour-picture').first().locator('p');
    const before = await said.textContent();
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) =>
          table.name === 'Settings'
            ? {
                ...table,
                rows: table.rows.map((row) =>
                  row[0] === 'Labour rate per hour' ? row.with(1, 24) : row,
                ),
              }
            : table,
        ),
      );
    });
    await page.waitForFunction(
      (old) =>
        document
          .querySelector('pour-pane')
          ?.shadowRoot?.querySelector('pour-costs')
          ?.shadowRoot?.querySelector('pour-picture')
          ?.shadowRoot?.querySelector('p')?.textContent !== old,
      before,
    );
  });
});
