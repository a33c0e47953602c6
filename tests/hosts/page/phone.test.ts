import { readFile } from 'node:fs/promises';
import type axeCore from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import type { HostPort } from '../../../src/workbook/port.ts';
import { startChromium } from '../../support/chromium.ts';
import { bookImage } from './book-image.ts';
import { buildPage } from './build-page.ts';
import { isOpen } from './open-page.ts';
import { servePage, type PageServer } from './page-server.ts';

const AXE = new URL('../../../node_modules/axe-core/axe.min.js', import.meta.url);

let browser: Browser;
let server: PageServer;
let page: Page;
const asked: string[] = [];
const complaints: string[] = [];

beforeAll(async () => {
  server = await servePage(await buildPage(), bookImage);
  browser = await startChromium();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
  page.on('request', (request) => asked.push(request.url().split('/').at(-1) ?? ''));
  page.on('pageerror', (error) => complaints.push(String(error.stack)));
  await page.goto(server.address);
  await page.locator('test-pane').waitFor();
});
afterAll(async () => {
  await browser.close();
  await server.close();
});

const axeFindings = async (): Promise<readonly string[]> => {
  await page.evaluate(await readFile(AXE, 'utf8'));
  return page.evaluate(async () => {
    const { axe } = window as unknown as { axe: typeof axeCore };
    // The grid's own insides are the library's, the pane's have tests of their own.
    const { violations } = await axe.run({ exclude: ['#grid', 'test-pane'] });
    return violations.map(({ id }) => id);
  });
};

it.each([
  [390, 844],
  [320, 640],
  [844, 390],
])('shows the pane alone over the whole width of %i by %i', async (width, height) => {
  await page.setViewportSize({ width, height });
  const box = await page.locator('#pane').boundingBox();
  expect(box).toMatchObject({ x: 0, width });
  expect(await page.locator('#sheet').isVisible()).toBe(false);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
  expect(await axeFindings()).toEqual([]);
});

it('records without the grid, which is not even fetched, and says that figures follow', async () => {
  await page.setViewportSize({ width: 390, height: 844 });
  const said = await page.evaluate(() =>
    (document.querySelector('test-pane') as HTMLElement & { port: HostPort }).port.apply({
      appends: [{ table: 'Moves', idColumn: 'Entry', rows: [{ Entry: 'M-2', Quantity: -40 }] }],
      updates: [],
    }),
  );
  expect(said).toEqual({ kind: 'applied' });
  expect(server.saves.length).toBe(1);
  await page.getByText('Saved; figures in the sheets follow when they are shown').waitFor();
  expect(asked).not.toContain('grid.js');
});

it('shows the sheets alone by one press, with what was recorded, and the pane by another', async () => {
  await page.getByRole('button', { name: 'Show the sheets' }).click();
  await isOpen(page);
  expect(asked).toContain('grid.js');
  expect(await page.locator('#sheet').boundingBox()).toMatchObject({ x: 0, width: 390 });
  expect(await page.locator('#pane').isVisible()).toBe(false);
  await page.getByText('Saved', { exact: true }).waitFor();
  expect(await page.evaluate(() => window.pourLedgerWorkbench?.values('Ask', 'B3'))).toEqual([
    [-290],
  ]);
  expect(await axeFindings()).toEqual([]);
  await page.getByRole('button', { name: 'Show the pane' }).click();
  expect(await page.locator('#pane').boundingBox()).toMatchObject({ x: 0, width: 390 });
  expect(complaints).toEqual([]);
});
