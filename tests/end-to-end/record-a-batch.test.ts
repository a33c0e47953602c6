import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { today } from '../../functions/clock.ts';
import { functions } from '../../functions/index.ts';
import { isoDate } from '../../src/domain/kernel/day.ts';
import { demoFile } from '../../src/starter/file/starter-file.ts';
import { isOpen, type PageTools } from '../hosts/page/open-page.ts';
import { imageOf, soffice } from '../xlsx/support.ts';
import { startChromium } from '../support/chromium.ts';
import { type BuiltWorkbench, openBuilt, startBuilt } from './built-workbench.ts';
import { numberIn, type Pane, paneOf } from './pane.ts';
import {
  byAnotherLibrary,
  byOffice,
  isSame,
  type ShownCell,
  shownCells,
  tableOf,
  wholeRange,
} from './saved-file.ts';

/** The day of the run: the office program that reads the saved file knows no other. */
const DAY = today();
const TODAY = isoDate(DAY);
const NOTE = '=HYPERLINK("http://x","y")';

let folder: string;
let file: string;
let workbench: BuiltWorkbench;
let browser: Browser;
let open: PageTools;
let pane: Pane;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pour-ledger-end-'));
  file = join(folder, 'my ledger.xlsx');
  await writeFile(file, demoFile(DAY));
  workbench = await startBuilt([file], folder);
  browser = await startChromium();
  open = await openBuilt(browser, workbench.address, `${TODAY}T09:00:00`);
  pane = paneOf(open.page);
});
afterAll(async () => {
  await browser.close();
  await workbench.close();
  await rm(folder, { recursive: true });
});

/** On hand by item, from the list that STOCKLIST spills on Reorder. */
async function stock(): Promise<ReadonlyMap<string, number>> {
  const rows = await open.values('Reorder', 'A9:C120');
  const items = rows.filter(([item]) => item !== '');
  return new Map(items.map(([item, , onHand]) => [String(item), Number(onHand)]));
}

/** The preview's stock table: before and after by item, to the ledger's three decimals. */
async function previewed() {
  const rows = await pane.table(/^Stock$/);
  return rows.map(([item = '', before, after]) => ({
    item,
    before: numberIn(before),
    after: numberIn(after),
  }));
}

/** Walks from the first step to the preview; the demo's yield is 95 %, so some of those started are lost. */
async function walk(design: string, bars: string, lost: string): Promise<void> {
  await pane.at('design').selectOption(design);
  await pane.at('bars').fill(bars);
  await pane.at('poured').fill(TODAY);
  await pane.at('next').click();
  await pane.reach('Weigh out');
  await pane.at('next').click();
  await pane.reach('What came out?');
  await pane.at('lost').fill(lost);
  await pane.at('next').click();
  await pane.reach('Look it over');
}

const inLedgerDecimals = (value: number | undefined) => Number((value ?? 0).toFixed(3));

/** What is on the shelves, in order, whatever is listed with nothing. */
const held = (shelves: ReadonlyMap<string, number>) =>
  [...shelves].filter(([, onHand]) => onHand !== 0).sort(([a], [b]) => (a < b ? -1 : 1));

const moveRows = async () => (await tables()).moves;

async function tables() {
  const image = imageOf(await readFile(file));
  const { headers, rows } = tableOf(image, 'LedgerLines');
  const at = (header: string) => headers.indexOf(header);
  return {
    moves: rows
      .filter((row) => row.some((cell) => cell !== ''))
      .map((row) => ({
        reason: row[at('Reason')],
        item: String(row[at('Material')]),
        quantity: Number(row[at('Quantity')]),
        batch: row[at('Batch')],
      })),
    batches: tableOf(image, 'Batches'),
  };
}

let before: ReadonlyMap<string, number>;
let movesBefore: number;

describe('recording a batch over the built workbench', () => {
  let expected: Awaited<ReturnType<typeof previewed>>;

  it('says where it is when it is up', () => {
    expect(workbench.greeting).toMatch(
      /^Pour Ledger shows .*my ledger\.xlsx at http:\/\/[0-9a-f]{20}\.localhost:\d+\/\S+\/$/,
    );
  });

  it('opens a copy of the demo as of today where no file is named', async () => {
    const started = await startBuilt([], folder);
    const copy = join(folder, 'pour-ledger', 'pour-ledger.xlsx');
    expect(started.greeting).toBe(`Pour Ledger shows ${copy} at ${started.address}`);
    const written = new Uint8Array(await readFile(copy));
    // It may have been midnight in between.
    expect([DAY, today()].map((on) => demoFile(on))).toContainEqual(written);
    await started.close();
  });

  it('keeps what is chosen, ticked and typed through a reload', async () => {
    before = await stock();
    movesBefore = (await moveRows()).length;
    await pane.at('design').selectOption('Lantern Quay');
    await pane.at('bars').fill('12');
    await pane.at('next').click();
    await pane.reach('Weigh out');
    const lines = await pane.boxes.count();
    for (const line of [0, 1, 2]) await pane.boxes.nth(line).click();
    const ticked = pane.root.getByText(`3 of ${String(lines)} lines ticked.`);
    await ticked.waitFor();
    await pane.at('next').click();
    await pane.reach('What came out?');
    await pane.at('good').fill('11');
    await pane.at('seconds').fill('1');
    await pane.at('lost').fill('1');
    await pane.at('minutes').fill('95.5');
    await pane.at('spares-0').fill('7');
    await pane.at('note').fill(NOTE);
    await open.page.reload();
    await isOpen(open.page);
    await pane.reach('What came out?');
    await pane.at('back').click();
    await pane.reach('Weigh out');
    await ticked.waitFor();
    await pane.at('next').click();
    await pane.reach('What came out?');
    const fields = ['good', 'seconds', 'minutes', 'spares-0', 'note'];
    expect(await Promise.all(fields.map((id) => pane.at(id).inputValue()))).toEqual([
      '11',
      '1',
      '95.5',
      '7',
      NOTE,
    ]);
    await pane.at('next').click();
    await pane.reach('Look it over');
  });

  it('previews the stock that the sheet shows, and writes nothing yet', async () => {
    expected = await previewed();
    expect(expected.length).toBeGreaterThan(10);
    for (const { item, before: shown } of expected) {
      expect([item, shown]).toEqual([item, inLedgerDecimals(before.get(item))]);
    }
    expect(await moveRows()).toHaveLength(movesBefore);
  });

  it('takes from every shelf exactly what the preview said, once, though pressed twice', async () => {
    const moves = await pane.table(/lines for Ledger/);
    await pane.at('record').dblclick();
    await pane.reach('Recorded');
    const after = await stock();
    for (const { item, after: shown } of expected) {
      expect([item, inLedgerDecimals(after.get(item))]).toEqual([item, shown]);
      const moved = moves.filter(([name]) => name === item);
      const change = moved.reduce((sum, [, quantity]) => sum + numberIn(quantity), 0);
      expect(inLedgerDecimals((after.get(item) ?? 0) - (before.get(item) ?? 0))).toBeCloseTo(
        change,
        6,
      );
    }
    const untouched = [...before].filter(([name]) => !expected.some(({ item }) => item === name));
    expect(untouched.map(([name]) => [name, after.get(name)])).toEqual(untouched);
    expect(await moveRows()).toHaveLength(movesBefore + moves.length);
  });

  it('answers a formula typed into the sheet with the same', async () => {
    await open.page.locator('[id^=univer-sheet-main-canvas]').click();
    await open.type('Start here', 'E4', '=POUR.ONHAND("Clear base",Book)');
    expect(await open.values('Start here', 'E4')).toEqual([[(await stock()).get('Clear base')]]);
    await open.saysSaved();
  });
});

describe('the saved file', () => {
  let bytes: Uint8Array;
  let shown: readonly ShownCell[];

  beforeAll(async () => {
    bytes = await readFile(file);
    const sheets = imageOf(bytes).sheets.map(async (sheet) =>
      shownCells(sheet, await open.values(sheet.name, wholeRange(sheet))),
    );
    shown = (await Promise.all(sheets)).flat();
    expect(shown.length).toBeGreaterThan(5000);
  });

  it('shows another library every cell that the grid shows', async () => {
    const read = await byAnotherLibrary(bytes);
    const differ = shown.filter((cell) => !isSame(read(cell), cell.value));
    expect(differ.map((cell) => ({ ...cell, found: read(cell) }))).toEqual([]);
  });

  // A known fault of the grid's engine, to be mended: after the pour one more line belongs on Shopping, its number is
  // worked out after the line that looks for it, and the line and the sum stay as they were until the next opening.
  (soffice ? it.fails : it.skip)('shows LibreOffice every cell that the grid shows', () => {
    const read = byOffice(bytes);
    const differ = shown.filter((cell) => {
      const found = read(cell);
      return !isSame(found, cell.value) && !(cell.isWorkedOutAnew && found === '#NAME?');
    });
    expect(differ.map((cell) => ({ ...cell, found: read(cell) }))).toEqual([]);
  });

  it('gives BOOK and ONHAND what the grid shows', async () => {
    const image = imageOf(bytes);
    const all = image.sheets.flatMap(({ tables: own }) => own.map(({ name }) => name));
    const handle = functions['BOOK']?.(
      ...all.map((name) => {
        const { headers, rows } = tableOf(image, name);
        return [headers, ...rows];
      }),
    );
    expect(await open.values('Start here', 'B4')).toEqual([[handle]]);
    for (const [item, onHand] of await stock()) {
      expect([item, functions['ONHAND']?.(item, handle, TODAY)]).toEqual([item, onHand]);
    }
  });

  it('keeps a note that looks like a formula as text', async () => {
    const { batches } = await tables();
    const at = batches.headers.indexOf('Note');
    expect(batches.rows.map((row) => row[at])).toContain(NOTE);
    const formulas = imageOf(bytes).sheets.flatMap(({ cells }) =>
      cells.map(({ formula }) => formula),
    );
    expect(formulas.filter((formula) => formula?.includes('HYPERLINK'))).toEqual([]);
  });
});

describe('taking it back', () => {
  it('gives every shelf back what it held', async () => {
    const recorded = await moveRows();
    await pane.at('undo').first().click();
    await pane.at('yes').click();
    await pane.reach('Undone');
    expect(held(await stock())).toEqual(held(before));
    const posted = recorded.length - movesBefore;
    expect((await moveRows()).slice(recorded.length)).toHaveLength(posted);
    await pane.at('another').click();
  });
});

describe('a pour that stock is short of', () => {
  it('is refused until one says that the count is off', async () => {
    const moves = (await moveRows()).length;
    await walk('Tide Pool', '60', '4');
    await pane.root
      .getByText(/Stock is short of \d+ items?, so this can’t be recorded yet/)
      .waitFor();
    expect(await pane.at('record').count()).toBe(0);
    expect(await moveRows()).toHaveLength(moves);
    const short = await pane.boxes.count();
    for (let line = 0; line < short; line += 1) await pane.boxes.nth(line).click();
    const expectedStock = await previewed();
    await pane.at('record').click();
    await pane.reach('Recorded');
    const after = await stock();
    for (const { item, after: shown } of expectedStock) {
      expect([item, inLedgerDecimals(after.get(item))]).toEqual([item, shown]);
    }
    const counted = (await moveRows()).slice(moves).filter(({ reason }) => reason === 'counted');
    expect(counted).toHaveLength(short);
    expect(counted.every(({ quantity }) => quantity > 0)).toBe(true);
  });
});

it('asked nothing of anywhere else and complained of nothing', () => {
  expect(open.complaints).toEqual([]);
});
