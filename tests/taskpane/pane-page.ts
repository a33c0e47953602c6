import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { webLightTheme } from '@fluentui/tokens';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import type { TableData } from '../../src/workbook/port.ts';
import { POLICY } from '../hosts/page/page-server.ts';
import { bundleForBrowser } from '../support/bundle-page.ts';
import { startChromium } from '../support/chromium.ts';
import { smallWorkshop } from './small-workshop.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** One browser, one bundle, one server for all tests of a file. */
export interface PaneWorkshop {
  open(options?: OpenOptions): Promise<PanePage>;
  close(): Promise<void>;
}

export interface OpenOptions {
  readonly tables?: readonly TableData[];
  readonly theme?: 'light' | 'dark';
  readonly width?: number;
  /** How many times as large text is as usual. */
  readonly textScale?: number;
}

export interface PanePage {
  readonly page: Page;
  /** Console errors, page errors and refused policies. */
  readonly complaints: readonly string[];
  close(): Promise<void>;
}

/** Bundles the pane around the memory port, serves it under the workbench's policy, starts Chromium. */
export async function createPaneWorkshop(): Promise<PaneWorkshop> {
  const folder = await bundle();
  const server = await serve(folder);
  const browser = await startChromium();
  const { port } = server.address() as AddressInfo;
  return {
    open: (options = {}) => open(browser, `http://127.0.0.1:${String(port)}/`, options),
    async close() {
      await browser.close();
      server.closeAllConnections();
      server.close();
    },
  };
}

async function open(browser: Browser, address: string, options: OpenOptions): Promise<PanePage> {
  const { tables = smallWorkshop, theme = 'light', width = 400, textScale = 1 } = options;
  const context: BrowserContext = await browser.newContext({
    viewport: { width, height: 800 },
    colorScheme: theme,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error.stack)));
  await page.addInitScript((given) => {
    if (sessionStorage.getItem('tables') === null) sessionStorage.setItem('tables', given);
  }, JSON.stringify(tables));
  await page.goto(address);
  await page.locator('pour-pane h2').waitFor();
  if (textScale !== 1) await enlargeText(page, textScale);
  return { page, complaints, close: () => context.close() };
}

/** All text larger, as a browser that enlarges text alone makes it: every size of Fluent's. */
async function enlargeText(page: Page, scale: number): Promise<void> {
  const sizes = Object.entries(webLightTheme).filter(([name]) =>
    /^fontSize|^lineHeight/u.test(name),
  );
  const larger = sizes.map(([name, size]) => [
    `--${name}`,
    `${String(Number.parseFloat(String(size)) * scale)}px`,
  ]);
  await page.locator('pour-pane').evaluate((pane: HTMLElement, given) => {
    for (const [name = '', size = ''] of given) pane.style.setProperty(name, size);
  }, larger);
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

/** The bundle of these very sources, built once and found again by their content. */
async function bundle(): Promise<string> {
  const folder = join(root, 'node_modules/.cache/pane-tests', await contentHash());
  if (existsSync(join(folder, 'pane.js'))) return folder;
  await bundleForBrowser({ pane: './tests/taskpane/browser-entry.ts' }, folder);
  return folder;
}

async function contentHash(): Promise<string> {
  const hash = createHash('sha256');
  const folders = ['taskpane', 'src/domain', 'src/workbook', 'tests/taskpane', 'tests/support'];
  for (const folder of [...folders, 'src/hosts/workbench/page']) {
    const names = await readdir(join(root, folder), { recursive: true });
    for (const name of names.filter((known) => known.endsWith('.ts')).sort()) {
      hash.update(name).update(await readFile(join(root, folder, name)));
    }
  }
  hash.update(await readFile(join(root, 'package-lock.json')));
  return hash.digest('hex').slice(0, 16);
}
