import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { bundleForBrowser } from '../support/bundle-page.ts';
import { startChromium } from '../support/chromium.ts';
import type { WriteTwice } from './write-twice.ts';

/** For a whole test file: one tab, in which the returned function writes into a grid of its own. */
export function useGrid(): WriteTwice {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    const folder = await bundleForBrowser('change', './tests/contract/grid-entry.ts');
    browser = await startChromium();
    page = await browser.newPage();
    await page.setContent('<div id="grid" style="height: 300px"></div>');
    await page.addScriptTag({ path: join(folder, 'change.js') });
  });
  afterAll(() => browser.close());
  return (...given) =>
    // A number that no cell can hold has no JSON of its own, yet the browser's own copy has.
    page.evaluate((wanted) => window.writeInGrid(...wanted), given);
}
