import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import type { CellLook, TestHandle } from '../../../src/hosts/workbench/page/test-handle.ts';
import type { Applied, Cell, Change, HostPort, TablePlace } from '../../../src/workbook/port.ts';
import { startChromium } from '../../support/chromium.ts';
import { bookImage } from './book-image.ts';
import { buildPage } from './build-page.ts';
import { servePage, type PageServer } from './page-server.ts';

/**
 * For a whole test file: one browser, one server and one tab, in which the returned function opens the
 * workbook afresh. A tab that opened it before opens it in a third of the time.
 */
export function useOpenPage(): () => Promise<OpenPage> {
  let browser: Browser;
  let server: PageServer;
  let tools: PageTools | undefined;
  beforeAll(async () => {
    const folder = await buildPage();
    server = await servePage(folder, bookImage);
    browser = await startChromium();
  });
  afterAll(async () => {
    await browser.close();
    await server.close();
  });
  return async () => {
    if (tools) await reopen(tools, server);
    tools ??= await openAt(browser, server.address);
    return { ...tools, server };
  };
}

/** The next test's page: what the one before left in the browser and on the server is gone. */
async function reopen({ page, complaints }: PageTools, server: PageServer): Promise<void> {
  await page.emulateMedia({ colorScheme: null });
  // What the old page asks for as it goes is neither saved nor a complaint of the new one.
  await page.goto(`${server.address}elsewhere`);
  server.reset();
  complaints.length = 0;
  await page.goto(server.address);
  await isOpen(page);
}

/** Waits until the workbook is open. */
export const isOpen = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => window.pourLedgerWorkbench !== undefined);

/** A page of the test's own server. */
export interface OpenPage extends PageTools {
  readonly server: PageServer;
}

/** A page with a workbook open, and what it must not have done. */
export interface PageTools {
  readonly page: Page;
  /** Console errors and warnings, page errors, refused policies and requests to elsewhere. */
  readonly complaints: string[];
  values(sheet: string, range: string): Promise<readonly (readonly Cell[])[]>;
  failures(sheet: string, cell: string): Promise<readonly string[]>;
  formula(sheet: string, cell: string): Promise<string>;
  look(sheet: string, cell: string): Promise<CellLook>;
  /** Selects the cell, types on the keyboard, and waits for the formulas. */
  type(sheet: string, cell: string, text: string): Promise<void>;
  select(sheet: string, cell: string): Promise<void>;
  apply(change: Change): Promise<Applied>;
  show(place: TablePlace): Promise<void>;
  load(): Promise<Awaited<ReturnType<HostPort['load']>>>;
  /** Waits until the header line says so. */
  saysSaved(words?: string): Promise<void>;
  close(): Promise<void>;
}

type PaneElement = HTMLElement & { readonly port: HostPort };

/**
 * Opens the workbench at an address; with `now`, the page believes that it opens at that moment. A page without the
 * tests' handle is given its `script` beforehand.
 */
export async function openAt(
  browser: Browser,
  address: string,
  now?: string,
  script?: string,
): Promise<PageTools> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  if (script !== undefined) await page.addInitScript({ content: script });
  if (now !== undefined) await page.clock.install({ time: now });
  const complaints = listen(page, address);
  await page.goto(address);
  await isOpen(page);
  const ask = <T>(run: (handle: TestHandle, args: readonly string[]) => T, args: string[]) =>
    page.evaluate(
      `(${run.toString()})(window.pourLedgerWorkbench, ${JSON.stringify(args)})`,
    ) as Promise<Awaited<T>>;
  return {
    page,
    complaints,
    values: (sheet, range) =>
      ask((handle, [s = '', r = '']) => handle.values(s, r), [sheet, range]),
    failures: (sheet, cell) =>
      ask((handle, [s = '', c = '']) => handle.failures(s, c), [sheet, cell]),
    formula: (sheet, cell) =>
      ask((handle, [s = '', c = '']) => handle.formula(s, c), [sheet, cell]),
    look: (sheet, cell) => ask((handle, [s = '', c = '']) => handle.look(s, c), [sheet, cell]),
    async type(sheet, cell, text) {
      await ask(
        (handle, [s = '', c = '']) => {
          handle.select(s, c);
        },
        [sheet, cell],
      );
      await page.keyboard.type(text);
      await page.keyboard.press('Enter');
      await ask((handle) => handle.settled(), []);
    },
    select: (sheet, cell) =>
      ask(
        (handle, [s = '', c = '']) => {
          handle.select(s, c);
        },
        [sheet, cell],
      ),
    apply: (change) =>
      page.evaluate(
        (wanted) => (document.querySelector('test-pane') as PaneElement).port.apply(wanted),
        change,
      ),
    show: (place) =>
      page.evaluate(
        (wanted) => (document.querySelector('test-pane') as PaneElement).port.show(wanted),
        place,
      ),
    load: () =>
      page.evaluate(() => (document.querySelector('test-pane') as PaneElement).port.load()),
    async saysSaved(words = 'Saved') {
      await page.getByText(words, { exact: true }).waitFor();
    },
    close: () => context.close(),
  };
}

/** Hears what a page must not do from now on. */
export function listen(page: Page, address: string): string[] {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error.stack)));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(address) && !/^(data|blob):/.test(url)) complaints.push(`request: ${url}`);
  });
  page.on('requestfailed', (request) => {
    // Events end with the page, as its icon may; texts sent as it goes arrive, but nobody is left to hear the answer.
    const outlives = /api\/(events|texts)$|\/icon-32\.png$/.test(request.url());
    const isAborted = request.failure()?.errorText === 'net::ERR_ABORTED';
    if (!(outlives && isAborted)) complaints.push(`failed: ${request.url()}`);
  });
  return complaints;
}
