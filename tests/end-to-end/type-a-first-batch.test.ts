import { copyFile, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PageTools } from '../hosts/page/open-page.ts';
import { startChromium } from '../support/chromium.ts';
import { type BuiltWorkbench, emptyFile, openBuilt, startBuilt } from './built-workbench.ts';
import { type Pane, paneOf } from './pane.ts';

/** In a cell's text: wait here, the cell half typed, until every formula has answered. */
const PAUSE = '…';

/** What a maker types, table by table; a bar between two cells is Tab, the end of a line Enter. */
const typed = [
  ['Materials', 'Shelf', ['Clear base|base|g', 'Blue liquid|colourant|ml']],
  ['Lots', 'Purchases', ['L-1|Clear base|2026-11-02|1000|9', 'L-2|Blue liquid|2026-11-02|30|6']],
  ['Molds', 'Mold shelf', ['Small tiles|tiles|36|25|1']],
  [
    'Colours',
    'Colour recipes',
    [
      'Blue|Clear base|100|g',
      'Blue|Blue liquid|8|dro…ps',
      'Mist|Blue|1|parts',
      'Mist|Clear base|3|parts',
    ],
  ],
  ['Designs', 'Bar designs', ['Harbour Light']],
  ['Layers', 'Bar layers', ['Harbour Light|1|tiles|Blue|Small tiles|10|each']],
] as const;
/** What is brought from elsewhere, below the first layer, with a slip in it. */
const pasted = [
  ['Harbour Light', '2', 'tiles', 'Mist', 'Small tiles', '6', 'each'],
  ['Harbour Light', '3', 'pour', 'Clear bas', '', '60', 'g'],
];
const BARS = 6;
/** What the two lots were bought for. */
const PAID = 9 + 6;

let folder: string;
let workbench: BuiltWorkbench;
let browser: Browser;
let open: PageTools;
let pane: Pane;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pour-ledger-first-'));
  const file = join(folder, 'my soap.xlsx');
  await copyFile(emptyFile, file);
  workbench = await startBuilt([file], folder);
  browser = await startChromium();
  open = await openBuilt(browser, workbench.address, '2026-11-25T09:00:00');
  pane = paneOf(open.page);
});
afterAll(async () => {
  await browser.close();
  await workbench.close();
  await rm(folder, { recursive: true });
});

const settled = () => open.page.evaluate(() => window.pourLedgerWorkbench?.settled());

async function typeLine(line: string): Promise<void> {
  for (const part of line.split(/([|…])/u)) {
    if (part === PAUSE) await settled();
    else if (part === '|') await open.page.keyboard.press('Tab');
    else await open.page.keyboard.type(part);
  }
  await open.page.keyboard.press('Enter');
}

async function paste(cell: string, text: string): Promise<void> {
  await open.page.evaluate((words) => navigator.clipboard.writeText(words), text);
  await open.select('Bar layers', cell);
  await open.page.keyboard.press('Control+v');
}

/** Follows a link of the pane by its whole name, "Type there: Purchases". */
const follow = (name: string) => pane.root.getByRole('button', { name, exact: true }).click();

/** A cell's value as it was typed: a day as a date, not as its serial number. */
const asTyped = (value: unknown, column: number): string =>
  typeof value === 'number' && column === 2 && value > 40_000
    ? new Date((value - 25_569) * 86_400_000).toISOString().slice(0, 10)
    : String(value);

describe('a first batch, typed into the empty workbook', () => {
  it('has another sheet answering where a word will be typed slowly', async () => {
    expect(await open.formula('Label', 'D5')).not.toBe('');
  });

  it.each(typed)('takes every key into %s', async (_, sheet, lines) => {
    await follow(`Type there: ${sheet}`);
    for (const line of lines) await typeLine(line);
    const wanted = lines.map((line) => line.replace(PAUSE, '').split('|'));
    const width = Math.max(...wanted.map((cells) => cells.length));
    const range = `A4:${String.fromCharCode(64 + width)}${String(4 + lines.length)}`;
    const rows = (await open.values(sheet, range)).map((row) => row.map(asTyped));
    expect(rows).toEqual([...wanted, Array.from({ length: width }, () => '')]);
  });

  it('takes lines pasted from elsewhere below a table, blank cells where they were', async () => {
    await open.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
    await paste('A5', pasted.map((cells) => cells.join('\t')).join('\r\n'));
    await paste('J3', '\tby <the> window\n');
    const shown = async (range: string) =>
      (await open.values('Bar layers', range)).map((row) => row.map(String));
    await expect.poll(() => shown('A5:G6')).toEqual(pasted);
    await expect.poll(() => shown('J3:K3')).toEqual([['', 'by <the> window']]);
  });

  it('names a slip and leads to its cell', async () => {
    await pane.root.getByText('Bar layers, row 6, Item is "Clear bas", which is not a').waitFor();
    await follow('Show: Bar layers, row 6, Item');
    await open.page.keyboard.type('Clear base');
    await open.page.keyboard.press('Enter');
    await pane.reach('What will you pour?');
  });

  it('weighs out and records it, and the shelves hold what is left', async () => {
    await pane.at('design').selectOption('Harbour Light');
    await pane.at('bars').fill(String(BARS));
    await pane.at('next').click();
    await pane.reach('Weigh out');
    await pane.root.getByText('Stock is enough for all of it.').waitFor();
    await pane.at('next').click();
    await pane.reach('What came out?');
    await pane.at('next').click();
    await pane.reach('Look it over');
    await pane.at('record').click();
    await pane.reach('Recorded');
    const shelves = async () =>
      (await open.values('Reorder', 'A9:E20')).filter(([item]) => item !== '');
    const onHand = async () =>
      Object.fromEntries((await shelves()).map(([item, , quantity]) => [item, quantity]));
    await expect.poll(onHand).toEqual(left());
    // Value in is value out (contract §4), but for the cents to which the two lines used are rounded.
    const value = (await shelves()).reduce((sum, row) => sum + Number(row[4]), 0);
    expect(Math.abs(value - PAID)).toBeLessThanOrEqual(0.01);
    await open.saysSaved();
    expect(open.complaints).toEqual([]);
  });
});

/**
 * What the shelves hold after the pour, by contract §3 step by step, in amounts that a hand can do: whole
 * drops, and the base of each melt to whole grams, rounded up, as it takes up what the drops leave.
 */
function left(): Record<string, number> {
  // 1. Whole fills of 36 tiles; a fill takes 25 g and 1 g that is scraped off.
  const blueFills = Math.ceil((10 * BARS) / 36);
  const mistFills = Math.ceil((6 * BARS) / 36);
  // 6 and 7. The blend first: a quarter of it is Blue; each melt is rounded up to a gram.
  const mistMelt = Math.ceil(mistFills * 26);
  const blueNeed = blueFills * 26 + mistMelt / 4;
  const blueMelt = Math.ceil(blueNeed);
  // Blue is 100 g of base to 8 drops, of which 20 are 1 ml, which is taken as 1 g.
  const drops = Math.round((blueMelt * 8) / (100 + 8 / 20));
  const base = Math.ceil(blueMelt - drops / 20) + Math.ceil((mistMelt * 3) / 4) + 60 * BARS;
  return {
    'Blue leftover': blueMelt - blueNeed + blueFills * 1,
    'Blue liquid': 30 - drops / 20,
    'Blue × Small tiles': blueFills * 36 - 10 * BARS,
    'Clear base': 1000 - base,
    'Harbour Light': BARS,
    'Mist leftover': mistMelt - mistFills * 26 + mistFills * 1,
  };
}
