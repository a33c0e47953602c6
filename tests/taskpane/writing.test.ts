import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { tabTo } from './access-checks.ts';
import { checkWalk } from './care/check-walk.ts';
import { countWalk } from './count/count-walk.ts';
import { column, focused, tables, usePane } from './pane-steps.ts';
import { pourWalk } from './pour/pour-walk.ts';
import { receiveWalk } from './receive/receive-walk.ts';
import { sellWalk } from './sell/sell-walk.ts';
import type { Added, WritingWalk } from './task-walk.ts';

const openPane = usePane();

/** Opens the pane at a task's first page. */
async function openAt({ name, tables: given, steps }: WritingWalk): Promise<Page> {
  const page = await openPane(given);
  await page.locator(`#tab-${name}`).click();
  await page.locator(`#page > ${steps.first}`).waitFor();
  return page;
}

async function toPreview(page: Page, { enter, next, steps }: WritingWalk): Promise<void> {
  await enter(page);
  await page.locator(next).click();
  await page.locator(steps.preview).waitFor();
}

/** The recording stands in the workbook, once. */
async function expectAdded(page: Page, before: number, adds: readonly Added[]): Promise<void> {
  for (const [table, header, cells] of adds) {
    expect((await column(page, table, header)).slice(-cells.length)).toEqual(cells);
  }
  const [table = '', header = ''] = adds[0] ?? [];
  expect((await column(page, table, header)).length - before).toBe(adds[0]?.[2].length);
  const entries = await column(page, 'LedgerLines', 'Entry');
  expect(new Set(entries).size).toBe(entries.length);
}

const rowsBefore = async (page: Page, [added]: readonly Added[]): Promise<number> =>
  added === undefined ? 0 : (await column(page, added[0], added[1])).length;

const asked = (page: Page): Promise<number> => page.evaluate(() => window.pane.port.asked.length);

/** All fields of a page, as they stand in it. */
const fields = (page: Page, step: string): Promise<string[]> =>
  page
    .locator(step)
    .evaluate((element) =>
      [...(element.shadowRoot?.querySelectorAll('input, select') ?? [])].map(
        (field) => (field as HTMLInputElement).value,
      ),
    );

const forms = [pourWalk, sellWalk, receiveWalk, countWalk];

describe.each<WritingWalk>([...forms, checkWalk])('$name', (walk) => {
  const { steps, adds } = walk;

  it('writes nothing until it is recorded, and posts once on a double click', async () => {
    const page = await openAt(walk);
    const before = await tables(page);
    const rows = await rowsBefore(page, adds);
    await toPreview(page, walk);
    expect(await tables(page)).toEqual(before);
    const release = await page.evaluateHandle(() => window.pane.port.hold());
    await page.locator('#record').dblclick();
    await page.getByText('Recording…').waitFor();
    await page.getByRole('status').getByText('Writing to the workbook…').waitFor();
    await release.evaluate((open) => {
      open();
    });
    await page.locator(steps.done).waitFor();
    expect(await asked(page)).toBe(1);
    await expectAdded(page, rows, adds);
  });

  it('says what was refused, and posts once on the next try', async () => {
    const page = await openAt(walk);
    const rows = await rowsBefore(page, adds);
    await toPreview(page, walk);
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'refuses', sentence: 'The sheet is protected.' });
    });
    await page.locator('#record').click();
    await page.getByText('Nothing was written. The sheet is protected.').waitFor();
    await page.locator('#record').click();
    await page.locator(steps.done).waitFor();
    await expectAdded(page, rows, adds);
  });

  it('finishes what broke off halfway, even after a reload', async () => {
    const page = await openAt(walk);
    const rows = await rowsBefore(page, adds);
    await toPreview(page, walk);
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'breaks halfway', rows: 1 });
    });
    await page.locator('#record').click();
    await page.getByText('some of its lines are in the workbook').waitFor();
    await page.reload();
    await page.getByText('some of its lines are in the workbook').waitFor();
    await page.locator('#record').click();
    await page.locator(steps.done).waitFor();
    await expectAdded(page, rows, adds);
  });
});

describe.each(forms)('the form of $name', (walk) => {
  const { steps } = walk;

  it('finds everything as it was left after a reload', async () => {
    const page = await openAt(walk);
    await walk.enter(page);
    const before = await fields(page, steps.enter);
    expect(before.some((field) => field !== '')).toBe(true);
    await page.reload();
    await page.locator(steps.enter).waitFor();
    expect(await fields(page, steps.enter)).toEqual(before);
  });

  it.each(walk.refusals)('refuses %s with a sentence', async (_, go, sentence, field) => {
    const page = await openAt(walk);
    await go(page);
    await page.locator(walk.next).click();
    await page.getByText(sentence).first().waitFor();
    if (field !== '') expect(await focused(page)).toBe(field);
    expect(await asked(page)).toBe(0);
  });

  it('can be done with the keyboard alone, the focus always to be seen', async () => {
    const page = await openAt(walk);
    for (const { to, press, type, shows } of walk.keys) {
      if (to !== undefined) await tabTo(page, to);
      if (press !== undefined) await page.keyboard.press(press);
      if (type !== undefined) await page.keyboard.type(type);
      if (shows !== undefined) await page.locator(shows).first().waitFor();
    }
    const [table, header, cells] = walk.keysAdd;
    expect((await column(page, table, header)).slice(-cells.length)).toEqual(cells);
  });
});
