import type { Locator, Page } from 'playwright-core';

/** The pane beside the grid, by its fields, headings and tables. */
export interface Pane {
  readonly root: Locator;
  /** A field or button by its id. */
  at(id: string): Locator;
  /** Waits for the step with that heading. */
  reach(heading: string): Promise<void>;
  /** Every box to tick, in order. */
  readonly boxes: Locator;
  /** A table's rows by its caption, the first line of each cell; none where there is no such table. */
  table(caption: RegExp): Promise<readonly (readonly string[])[]>;
}

/** The pane on a workbench's page. */
export function paneOf(page: Page): Pane {
  const root = page.locator('pour-pane');
  return {
    root,
    at: (id) => root.locator(`#${id}`),
    reach: (heading) => root.getByRole('heading', { name: heading, exact: true }).waitFor(),
    boxes: root.locator('fluent-checkbox'),
    async table(caption) {
      const rows = await root
        .getByRole('table', { name: caption })
        .locator('tbody tr')
        .evaluateAll((found) =>
          found.map((row) =>
            [...row.querySelectorAll('th, td')].map((cell) => (cell as HTMLElement).innerText),
          ),
        );
      return rows.map((row) => row.map((text) => text.split('\n')[0]?.trim() ?? ''));
    },
  };
}

/** The number in a figure such as "−1250.5 g". */
export function numberIn(text = ''): number {
  const value = Number.parseFloat(text.replace('−', '-'));
  if (!Number.isFinite(value)) throw new Error(`"${text}" holds no number.`);
  return value;
}
