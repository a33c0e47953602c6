import { mkdir, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect, it } from 'vitest';
import { readDay } from '../../src/domain/kernel/day.ts';
import { demoFile } from '../../src/starter/file/starter-file.ts';
import { imageOf } from '../xlsx/support.ts';
import { startChromium } from '../support/chromium.ts';
import { type BuiltWorkbench, openBuilt, startBuilt } from './built-workbench.ts';
import { type Pane, paneOf } from './pane.ts';
import { tableOf } from './saved-file.ts';

const DAY = readDay('2026-11-25') ?? 0;
const NOW = '2026-11-25T09:00:00';

let folder: string;
const running = new Set<BuiltWorkbench>();
const browsers = new Set<Browser>();

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'pour-ledger-kept-'));
  for (const name of ['A', 'B']) {
    await mkdir(join(folder, name));
    await writeFile(fileOf(name), demoFile(DAY));
  }
});
afterEach(async () => {
  for (const browser of browsers) await browser.close();
  for (const workbench of running) await workbench.close();
  browsers.clear();
  running.clear();
});
afterAll(() => rm(folder, { recursive: true }));

const fileOf = (name: string): string => join(folder, name, 'book.xlsx');

/** The workbench over A's or B's book. */
async function serve(name: string): Promise<BuiltWorkbench> {
  const workbench = await startBuilt([fileOf(name)], folder);
  running.add(workbench);
  return workbench;
}

/** Opens the pane in a browser of its own, which knows nothing of another. */
async function openPane({ address }: BuiltWorkbench): Promise<{ browser: Browser; pane: Pane }> {
  const browser = await startChromium();
  browsers.add(browser);
  const { page } = await openBuilt(browser, address, NOW);
  return { browser, pane: paneOf(page) };
}

async function toPreview(pane: Pane): Promise<void> {
  await pane.at('design').selectOption('Lantern Quay');
  await pane.at('bars').fill('12');
  await pane.at('next').click();
  await pane.reach('Weigh out');
  await pane.at('next').click();
  await pane.reach('What came out?');
  // Of the 13 that are started for 12 good ones.
  await pane.at('lost').fill('1');
  await pane.at('next').click();
  await pane.reach('Look it over');
}

const batches = async (name: string): Promise<unknown[]> =>
  tableOf(imageOf(await readFile(fileOf(name))), 'Batches')
    .rows.map(([batch]) => batch)
    .filter((batch) => batch !== '');

it('a pour previewed over one book is not offered over another of the same name', async () => {
  const first = await serve('A');
  const { browser, pane } = await openPane(first);
  await toPreview(pane);
  await browser.close();
  await first.close();
  const other = await openPane(await serve('B'));
  await other.pane.reach('What will you pour?');
  expect(await other.pane.at('bars').inputValue()).toBe('');
});

it('a draft outlives the browser, and a batch recorded as it was killed is told as recorded', async () => {
  const before = await batches('A');
  const workbench = await serve('A');
  const second = await openPane(workbench);
  await second.pane.reach('Look it over');
  await second.pane.at('record').click();
  await second.pane.root.getByText('Recording…').waitFor();
  const written = async () => (await batches('A')).length;
  await expect.poll(written).toBe(before.length + 1);
  await second.browser.close();
  const third = await openPane(workbench);
  await third.pane.reach('Recorded');
  expect(await batches('A')).toHaveLength(before.length + 1);
});
