import { writeFileSync } from 'node:fs';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it, onTestFinished } from 'vitest';
import { startWorkbench } from '../../../src/hosts/workbench/server/start.ts';
import { MAX_REACH } from '../../../src/xlsx/limits.ts';
import { writeWorkbook } from '../../../src/xlsx/write/write-workbook.ts';
import { startChromium } from '../../support/chromium.ts';
import { WHOLE, withLists, withMerges } from '../../xlsx/far-reaching.ts';
import { buildPage } from './build-page.ts';
import { openAt } from './open-page.ts';

let browser: Browser;
let pageFolder: string;

beforeAll(async () => {
  pageFolder = await buildPage();
  browser = await startChromium();
});
afterAll(() => browser.close());

const book = writeWorkbook({
  sheets: [
    {
      name: 'Notes',
      cells: [
        { row: 0, column: 0, value: 'a' },
        { row: 30, column: 5, value: 'b' },
      ],
    },
  ],
});

/** A sheet so long that nearly as many of its cells have a list as may have one. */
const long = writeWorkbook({
  sheets: [
    { name: 'Notes', cells: [{ row: Math.floor(MAX_REACH / 26) - 201, column: 1, value: 'b' }] },
  ],
});

it.each([
  ['a merge of the whole sheet', withMerges(book, [WHOLE]), 'A1'],
  ['a choice of yes or no over the whole sheet', withLists(book, [[WHOLE, '"TRUE,FALSE"']]), 'B2'],
  ['a list of words over the whole sheet', withLists(book, [[WHOLE, '"a,b"']]), 'B2'],
  ['a list over the whole sheet, from the whole sheet', withLists(book, [[WHOLE, WHOLE]]), 'B2'],
  ['a list as far-reaching as may be', withLists(long, [[WHOLE, '"a,b"']]), 'B2'],
])('%s is opened, typed into and saved', async (_what, bytes, cell) => {
  const folder = await mkdtemp(join(tmpdir(), 'pour-ledger-far-'));
  onTestFinished(() => rm(folder, { recursive: true }));
  const file = join(folder, 'far.xlsx');
  writeFileSync(file, bytes);
  const workbench = await startWorkbench(file, pageFolder, join(folder, 'data'));
  if ('kind' in workbench) throw new Error(workbench.sentence);
  onTestFinished(() => workbench.close());
  const open = await openAt(browser, workbench.address);
  onTestFinished(() => open.close());
  await open.type('Notes', cell, 'b');
  expect(await open.values('Notes', cell)).toEqual([['b']]);
  await open.saysSaved();
});
