import { describe, expect, it } from 'vitest';
import { usePane } from '../pane-steps.ts';
import { smallWorkshop } from '../small-workshop.ts';

const openPane = usePane();

describe('a workbook with nothing to pour yet', () => {
  it('says what to type, in order, and leads to where typing goes on', async () => {
    const begun = smallWorkshop.map((table) =>
      ['Settings', 'Materials'].includes(table.name)
        ? table
        : { ...table, rows: table.name === 'Lots' ? [['', '', '', '', '', '', '']] : [] },
    );
    const page = await openPane(begun);
    const steps = page.locator('ol.first li');
    expect(await steps.locator('strong').allTextContents()).toEqual([
      'Materials',
      'Lots',
      'Molds',
      'Colours',
      'Designs',
      'Layers',
    ]);
    await steps.getByText('7 materials so far.').waitFor();
    for (const name of ['Materials', 'Lots', 'Molds']) {
      await page.getByRole('button', { name: `Type there: ${name}` }).click();
    }
    expect(await page.evaluate(() => window.pane.port.shown)).toEqual([
      { table: 'Materials', row: 8 },
      { table: 'Lots', row: 1 },
      { table: 'Molds', row: 1 },
    ]);
  });
});
