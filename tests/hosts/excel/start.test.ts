import { readFileSync } from 'node:fs';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { buildSync } from 'esbuild';
import ExcelJS from 'exceljs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { functions } from '../../../functions/index.ts';
import { staticFiles } from '../../../src/build/static-files.ts';
import { built, builtFile } from '../../build/built.ts';
import { inProject } from '../../support/in-project.ts';
import { startChromium } from '../../support/chromium.ts';
import { workshop } from '../../support/small-book.ts';
import { CLIENT_SCRIPT } from './host/office-client.ts';

const OFFICE_SCRIPT = 'https://appsforoffice.microsoft.com/lib/1/hosted/office.js';

/** The vendor's client script as published, then the test's Excel behind it. */
const officeScript = [
  readFileSync(CLIENT_SCRIPT, 'utf8'),
  buildSync({
    entryPoints: [inProject('tests/hosts/excel/host/office-script.ts')],
    bundle: true,
    write: false,
    format: 'iife',
  }).outputFiles[0]?.text,
].join('\n');

/** True once the last step of starting is done. */
const STARTS_WITH_DOCUMENT = `testExcel.model.startState === 'Background'`;

const axe = readFileSync(inProject('node_modules/axe-core/axe.min.js'), 'utf8');

let browser: Browser;
let server: Server;

beforeAll(async () => {
  built('dist/taskpane.html');
  const serve = staticFiles(builtFile('dist'));
  server = createServer((request, response) => void serve(request, response));
  await new Promise<void>((ready) => server.listen(0, '127.0.0.1', ready));
  browser = await startChromium();
});

afterAll(async () => {
  await browser.close();
  await new Promise((done) => server.close(done));
});

interface Opened {
  readonly page: Page;
  readonly faults: readonly string[];
  /** Addresses asked for outside the add-in's own host. */
  readonly outside: readonly string[];
}

/** A pane that asks again and again would set one of these. */
const COUNT_REPEATED_TIMERS = `{
  const set = globalThis.setInterval;
  globalThis.repeated = 0;
  globalThis.setInterval = (...args) => { globalThis.repeated += 1; return set(...args); };
}`;

/** Opens the built pane as Excel would, with the client script and the test's Excel in place of office.js. */
async function open(query: string): Promise<Opened> {
  const page = await browser.newPage();
  const { port } = server.address() as AddressInfo;
  const own = `http://127.0.0.1:${port}/`;
  const faults: string[] = [];
  const outside: string[] = [];
  page.on('pageerror', (fault) => faults.push(fault.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.route('**/*', async (route) => {
    const address = route.request().url();
    if (address.startsWith(own)) return route.continue();
    outside.push(address);
    return address === OFFICE_SCRIPT
      ? route.fulfill({ contentType: 'text/javascript', body: officeScript })
      : route.abort();
  });
  await page.addInitScript(COUNT_REPEATED_TIMERS);
  await page.goto(`${own}taskpane.html${query}`);
  return { page, faults, outside };
}

/** A fact about the test's Excel, as the page's own text of JavaScript tells it. */
const fake = <T>(page: Page, fact: string): Promise<T> => page.evaluate(`testExcel.${fact}`);

describe('starting inside Excel', () => {
  it('hands the pane its port, heals the book, and asks to start with this workbook', async () => {
    const { page, faults, outside } = await open('');
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    expect(await fake(page, 'model.calculation.workedOut')).toEqual(['POUR.BOOK', 'POUR.ONHAND']);
    // 50 boxes in lot B1 of the small workshop; the file was saved with another number.
    expect(await fake(page, `model.sheet('Start').at(1, 0).value`)).toBe(50);
    expect(
      await page.evaluate(
        `document.querySelector('pour-pane').port.load().then((all) => all.length)`,
      ),
    ).toBe(Object.keys(workshop).length);
    expect(await page.evaluate(`document.querySelector('pour-pane').theme`)).toBe('dark');
    expect(await page.textContent('#notice')).toBe('');
    expect(faults).toEqual([]);
    expect(outside).toEqual([OFFICE_SCRIPT]);
    await page.close();
  });

  it('runs every worksheet function in the same page', async () => {
    const { page } = await open('');
    const ids = await fake<string[]>(page, 'associated.keys().toArray()');
    expect(ids.sort()).toEqual(Object.keys(functions).sort());
    await page.close();
  });

  it('keeps the pane’s memory in the browser, under this workbook’s address', async () => {
    const { page } = await open('');
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    await page.evaluate(`document.querySelector('pour-pane').port.memory.set('try', 'kept')`);
    await page.reload();
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    expect(await page.evaluate(`document.querySelector('pour-pane').port.memory.get('try')`)).toBe(
      'kept',
    );
    await page.close();
  });

  it('heals a handle that comes later, as from a partner’s computer', async () => {
    const { page, faults } = await open('');
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    await page.evaluate(`
      testExcel.model.sheet('Start').at(0, 0).value = 'book 00000000000000aa';
      const answer = { row: 1, column: 0, height: 1, width: 1 };
      testExcel.model.calculation.setDirty(testExcel.model.sheet('Start'), answer);
      testExcel.model.calculation.recalculate();`);
    expect(await fake(page, `model.sheet('Start').at(1, 0).value`)).toBe('#N/A');
    await page.waitForFunction(`testExcel.model.sheet('Start').at(1, 0).value === 50`);
    expect(await page.textContent('#notice')).toBe('');
    expect(faults).toEqual([]);
    await page.close();
  });

  it('leaves a workbook that is not ours as it is', async () => {
    const { page } = await open('?book=none');
    await page.waitForFunction(`document.querySelector('pour-pane').port !== undefined`);
    // Healing was begun before this reading, and is one sync shorter.
    await page.evaluate(`document.querySelector('pour-pane').port.load()`);
    expect(await fake(page, 'model.startState')).toBe('Inactive');
    expect(await fake(page, 'model.calculation.workedOut')).toEqual([]);
    await page.close();
  });

  it('shows what a partner adds in the sheet, without asking again and again', async () => {
    const { page } = await open('');
    await page.getByLabel('Design').waitFor();
    const row = ['Evening Bar', '', '', '', '', '', '', ''];
    await fake(page, `model.table('Designs').addRows([${JSON.stringify(row)}], 'Remote')`);
    await page.getByRole('option', { name: 'Evening Bar' }).waitFor({ state: 'attached' });
    expect(await page.evaluate('repeated')).toBe(0);
    await page.close();
  });

  it('waits for the end of editing where a cell is being edited at the start', async () => {
    const { page } = await open('?editing');
    await page.waitForFunction(`document.querySelector('pour-pane').port !== undefined`);
    expect(await fake(page, 'model.startState')).toBe('Inactive');
    await fake(page, 'host.endEditing()');
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    expect(await fake(page, `model.sheet('Start').at(1, 0).value`)).toBe(50);
    expect(await page.textContent('#notice')).toBe('');
    await page.close();
  });

  it.each([
    ['?web&lines=60000', /^Your ledger has 60,000 lines\. Excel on the web .* Windows or Mac/],
    ['?web&lines=1000', /^$/],
    ['?lines=60000', /^$/],
  ])('%s: says on the web alone that the ledger comes near its limit', async (query, said) => {
    const { page } = await open(query);
    await page.getByRole('tabpanel').getByRole('heading', { level: 2 }).waitFor();
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    expect(await page.textContent('#notice')).toMatch(said);
    await page.close();
  });

  it('opens a partner’s copy as a new workbook', async () => {
    const { page, faults } = await open('');
    await page.waitForFunction(STARTS_WITH_DOCUMENT);
    const sheet = {
      name: 'Plan',
      lines: ['For Ann'],
      table: 'PlanCopy',
      columns: [{ header: 'Design', format: 'text' }],
      rows: [['Teal']],
    };
    const copy = { fileName: 'copy', title: 'A copy', sheets: [sheet] };
    const [worker, given] = await Promise.all([
      page.waitForEvent('worker'),
      page.evaluate(
        `document.querySelector('pour-pane').port.files.give(${JSON.stringify(copy)}, new AbortController().signal)`,
      ),
    ]);
    expect(worker.url()).toMatch(/\/other-workbooks\.js$/);
    expect(given).toMatchObject({ kind: 'given' });
    const [base64 = ''] = await fake<string[]>(page, 'model.opened');
    const workbook = new ExcelJS.Workbook();
    await workbook.xlsx.load(Buffer.from(base64, 'base64').buffer);
    const texts: unknown[] = [];
    workbook.getWorksheet('Plan')?.eachRow((row) => texts.push(row.getCell(1).value));
    expect(texts).toEqual(expect.arrayContaining(['For Ann', 'Design', 'Teal']));
    expect(faults).toEqual([]);
    await page.close();
  });

  it('has a heading, and nothing that axe finds', async () => {
    const { page } = await open('');
    await page.getByLabel('Design').waitFor();
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe('Pour Ledger');
    await page.evaluate(axe);
    const found = await page.evaluate(
      `axe.run().then(({ violations }) => violations.map(({ id }) => id))`,
    );
    expect(found).toEqual([]);
    await page.close();
  });
});

describe('starting where it cannot work', () => {
  it.each([
    ['?host=Word', /^This pane works inside Excel[^\n]*$/m],
    ['?api=1.8', /^This Excel is too old[^\n]*it lacks ExcelApi 1\.9[^\n]*Update it[^\n]*$/m],
    ['?without=SharedRuntime', /^This Excel is too old[^\n]*cannot start with the workbook/m],
    ['?without=CustomFunctionsRuntime', /^This Excel is too old[^\n]*cannot say what to mend/m],
  ])('%s says so in the page', async (query, sentence) => {
    const { page } = await open(query);
    await page.waitForFunction(`document.getElementById('notice').textContent !== ''`);
    expect(await page.innerText('body')).toMatch(sentence);
    expect(await page.locator('pour-pane').count()).toBe(0);
    expect(await fake(page, 'host.syncs')).toBe(0);
    await page.close();
  });
});
