import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { describeValues } from '../../../src/hosts/files/value-workbook.ts';
import { readTables } from '../../../src/xlsx/read/read-tables.ts';
import { writeWorkbook } from '../../../src/xlsx/write/write-workbook.ts';
import type { CopyRead, Given, ValueWorkbook } from '../../../src/workbook/port.ts';
import { bundleForBrowser } from '../../support/bundle-page.ts';
import { startChromium } from '../../support/chromium.ts';
import { type PageServer, servePage } from '../page/page-server.ts';
import { partsOf, withParts } from '../../xlsx/support.ts';
import type {} from './page.ts';

const WORKER = 'other-workbooks.js';
const PAGE = '<!doctype html><title>Files</title><script src="page.js"></script>';

/** More than one sheet, and cells of every kind. Invented data. */
const copy: ValueWorkbook = {
  fileName: 'copy',
  title: 'A copy',
  sheets: [
    {
      name: 'Lots',
      lines: ['Lots', 'As of today'],
      table: 'Partner_Lots',
      columns: [
        { header: 'Lot', format: 'text' },
        { header: 'Quantity', format: 'number' },
        { header: 'Open', format: 'text' },
      ],
      rows: [
        ['L-1', 12.5, true],
        ['=1+1', -3, false],
        ['Rosé & <Lavande>', '', ''],
      ],
    },
    {
      name: 'Empty',
      lines: [],
      table: 'Partner_Empty',
      columns: [{ header: 'Day', format: 'date' }],
      rows: [],
    },
  ],
};
const bytes = writeWorkbook(describeValues(copy));

let folder: string;
let script: Buffer;
let server: PageServer;
let browser: Browser;
let page: Page;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pour-ledger-files-'));
  // A copy, since the tests put other scripts in the worker's place.
  await cp(
    await bundleForBrowser('page', './tests/hosts/files/page.ts', { 'index.html': PAGE }),
    folder,
    { recursive: true },
  );
  script = await readFile(join(folder, WORKER));
  const noBook = () => {
    throw new Error('This page asks for no book.');
  };
  server = await servePage(folder, noBook, 'no-store');
  browser = await startChromium();
  page = await browser.newPage();
  await page.goto(server.address);
});
afterAll(async () => {
  await browser.close();
  await server.close();
  await rm(folder, { recursive: true });
});
beforeEach(async () => {
  await page.evaluate(() => {
    window.files.stopper = new AbortController();
  });
});

const readInPage = (given: Uint8Array): Promise<CopyRead> =>
  page.evaluate(
    (numbers) => window.files.readTables(new Uint8Array(numbers), window.files.stopper.signal),
    [...given],
  );
const giveInPage = (): Promise<Given> =>
  page.evaluate((workbook) => window.files.give(workbook, window.files.stopper.signal), copy);

const allEnded = () => expect.poll(() => page.workers()).toEqual([]);

describe('another workbook', () => {
  it('is read by a worker, which ends with it', async () => {
    const [worker, read] = await Promise.all([page.waitForEvent('worker'), readInPage(bytes)]);
    expect(worker.url()).toBe(server.address + WORKER);
    expect(read).toEqual(readTables(bytes));
    expect(read.kind).toBe('read');
    await allEnded();
  });

  it('is written by a worker, part for part as anywhere else', async () => {
    const [, given] = await Promise.all([page.waitForEvent('worker'), giveInPage()]);
    expect(given).toEqual({ kind: 'given', sentence: 'copy.xlsx is here.' });
    const made = await page.evaluate(() => [...(window.files.given.pop() ?? [])]);
    expect(partsOf(new Uint8Array(made))).toEqual(partsOf(bytes));
    await allEnded();
  });

  it('needs nothing of the code for it on the page itself', async () => {
    const scripts = await page.evaluate(() => Array.from(document.scripts, ({ src }) => src));
    expect(scripts).toEqual([`${server.address}page.js`]);
    const own = await readFile(join(folder, 'page.js'), 'utf8');
    expect(own).not.toContain('This is not an .xlsx workbook.');
    expect(script.toString()).toContain('This is not an .xlsx workbook.');
  });

  it.each([
    ['text', new TextEncoder().encode('Material,Kind\nBase,base\n'.repeat(9))],
    ['nothing', new Uint8Array()],
    ['an old .xls', Uint8Array.of(0xd0, 0xcf, 0x11, 0xe0, ...new Array<number>(40).fill(0))],
    ['half a file', bytes.subarray(0, bytes.length / 2)],
    ['a damaged part', bytes.map((byte, at) => (at === 60 ? byte ^ 1 : byte))],
    [
      'a macro file',
      withParts(bytes, {
        '[Content_Types].xml': (text) => text.replace('sheet.main', 'sheet.macroEnabled.main'),
      }),
    ],
    [
      'a sheet that is no XML',
      withParts(bytes, { 'xl/worksheets/sheet1.xml': () => '<a><b></a>' }),
    ],
  ])('is refused with the same sentence as anywhere else: %s', async (_what, bad) => {
    const read = readTables(bad);
    expect(read.kind).toBe('refused');
    expect(await readInPage(bad)).toEqual(read);
  });
});

describe('a worker that fails', () => {
  const scripts: readonly [string, string | undefined][] = [
    ['is not there', undefined],
    ['is no script', '<!doctype html><p>Sign in first.</p>'],
    ['breaks off at the start', 'throw new Error("no");'],
    ['breaks off at its work', 'self.onmessage = () => { throw new Error("no"); };'],
    ['has no answer that can be sent', 'self.onmessage = () => { self.postMessage(() => 1); };'],
  ];
  afterAll(() => writeFile(join(folder, WORKER), script));

  it.each(scripts)('ends in a sentence where it %s', async (_what, text) => {
    if (text === undefined) await rm(join(folder, WORKER));
    else await writeFile(join(folder, WORKER), text);
    expect(await readInPage(bytes)).toMatchObject({
      kind: 'refused',
      sentence: expect.stringMatching(/could not be read.*Reload the pane and choose/) as string,
    });
    expect(await giveInPage()).toMatchObject({
      kind: 'refused',
      sentence: expect.stringMatching(/could not be made.*Reload the pane and try/) as string,
    });
    expect(await page.evaluate(() => window.files.given)).toEqual([]);
    await allEnded();
  });

  it('ends in a sentence where the browser has none', async () => {
    await page.evaluate(() => {
      Object.assign(window, { Kept: window.Worker, Worker: undefined });
    });
    expect((await readInPage(bytes)).kind).toBe('refused');
    expect((await giveInPage()).kind).toBe('refused');
    await page.evaluate(() => {
      Object.assign(window, { Worker: (window as unknown as { Kept: unknown }).Kept });
    });
  });
});

describe('stopping', () => {
  beforeAll(() => writeFile(join(folder, WORKER), 'self.onmessage = () => { for (;;); };'));

  const stopped = (work: string): Promise<unknown> =>
    page.evaluate(`${work}.then(() => 'done', (thrown) => thrown === files.stopper.signal.reason)`);
  const stop = () =>
    page.evaluate(() => {
      window.files.stopper.abort();
    });

  it.each([
    ['reading', 'files.readTables(new Uint8Array(1), files.stopper.signal)'],
    ['writing', `files.give(${JSON.stringify(copy)}, files.stopper.signal)`],
  ])('ends the worker in the midst of %s', async (_what, work) => {
    const [worker, answer] = [page.waitForEvent('worker'), stopped(work)];
    const gone = (await worker).waitForEvent('close');
    await stop();
    expect(await answer).toBe(true);
    await gone;
    expect(page.workers()).toEqual([]);
  });

  it('starts none where it came first', async () => {
    await stop();
    expect(await stopped('files.readTables(new Uint8Array(1), files.stopper.signal)')).toBe(true);
    expect(page.workers()).toEqual([]);
  });
});
