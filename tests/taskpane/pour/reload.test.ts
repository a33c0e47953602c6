import { describe, expect, it } from 'vitest';
import { column, usePane, walkTo } from '../pane-steps.ts';

const openPane = usePane();

describe('a reload', () => {
  it.each(['choose', 'weigh', 'outcome', 'preview', 'done'] as const)(
    'at %s finds everything as it was left',
    async (step) => {
      const page = await openPane();
      await walkTo(page, step);
      if (step === 'weigh') await page.getByText('Blue liquid').click();
      if (step === 'outcome') {
        await page.locator('#good').fill('4');
        await page.locator('#note').fill('<b>thick</b>');
      }
      const shown = () =>
        page.locator(`pour-${step}`).evaluate((element) => {
          const fields =
            element.shadowRoot?.querySelectorAll('input, select, fluent-checkbox') ?? [];
          return {
            text: element.shadowRoot?.querySelector('h2')?.parentElement?.textContent,
            fields: [...fields].map((field) =>
              'checked' in field && field.localName === 'fluent-checkbox'
                ? field.checked
                : (field as HTMLInputElement).value,
            ),
          };
        });
      const before = await shown();
      await page.reload();
      await page.locator(`pour-${step}`).waitFor();
      expect(await shown()).toEqual(before);
      if (step === 'done') expect(await column(page, 'Batches', 'Batch')).toHaveLength(2);
    },
  );
});
