import { readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { webLightTheme } from '@fluentui/tokens';
import type { Page } from 'playwright-core';
import type { TableData } from '../../src/workbook/port.ts';
import { POLICY } from '../hosts/page/page-server.ts';
import { bundleForBrowser } from '../support/bundle-page.ts';
import { startChromium } from '../support/chromium.ts';
import { smallWorkshop } from './small-workshop.ts';

/** One browser, one bundle, one server and one tab for all tests of a file. */
export interface PaneWorkshop {
  /** Opens the pane afresh; the page that was open before is gone. */
  open(tables?: readonly TableData[]): Promise<Page>;
  /** Console errors, page errors and refused policies since the last opening. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** How a page is looked at. */
export interface Sight {
  readonly theme: 'light' | 'dark';
  readonly width: number;
  /** How many times as large text is as usual. */
  readonly textScale: number;
}

const USUAL: Sight = { theme: 'light', width: 400, textScale: 1 };

/** Bundles the pane around the memory port, serves it under the workbench's policy, starts Chromium. */
export async function createPaneWorkshop(): Promise<PaneWorkshop> {
  const folder = await bundleForBrowser('pane', './tests/taskpane/browser-entry.ts');
  const server = await serve(folder);
  const { port } = server.address() as AddressInfo;
  const address = `http://127.0.0.1:${String(port)}/`;
  const browser = await startChromium();
  const page = await (await browser.newContext({ reducedMotion: 'reduce' })).newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error.stack)));
  return {
    complaints,
    async open(tables = smallWorkshop) {
      await page.goto(`${address}page.css`);
      complaints.length = 0;
      await open(page, address, tables);
      return page;
    },
    async close() {
      await browser.close();
      server.closeAllConnections();
      server.close();
    },
  };
}

async function open(page: Page, address: string, tables: readonly TableData[]): Promise<void> {
  await page.setViewportSize({ width: USUAL.width, height: 800 });
  await page.emulateMedia({ colorScheme: USUAL.theme });
  await page.evaluate((given) => {
    sessionStorage.clear();
    sessionStorage.setItem('tables', given);
  }, JSON.stringify(tables));
  await page.goto(address);
  await page.locator('pour-pane h2').waitFor();
}

/** Looks at the open page in another way, until the next or the next opening. */
export async function seeAs(page: Page, { theme, width, textScale }: Sight): Promise<void> {
  await page.setViewportSize({ width, height: 800 });
  await page.emulateMedia({ colorScheme: theme });
  await page.waitForFunction(
    (wanted) => document.querySelector('pour-pane')?.style.colorScheme === wanted,
    theme,
  );
  await scaleText(page, textScale);
  await page.evaluate(colorsAreSettled);
}

/** Runs in the page: until no color is on its way from one theme to the other. */
async function colorsAreSettled(): Promise<void> {
  const frame = () => new Promise((drawn) => requestAnimationFrame(drawn));
  const isMoving = (root: Document | ShadowRoot): boolean =>
    root.getAnimations().length > 0 ||
    [...root.querySelectorAll('*')].some(
      ({ shadowRoot }) => shadowRoot !== null && isMoving(shadowRoot),
    );
  do await frame();
  while (isMoving(document));
}

/** All text larger, as a browser that enlarges text alone makes it: every size of Fluent's. */
async function scaleText(page: Page, scale: number): Promise<void> {
  const sizes = Object.entries(webLightTheme).filter(([name]) =>
    /^fontSize|^lineHeight/u.test(name),
  );
  const scaled = sizes.map(([name, size]) => [
    `--${name}`,
    `${String(Number.parseFloat(String(size)) * scale)}px`,
  ]);
  await page.locator('pour-pane').evaluate((pane: HTMLElement, given) => {
    for (const [name = '', size = ''] of given) pane.style.setProperty(name, size);
  }, scaled);
}

const PAGE = `<!doctype html><html lang="en"><head><meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1"><title>Pour Ledger</title>
<link rel="stylesheet" href="page.css"></head>
<body><main><h1>Test workbook</h1></main><script src="pane.js"></script></body></html>`;

/** As in the hosts: the page itself has no margins; its heading is only for whoever hears it. */
const STYLE = `body{margin:0}h1{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}`;

async function serve(folder: string): Promise<Server> {
  const script = await readFile(join(folder, 'pane.js'));
  const files: Readonly<Record<string, readonly [string, string | Buffer]>> = {
    '/': ['text/html; charset=utf-8', PAGE],
    '/page.css': ['text/css', STYLE],
    '/pane.js': ['text/javascript', script],
    '/favicon.ico': ['image/x-icon', ''],
  };
  const server = createServer((request, response) => {
    const [type, body] = files[new URL(request.url ?? '/', 'http://x').pathname] ?? ['', undefined];
    response.setHeader('content-security-policy', POLICY);
    if (body === undefined) response.writeHead(404).end();
    else response.writeHead(200, { 'content-type': type }).end(body);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return server;
}
