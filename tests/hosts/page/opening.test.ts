import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest';
import type { Applied, HostPort } from '../../../src/workbook/port.ts';
import type { WorkbookImage } from '../../../src/xlsx/image.ts';
import { startChromium } from '../../support/chromium.ts';
import { bookImage } from './book-image.ts';
import { buildPage } from './build-page.ts';
import { isOpen } from './open-page.ts';
import { servePage, type PageServer } from './page-server.ts';

/** The little workbook with a sheet of 20,000 cells: long enough to be read in several pieces. */
const longBook = (version: string): WorkbookImage => {
  const book = bookImage(version);
  const cells = Array.from({ length: 20_000 }, (_, index) => ({
    row: Math.floor(index / 4),
    column: index % 4,
    value: index % 4 === 0 ? `line ${String(index / 4)}` : index,
    style: 0,
  }));
  const [first] = book.sheets;
  if (!first) throw new Error('The book has no sheet.');
  const long = { ...first, name: 'Long', cells, tables: [], validations: [] };
  return { ...book, sheets: [...book.sheets, long] };
};

let folder: string;
let browser: Browser;
let server: PageServer;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  folder = await buildPage();
  browser = await startChromium();
});
afterAll(() => browser.close());
beforeEach(async () => {
  server = await servePage(folder, longBook);
  page = await (await browser.newContext()).newPage();
  complaints = [];
  page.on('pageerror', (error) => complaints.push(String(error.stack)));
  await page.addInitScript(watch);
});
afterEach(async () => {
  await page.context().close();
  await server.close();
});

interface Seen {
  readonly step: string;
  readonly share: number | undefined;
  /** How many messages of our own the page had answered by then. */
  readonly answered: number;
}

declare global {
  interface Window {
    seen: Seen[];
    /** The step at which Stop is pressed. */
    stopAt?: string;
  }
}

/** Runs in the page before its own script: notes each change of the progress. */
function watch(): void {
  window.seen = [];
  let answered = 0;
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    answered += 1;
    port2.postMessage(undefined);
  };
  port2.postMessage(undefined);
  new MutationObserver(() => {
    const step = document.getElementById('opening-step')?.textContent ?? '';
    const value = document.getElementById('opening-share')?.getAttribute('value');
    window.seen.push({ step, share: value ? Number(value) : undefined, answered });
    if (step === window.stopAt) document.getElementById('opening-stop')?.click();
  }).observe(document, { subtree: true, childList: true, attributeFilter: ['value'] });
}

it('shows each step with its share, and answers in between', async () => {
  await page.goto(server.address);
  await isOpen(page);
  const seen = await page.evaluate(() => window.seen);
  const steps = [...new Set(seen.map(({ step }) => step))].filter((step) => step !== '');
  expect(steps).toEqual([
    'Reading the workbook',
    'Bringing the sheets',
    'Filling the sheets',
    'Working out the formulas',
  ]);
  for (const step of ['Reading the workbook', 'Filling the sheets']) {
    const shares = seen.filter((each) => each.step === step && each.share !== undefined);
    const [first, last] = [shares[0], shares.at(-1)];
    expect(new Set(shares.map(({ share }) => share)).size).toBeGreaterThan(3);
    expect(last?.share).toBeGreaterThan(first?.share ?? 1);
    expect(last?.answered).toBeGreaterThan(first?.answered ?? Infinity);
  }
  expect(await page.locator('#opening').isVisible()).toBe(false);
  expect(complaints).toEqual([]);
});

it('can be stopped while the workbook is read: nothing is open then', async () => {
  await stopAt('Reading the workbook');
  await page.goto(server.address);
  await page.getByText('Opening was stopped. The file is as it was.').waitFor();
  const open = page.getByRole('button', { name: 'Open it' });
  expect(await open.isVisible()).toBe(true);
  expect(await page.locator('test-pane').count()).toBe(0);
  await page.addInitScript(() => {
    delete window.stopAt;
  });
  await open.click();
  await isOpen(page);
  expect(server.saves).toEqual([]);
  expect(complaints).toEqual([]);
});

it.each(['Bringing the sheets', 'Filling the sheets', 'Working out the formulas'])(
  'can be stopped at: %s; the pane goes on without the sheets, and they come when asked for',
  async (step) => {
    await stopAt(step);
    await page.goto(server.address);
    await page.getByText('The sheets are not shown. The pane works without them.').waitFor();
    await page.waitForFunction(() => document.getElementById('grid')?.childElementCount === 0);
    expect(await page.evaluate(() => window.pourLedgerWorkbench)).toBeUndefined();
    expect(await record('M-2')).toEqual({ kind: 'applied' });
    expect(server.saves.length).toBe(1);
    expect(complaints).toEqual([]);
    await page.evaluate(() => {
      delete window.stopAt;
    });
    await page.getByRole('button', { name: 'Show the sheets' }).click();
    await isOpen(page);
    expect(
      await page.evaluate(() => window.pourLedgerWorkbench?.values('Ledger', 'A3:D3')),
    ).toEqual([['M-2', 'used', '', -40]]);
    expect(complaints).toEqual([]);
  },
);

const stopAt = (step: string): Promise<unknown> =>
  page.addInitScript((at) => {
    window.stopAt = at;
  }, step);

/** Has the pane's port append a move. */
const record = (entry: string): Promise<Applied> =>
  page.evaluate(
    (id) =>
      (document.querySelector('test-pane') as HTMLElement & { port: HostPort }).port.apply({
        appends: [
          {
            table: 'Moves',
            idColumn: 'Entry',
            rows: [{ Entry: id, Reason: 'used', Quantity: -40 }],
          },
        ],
        updates: [],
      }),
    entry,
  );

it('records in the pane before the sheets are there, once, and the sheets then say so', async () => {
  let letThrough: () => void = () => undefined;
  const held = new Promise<void>((resolve) => {
    letThrough = resolve;
  });
  await page.route('**/grid.js', async (route) => {
    await held;
    await route.continue();
  });
  await page.goto(server.address);
  await page.locator('test-pane').waitFor();
  expect(await record('M-2')).toEqual({ kind: 'applied' });
  expect(await record('M-3')).toEqual({ kind: 'applied' });
  expect(await record('M-3')).toEqual({ kind: 'already there' });
  server.refuse('The disk is full.');
  expect(await record('M-4')).toEqual({ kind: 'refused', sentence: 'The disk is full.' });
  server.refuse(undefined);
  expect(server.saves.length).toBe(2);
  await page.getByText('Saved; figures in the sheets follow when they are shown').waitFor();
  letThrough();
  await isOpen(page);
  const values = (range: string) =>
    page.evaluate((at) => window.pourLedgerWorkbench?.values('Ledger', at), range);
  expect(await values('A2:D5')).toEqual([
    ['M-1', 'used', 'Clear base', -250],
    ['M-2', 'used', '', -40],
    ['M-3', 'used', '', -40],
    ['', '', '', ''],
  ]);
  // The answers that hang on it follow into the file.
  await page.getByText('Saved', { exact: true }).waitFor();
  const ask = server.saves.at(-1)?.edits.find(({ sheet }) => sheet === 'Ask');
  expect(ask?.cells.find(({ row, column }) => row === 2 && column === 1)?.value).toBe(-330);
  const written = server.saves.flatMap(({ edits }) => edits.flatMap(({ cells }) => cells));
  const times = (id: string) => written.filter(({ value }) => value === id).length;
  expect(['M-2', 'M-3', 'M-4'].map(times)).toEqual([1, 1, 0]);
  expect(await record('M-5')).toEqual({ kind: 'applied' });
  expect(await values('A5:D5')).toEqual([['M-5', 'used', '', -40]]);
  expect(complaints).toEqual([]);
});
