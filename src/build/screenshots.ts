import { cpSync, mkdirSync, mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright-core';
import { startWorkbench } from '../hosts/workbench/server/start.ts';
import { inProject } from './folders.ts';

/** The demo's last day, so that the pictures are the same whenever they are taken. */
const NOW = '2026-11-25T09:00:00';

/** Bytes; a larger picture makes README slow to open. */
const LARGEST = 300_000;

interface Picture {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly scheme: 'light' | 'dark';
  /** The sheet behind the pane. */
  /** Shown beside the pane; on a phone the pane is alone. */
  readonly sheet?: string;
  /** Steps of the flow to walk from its first one. */
  readonly steps: number;
}

const pictures: readonly Picture[] = [
  {
    name: 'workbench',
    width: 1280,
    height: 760,
    scheme: 'light',
    sheet: 'What to weigh',
    steps: 0,
  },
  { name: 'weigh-out', width: 1280, height: 760, scheme: 'light', sheet: 'Mosaic', steps: 1 },
  { name: 'preview', width: 1280, height: 760, scheme: 'light', sheet: 'Reorder', steps: 3 },
  { name: 'dark-phone', width: 390, height: 844, scheme: 'dark', steps: 1 },
];

/** Takes README's pictures from the built workbench, on a copy of the built demo. */
async function takePictures(): Promise<void> {
  const browser = await chromium.launch({
    executablePath: process.env['CHROMIUM'] ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu'],
  });
  mkdirSync(inProject('src/build/pictures'), { recursive: true });
  try {
    for (const picture of pictures) await takeOne(browser, picture);
  } finally {
    await browser.close();
  }
}

/** Each picture of a workbench of its own: what was begun in the pane for one is kept, and would stand in the next. */
async function takeOne(browser: Browser, picture: Picture): Promise<void> {
  const folder = mkdtempSync(join(tmpdir(), 'pour-ledger-pictures-'));
  const file = join(folder, 'pour-ledger.xlsx');
  cpSync(inProject('dist/pour-ledger.xlsx'), file);
  const workbench = await startWorkbench(file, inProject('dist/workbench/page'), folder, 0);
  if ('kind' in workbench) throw new Error(workbench.sentence);
  try {
    await take(browser, workbench.address, picture);
  } finally {
    await workbench.close();
    rmSync(folder, { recursive: true });
  }
}

async function take(browser: Browser, address: string, picture: Picture): Promise<void> {
  const { name, width, height, scheme, sheet, steps } = picture;
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: scheme,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  await page.clock.install({ time: NOW });
  // Ids are drawn at random; the pictures show the same one each time.
  await page.addInitScript(() => {
    crypto.getRandomValues = (bytes) => bytes;
  });
  await page.addInitScript({ path: inProject('for-tests/test-handle.js') });
  await page.goto(address);
  if (sheet !== undefined) {
    await page.waitForFunction(() => window.pourLedgerWorkbench !== undefined);
    await select(page, sheet, 'A2');
  }
  await walk(page, steps);
  // The formula bar lays its text out with the right width from the second selection on.
  if (sheet !== undefined) await select(page, sheet, 'A1');
  await settledFrames(page);
  const path = inProject(`src/build/pictures/${name}.png`);
  await page.screenshot({ path, animations: 'disabled' });
  await context.close();
  const { size } = statSync(path);
  if (size > LARGEST) throw new Error(`${path} has ${String(size)} bytes.`);
  console.log(`${path}: ${String(Math.round(size / 1000))} kB`);
}

async function select(page: Page, sheet: string, cell: string): Promise<void> {
  await page.evaluate(
    async ([shown = '', at = '']) => {
      window.pourLedgerWorkbench?.select(shown, at);
      await window.pourLedgerWorkbench?.settled();
    },
    [sheet, cell],
  );
}

/** Lets the grid draw what it measured: its formula bar is laid out some frames after a selection. */
async function settledFrames(page: Page): Promise<void> {
  await page.evaluate(async () => {
    for (let frame = 0; frame < 40; frame += 1) {
      await new Promise((next) => requestAnimationFrame(next));
    }
  });
}

/** Chooses a pour, ticks what a maker would have weighed by then, and goes on step by step. */
async function walk(page: Page, steps: number): Promise<void> {
  const pane = page.locator('pour-pane');
  await pane.locator('#design').selectOption('Lantern Quay');
  await pane.locator('#bars').fill('12');
  const headings = ['Weigh out', 'What came out?', 'Look it over'];
  for (const heading of headings.slice(0, steps)) {
    // 13 are started for 12 good ones, and the page asks what became of each.
    if (heading === 'Look it over') await pane.locator('#lost').fill('1');
    await pane.locator('#next').click();
    await pane.getByRole('heading', { name: heading, exact: true }).waitFor();
  }
  if (steps !== 1) return;
  for (const line of [0, 1]) await pane.locator('fluent-checkbox').nth(line).click();
  await pane.getByText(/^2 of \d+ lines ticked\.$/).waitFor();
}

takePictures().catch((problem: unknown) => {
  console.error(problem instanceof Error ? problem.message : String(problem));
  process.exitCode = 1;
});
