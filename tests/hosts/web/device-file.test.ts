import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { builtFile } from '../../build/built.ts';
import { startChromium } from '../../support/chromium.ts';
import { cellAt, imageOf } from '../../xlsx/support.ts';
import { plainHost, type PlainHost } from './plain-host.ts';
import { openTab, smallFile, type Tab } from './web-page.ts';

/**
 * A file of the origin's own private folder has the same handle as one of the device, but for the browser's question
 * whether the page may write there, which nobody can answer for a test. So the test answers it.
 */
const CHOOSES_MINE = `
  const mine = async () => (await navigator.storage.getDirectory()).getFileHandle('mine.xlsx', { create: true });
  window.showOpenFilePicker = async () => [await mine()];
  FileSystemFileHandle.prototype.queryPermission = async () => localStorage.getItem('may write') ?? 'granted';
  FileSystemFileHandle.prototype.requestPermission = async () => {
    localStorage.removeItem('may write');
    return 'granted';
  };
`;

let host: PlainHost;
let browser: Browser;
let context: BrowserContext;
let tab: Tab;

beforeAll(async () => {
  host = await plainHost(builtFile('dist/web'));
  browser = await startChromium();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  context.setDefaultTimeout(45_000);
  tab = await openTab(context, host.address, CHOOSES_MINE);
});
afterAll(async () => {
  await browser.close();
  await host.close();
});

/** Another program writes the file. */
const writeOutside = (bytes: Uint8Array): Promise<void> =>
  tab.page.evaluate(
    async (numbers) => {
      const folder = await navigator.storage.getDirectory();
      const handle = await folder.getFileHandle('mine.xlsx', { create: true });
      const writable = await handle.createWritable();
      await writable.write(new Uint8Array(numbers));
      await writable.close();
    },
    [...bytes],
  );

/** What the file holds in A2. */
async function inFile(): Promise<unknown> {
  const numbers = await tab.page.evaluate(async () => {
    const folder = await navigator.storage.getDirectory();
    const file = await (await folder.getFileHandle('mine.xlsx')).getFile();
    return [...new Uint8Array(await file.arrayBuffer())];
  });
  return cellAt(imageOf(new Uint8Array(numbers)), 'Shelf', 'A2')?.value;
}

it('saves back into the file that was opened', async () => {
  await writeOutside(smallFile());
  await tab.press('Open a workbook from this device');
  await tab.isOpen();
  await tab.says(/^Kept in this browser, .+, and in mine\.xlsx, /);
  await tab.type('A2', '15');
  await expect.poll(inFile).toBe(15);
});

it('keeps what it may not write into the file yet, and writes it when the maker allows it', async () => {
  await tab.page.evaluate(() => {
    localStorage.setItem('may write', 'prompt');
  });
  await tab.type('A2', '16');
  await tab.says(/mine\.xlsx has what it had .+: press to save into it\./);
  expect(await inFile()).toBe(15);
  await tab.press('Save into the file');
  await expect.poll(inFile).toBe(16);
});

it('never writes over what another program saved, which opens beside it', async () => {
  await writeOutside(smallFile());
  await tab.type('A2', '17');
  await tab.says(/^Another program changed mine\.xlsx since/);
  expect(await inFile()).toBe(12);
  await Promise.all([tab.page.waitForEvent('load'), tab.press('Open what the file holds')]);
  await tab.isOpen();
  expect(await tab.value('A2')).toBe(12);
  await tab.page.goto(host.address);
  await expect.poll(() => tab.page.getByRole('button', { name: 'Open mine.xlsx' }).count()).toBe(2);
  expect(tab.complaints).toEqual([]);
});

it('takes a new version of the page in only when told, and keeps what was typed', async () => {
  await tab.page.getByRole('button', { name: 'Open mine.xlsx' }).first().click();
  await tab.isOpen();
  host.renew();
  await tab.page.evaluate(async () => {
    await (await navigator.serviceWorker.ready).update();
  });
  await tab.says(/^A new version of Pour Ledger is here/);
  const before = tab.page.url();
  await tab.type('A2', '21');
  await Promise.all([tab.page.waitForEvent('load'), tab.press('Take it in now')]);
  await tab.isOpen();
  expect([tab.page.url(), await tab.value('A2')]).toEqual([before, 21]);
  expect(
    await tab.page.evaluate(async () => (await navigator.serviceWorker.ready).waiting),
  ).toBeNull();
});
