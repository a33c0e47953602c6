import { describe, expect, it } from 'vitest';
import { marketWorkshop } from '../market-workshop.ts';
import { heading, usePane } from '../pane-steps.ts';
import { rowsOf, withRows } from '../small-workshop.ts';
import { plannedWorkshop } from './planned-workshop.ts';

const openPane = usePane();

describe('what now?', () => {
  it('names what is pressing, with its reason, and leads there', async () => {
    const page = await openPane(marketWorkshop);
    await page.locator('#tab-now').click();
    // Quay Fair opened on 21 Nov and has no sales; the pane's today is 25 Nov.
    await page.getByText('1. Record the sales of Quay Fair').waitFor();
    await page.getByText('It opened on 21 Nov 2026 and has no sales yet').waitFor();
    await page.locator('#go-1').click();
    await heading(page).getByText('What was sold?').waitFor();
    await page.waitForFunction(() => {
      let active = document.activeElement;
      while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
      return active?.localName === 'h2';
    });
  });

  it('says so where nothing is, and follows the workbook', async () => {
    const sold = withRows(marketWorkshop, 'Sales', () =>
      rowsOf(['S-1.01|2026-11-21|Plain Wave|1|4|Quay Fair|0']),
    );
    const page = await openPane(sold);
    await page.locator('#tab-now').click();
    await page.getByText('Nothing is pressing that the workbook knows of.').waitFor();
    // No Lead days stand in Materials, so no reorder point can be worked out.
    await page.getByText('No material has a reorder point yet').waitFor();
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) => (table.name === 'Sales' ? { ...table, rows: [] } : table)),
      );
    });
    await page.getByText('Record the sales of Quay Fair').waitFor();
    expect(await page.locator('pour-now li').count()).toBe(1);
  });

  it('has what the plan leaves open or assumes at hand, and nothing where there is no plan', async () => {
    const page = await openPane(plannedWorkshop);
    await page.locator('#tab-now').click();
    // 40 to make; 20 minutes of setup and 5 a bar leave 8 bars each for today and tomorrow.
    await page.getByText('See to 24 bars of plan line P-2, Harbour Light').waitFor();
    await page.getByText(/It fits with .*Ready by/u).waitFor();
    await page.getByText(/^Left open or assumed in the plan \(\d+\)$/u).click();
    await page
      .getByText('Plan line P-1 was to be ready by 20 Nov 2026, before 25 Nov 2026.')
      .waitFor();
    await page.getByText('Fill in Lead days for White base in Materials.').waitFor();
    await page.getByText('Minutes per day is not set in Settings').waitFor({ state: 'detached' });
    await page.evaluate(() => {
      window.pane.port.edit((all) =>
        all.map((table) => (table.name === 'Plan' ? { ...table, rows: [] } : table)),
      );
    });
    await page.locator('pour-now details').waitFor({ state: 'detached' });
  });
});
