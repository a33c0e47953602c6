import type { Browser, BrowserContext } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { builtFile } from '../../build/built.ts';
import { paneOf } from '../../end-to-end/pane.ts';
import { accessFindings } from '../../taskpane/access-checks.ts';
import { startChromium } from '../../support/chromium.ts';
import { cellAt, imageOf } from '../../xlsx/support.ts';
import { plainHost, type PlainHost } from './plain-host.ts';
import { chooseFile, downloaded, openTab, smallFile, type Tab, WITHOUT_FILES } from './web-page.ts';

let host: PlainHost;
let browser: Browser;
let context: BrowserContext;

beforeAll(async () => {
  builtFile('dist/web/index.html');
  host = await plainHost(builtFile('dist/web'));
  browser = await startChromium();
  context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  context.setDefaultTimeout(45_000);
});
afterAll(async () => {
  await browser.close();
  await host.close();
});

/** The tab's process ends at once, as with a battery: nothing in the page hears of it. */
async function kill({ page }: Tab): Promise<void> {
  const session = await context.newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  session.send('Page.crash').catch(() => undefined);
  await crashed;
  await page.close();
}

/** The browser has no room left for what is put into its storage, or has some again. */
const fill = ({ page }: Tab, isFull: boolean): Promise<void> =>
  page.evaluate((full) => {
    const store = IDBObjectStore.prototype as IDBObjectStore & { real?: IDBObjectStore['put'] };
    const real = (store.real ??= store.put);
    store.put = full
      ? () => {
          throw new DOMException('There is no room.', 'QuotaExceededError');
        }
      : real;
  }, isFull);

describe('a workbook kept in the browser', () => {
  /** The address of the open workbook. */
  let address: string;
  let tab: Tab;

  it('is opened from the device, without a line after the first visit', async () => {
    tab = await openTab(context, host.address, WITHOUT_FILES);
    await tab.page.evaluate(() => navigator.serviceWorker.ready);
    await context.setOffline(true);
    await tab.page.reload();
    await chooseFile(tab, 'small.xlsx', smallFile());
    await tab.isOpen();
    address = tab.page.url();
    expect(await tab.page.title()).toBe('small.xlsx – Pour Ledger');
    await tab.says(/^Kept in this browser, .+\. Not downloaded yet\./);
    expect(await tab.value('A3')).toBe(24);
  });

  it('holds what is typed, and says so only once it is kept', async () => {
    await tab.type('A2', '15');
    await tab.says('Saved');
    await kill(tab);
    tab = await openTab(context, address, WITHOUT_FILES);
    await tab.isOpen();
    expect([await tab.value('A2'), await tab.value('A3')]).toEqual([15, 30]);
  });

  it('loses no cell that was typed, whenever the tab ends', async () => {
    await tab.type('A2', '16');
    await tab.page.waitForFunction(
      () => window.pourLedgerWorkbench?.values('Shelf', 'A3')[0]?.[0] === 32,
    );
    await kill(tab);
    tab = await openTab(context, address, WITHOUT_FILES);
    await tab.isOpen();
    expect([await tab.value('A2'), await tab.value('A3')]).toEqual([16, 32]);
  });

  it('is handed over as a file, and the page says how old that is', async () => {
    expect(cellAt(imageOf(await downloaded(tab)), 'Shelf', 'A2')?.value).toBe(16);
    await tab.says(/Downloaded as it is/);
    await tab.type('A2', '17');
    await tab.says(/Changed since it was downloaded/);
  });

  it('is as it was where the storage is full; its last cells can be taken along, and are kept once there is room', async () => {
    await fill(tab, true);
    await tab.type('A2', '18');
    await tab.says(/^Not saved: This browser has no room left/);
    expect(cellAt(imageOf(await downloaded(tab)), 'Shelf', 'A2')?.value).toBe(18);
    await fill(tab, false);
    await tab.press('Try again');
    await tab.says('Saved');
  });

  it('is changed by one tab alone; the other looks, and takes over when asked to', async () => {
    const second = await openTab(context, address, WITHOUT_FILES);
    await second.isOpen();
    await second.says('Only to look at');
    expect(await second.value('A2')).toBe(18);
    await second.type('A2', '99');
    expect(await second.value('A2')).toBe(18);
    await tab.type('A2', '19');
    await Promise.all([second.page.waitForEvent('load'), second.press('Work here instead')]);
    await second.isOpen();
    expect(await second.value('A2')).toBe(19);
    await second.type('A2', '20');
    await second.says('Saved');
    // The one that gave it up looks, and hears that there is something newer to see.
    await tab.says('Not saved: the file changed outside');
    await tab.page.close();
    expect(second.complaints).toEqual([]);
    tab = second;
  });

  it('is listed with its place and age, and removed only when asked twice', async () => {
    await tab.page.goto(host.address);
    await tab.says(/^kept in this browser, /);
    expect(await accessFindings(tab.page)).toEqual([]);
    await tab.press('Remove');
    await tab.press('Keep it');
    await tab.press('Remove');
    await tab.press('Yes, remove small.xlsx from this browser');
    await tab.page.getByRole('button', { name: 'Open small.xlsx' }).waitFor({ state: 'detached' });
    await tab.page.goto(address);
    await tab.says('Which workbook?');
  });

  it('can be a fresh demo, made without a line', async () => {
    await tab.page.goto(host.address);
    await tab.press('Look at the demo');
    await tab.page.waitForURL(/#.+/);
    await tab.isOpen();
    expect(await tab.page.title()).toBe('demo.xlsx – Pour Ledger');
    await paneOf(tab.page).at('design').waitFor();
    expect(tab.complaints).toEqual([]);
  });
});
