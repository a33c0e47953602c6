import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createServer } from 'node:http';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';

/* global window, PerformanceObserver, requestAnimationFrame -- some functions here run in the page */

/**
 * `npm run bench -- pane [moves]`: every step of the pane in the system's Chromium, over a workbook in
 * memory. Milliseconds: until the step is shown, the longest stretch in which the page can't answer, all
 * such stretches above 50, and the processor time of the page's thread.
 */
const heavy = [
  'batches lost',
  'used moves lost',
  'every move twice',
  'reversals of nothing',
  'every id twice',
];
const moves = Number(process.argv.at(-1)) || 100_000;
/** The way to each page's own thread. */
const threads = new Map();
const LONGEST_WAIT = 600_000;
const PAGE =
  '<!doctype html><meta charset="utf-8"><body><script type="module" src="pane-page.js"></script>';
const folder = await mkdtemp(join(tmpdir(), 'pour-ledger-bench-'));
const browser = await chromium.launch({
  executablePath: '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
});
const server = createServer((request, response) => void serve(request.url, response));
try {
  await bundlePage();
  await new Promise((ready) => server.listen(0, '127.0.0.1', ready));
  console.log(`${moves} moves, ${cpus().length} cores, load ${loadavg()[0]?.toFixed(1)}`);
  console.log(
    `  ${''.padEnd(44)}${['shown', 'longest', 'blocked', 'processor'].map((word) => word.padStart(9)).join('')}`,
  );
  await measureSound();
  await measureMerge();
  for (const name of heavy) await measureHeavy(name);
} finally {
  await browser.close();
  server.close();
  await rm(folder, { recursive: true });
}

/** Every step of a sound book that is no merge. */
async function measureSound() {
  const page = await open('sound');
  const tab = (name) => page.locator(`#tab-${name}`).click();
  const record = async (done) => {
    await page.locator('#record').click();
    await page.locator(done).waitFor();
  };
  const next = async (shows) => {
    await page.locator('#next').click();
    await page.locator(shows).waitFor();
  };
  const steps = {
    'pour: choose': async () => {
      await page.locator('#design').selectOption('Design 001');
      await page.locator('#bars').fill('12');
    },
    'pour: weigh out': () => next('pour-weigh'),
    'pour: what came out': () => next('pour-outcome'),
    'pour: look over': () => next('pour-preview'),
    'pour: record': () => record('pour-done'),
    sell: () => tab('sell'),
    'sell: look over': async () => {
      await page.locator('#bars-0-0').fill('1');
      await page.locator('#price-0-0').fill('7');
      await next('pour-sell-preview');
    },
    'sell: record': () => record('pour-sell-done'),
    receive: () => tab('receive'),
    'receive: look over': async () => {
      await page.locator('#material-0').selectOption('Material 001');
      await page.locator('#packs-0').fill('1');
      await page.locator('#paid-0').fill('9');
      await next('pour-receive-preview');
    },
    'receive: record': () => record('pour-receive-done'),
    count: () => tab('count'),
    'count: look over': async () => {
      await page.getByLabel('Material 001', { exact: true }).fill('20');
      await next('pour-count-preview');
    },
    'count: record': () => record('pour-count-done'),
    costs: () => tab('costs'),
    reorder: () => tab('reorder'),
    now: () => tab('now'),
    'care: check': () => tab('care'),
    'care: share': () => tab('partner'),
    'care: make the copy': async () => {
      await page.locator('#make').click();
      await page.getByText('The copy is here.').waitFor();
    },
    'an edit elsewhere, Pour shown': async () => {
      await page.evaluate(() => window.bench.edit());
    },
  };
  for (const [name, step] of Object.entries(steps)) await measure(page, name, step);
  await page.close();
}

/** Another copy of the workbook, chosen and brought in. */
async function measureMerge() {
  const page = await open('sound');
  await page.locator('#tab-care').click();
  await page.locator('#tab-merge').click();
  await page.evaluate((count) => window.bench.prepareFile('other copy', count), moves);
  await measure(page, 'care: another copy chosen', async () => {
    await page.locator('#copy').evaluate((input) => window.bench.choose(input));
    await page.locator('pour-merge-preview').waitFor();
  });
  await measure(page, 'care: brought in', async () => {
    await page.locator('#record').click();
    await page.locator('pour-merge-done').waitFor();
  });
  await page.close();
}

/** The check of a book of which thousands of lines are wrong, or of one that can't be read. */
async function measureHeavy(name) {
  const page = await open(name);
  if (name === 'every id twice') {
    await measure(page, `${name}: told apart`, async () => {
      await page.locator('#tell-apart').click();
      await page.locator('pour-check').waitFor();
    });
  } else {
    await measure(page, `${name}: checked`, async () => {
      await page.locator('#tab-care').click();
      await page.locator('pour-check').waitFor();
    });
    await measure(page, `${name}: what mends one`, async () => {
      await page.locator('[id^=mend-]').first().click();
      await page.locator('pour-check-preview').waitFor();
    });
  }
  await page.close();
}

async function open(name) {
  const page = await browser.newPage();
  page.setDefaultTimeout(LONGEST_WAIT);
  const thread = await page.context().newCDPSession(page);
  await thread.send('Performance.enable', { timeDomain: 'threadTicks' });
  threads.set(page, thread);
  page.on('pageerror', (error) => console.log(error.stack));
  await page.addInitScript(watchTasks);
  await page.goto(`http://127.0.0.1:${server.address().port}/`);
  await page.evaluate(([given, count]) => window.bench.prepare(given, count), [name, moves]);
  await measure(page, `opened: ${name}`, async () => {
    await page.evaluate(() => window.bench.open());
    await page.locator('pour-pane h2').waitFor();
  });
  return page;
}

async function measure(page, name, step) {
  await idle(page);
  await page.evaluate(() => window.takeTasks());
  const [began, spent] = [performance.now(), await processorOf(page)];
  await step();
  await idle(page);
  const shown = performance.now() - began;
  const processor = (await processorOf(page)) - spent;
  const tasks = await page.evaluate(() => window.takeTasks());
  const sum = tasks.reduce((all, task) => all + task, 0);
  const figures = [shown, Math.max(0, ...tasks), sum, processor];
  console.log(`  ${name.padEnd(44)}${figures.map((ms) => ms.toFixed(0).padStart(9)).join('')}`);
}

/** Processor time of the page's thread so far, which what else the machine does can't lengthen. */
async function processorOf(page) {
  const { metrics } = await threads.get(page).send('Performance.getMetrics');
  return metrics.find(({ name }) => name === 'TaskDuration').value * 1000;
}

/** Until the page has drawn what it had to draw. */
function idle(page) {
  return page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
}

/** Runs in the page: keeps the length of every task above 50 ms. */
function watchTasks() {
  const kept = [];
  const observer = new PerformanceObserver((list) => kept.push(...list.getEntries()));
  observer.observe({ type: 'longtask' });
  window.takeTasks = () =>
    [...kept.splice(0), ...observer.takeRecords()].map(({ duration }) => duration);
}

/** The page and, by the name that the page's script has for it, the worker. */
async function bundlePage() {
  const shared = { bundle: true, minify: true, conditions: ['browser'], logLevel: 'error' };
  const source = (path) => fileURLToPath(new URL(path, import.meta.url));
  await build({
    ...shared,
    entryPoints: [source('pane-page.js')],
    format: 'esm',
    outdir: folder,
  });
  await build({
    ...shared,
    entryPoints: [source('../../src/hosts/files/other-workbooks.ts')],
    outfile: join(folder, 'other-workbooks.ts'),
  });
}

async function serve(path, response) {
  if (path === '/') return response.setHeader('content-type', 'text/html').end(PAGE);
  const script = await readFile(join(folder, path)).catch(() => undefined);
  if (script === undefined) return response.writeHead(404).end();
  return response.setHeader('content-type', 'text/javascript').end(script);
}
