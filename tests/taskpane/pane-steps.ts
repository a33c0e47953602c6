import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import type { Cell, TableData } from '../../src/workbook/port.ts';
import { createPaneWorkshop, type PaneWorkshop } from './pane-page.ts';

/** Opens the pane for a test file: one browser for all its tests, no complaint left unseen. */
export function usePane(): (tables?: readonly TableData[]) => Promise<Page> {
  let workshop: PaneWorkshop;
  beforeAll(async () => {
    workshop = await createPaneWorkshop();
  });
  afterAll(() => workshop.close());
  afterEach(() => {
    const own = workshop.complaints.filter((text) => !text.startsWith('Lit is in dev mode'));
    expect(own).toEqual([]);
  });
  return async (tables) => {
    const page = await workshop.open(tables);
    page.setDefaultTimeout(10_000);
    return page;
  };
}

/** One column of a table as it stands in the workbook. */
export const column = (page: Page, table: string, header: string): Promise<Cell[]> =>
  page.evaluate(
    ([name, wanted]) => {
      const found = window.pane.port.tables.find((known) => known.name === name);
      const at = found?.headers.indexOf(wanted ?? '') ?? -1;
      return found?.rows.map((row) => row[at] ?? '') ?? [];
    },
    [table, header],
  );

/** All tables as they stand. */
export const tables = (page: Page): Promise<readonly TableData[]> =>
  page.evaluate(() => window.pane.port.tables);

/** The heading of the step shown. */
export const heading = (page: Page) => page.locator('pour-pane h2');

/** Fills in the first step. */
export async function choose(page: Page, bars = '6'): Promise<void> {
  await page.locator('#design').selectOption('Harbour Light');
  await page.locator('#bars').fill(bars);
}

export type Place = 'choose' | 'weigh' | 'outcome' | 'preview' | 'done';

/** Walks to a step the short way. */
export async function walkTo(page: Page, step: Place, bars = '6'): Promise<void> {
  await choose(page, bars);
  for (const next of ['weigh', 'outcome', 'preview'] as const) {
    if (step === 'choose') return;
    await page.locator('#next').click();
    await page.locator(`pour-${next}`).waitFor();
    if (next === step) return;
  }
  await page.locator('#record').click();
  await page.locator('pour-done').waitFor();
}

/** Id of what has the focus, through shadow roots. */
export const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let active = document.activeElement;
    while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
    return active === null ? '' : active.id || active.localName;
  });
