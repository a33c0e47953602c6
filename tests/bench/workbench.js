import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { cpus, tmpdir } from 'node:os';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { readFileSync } from 'node:fs';
import { build } from 'esbuild';
import { chromium } from 'playwright-core';

/* global window, PerformanceObserver -- some functions here run in the page */

/**
 * `npm run bench -- workbench [moves]`: the built workbench (`npm run build` first) with the demo and a
 * long ledger, in the system's Chromium. Milliseconds; a task is a stretch in which the page can't answer.
 */
const dist = fileURLToPath(new URL('../../dist/', import.meta.url));
const moves = Number(process.argv.at(-1)) || 100_000;
const folder = await mkdtemp(join(tmpdir(), 'pour-ledger-bench-'));
try {
  await measure();
} finally {
  await rm(folder, { recursive: true });
}

async function measure() {
  const file = join(folder, 'big.xlsx');
  const { bigWorkbook } = await fromSource('big-workbook.ts');
  const bytes = bigWorkbook({ moves, materials: 180 });
  await writeFile(file, bytes);
  console.log(`${moves} moves, ${mb((await stat(file)).size)} .xlsx, ${cpus().length} cores`);
  for (const name of ['start.js', 'grid.js', 'pane.js']) {
    const bytes = readFileSync(join(dist, 'workbench/page', name));
    say(`${name}, kB and packed kB`, bytes.length / 1000, gzipSync(bytes).length / 1000);
  }
  await measureSave(bytes);
  const started = performance.now();
  const server = spawn(process.execPath, [join(dist, 'workbench/server.js'), file, '--port', '0'], {
    env: { ...process.env, XDG_DATA_HOME: dirname(file) },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const [greeting] = await once(server.stdout, 'data');
    say('server ready', performance.now() - started);
    await measurePage(/http:\/\/\S+/.exec(String(greeting))[0]);
  } finally {
    server.kill();
  }
}

async function measurePage(address) {
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking'],
  });
  try {
    const page = await browser.newPage();
    await page.addInitScript(watchTasks);
    await page.addInitScript({ path: join(dist, '../for-tests/test-handle.js') });
    const began = performance.now();
    await page.goto(address, { waitUntil: 'commit' });
    await page.locator('pour-pane h2').first().waitFor({ timeout: 600_000 });
    say('pane ready', performance.now() - began);
    // Its cells show what they last came to.
    await page.locator('#grid canvas').first().waitFor({ timeout: 600_000 });
    say('first sheet drawn', performance.now() - began);
    await page.waitForFunction(() => window.pourLedgerWorkbench !== undefined, undefined, {
      timeout: 600_000,
    });
    say('open, all formulas answered', performance.now() - began);
    await page
      .evaluate(() => performance.getEntriesByName('first-contentful-paint')[0].startTime)
      .then((painted) => say('first paint', painted));
    await sayTasks(page, 'while opening');
    await measureEdit(page);
  } finally {
    await browser.close();
  }
}

/** One quantity of the ledger typed over: every answer of the workbook hangs on it. */
async function measureEdit(page) {
  await page.evaluate(() => window.pourLedgerWorkbench.select('Ledger', 'E1000'));
  await sayTasks(page, 'showing the ledger');
  const began = performance.now();
  await page.keyboard.type('-7');
  await page.keyboard.press('Enter');
  await page.evaluate(() => window.pourLedgerWorkbench.settled());
  say('an edit, all formulas answered', performance.now() - began);
  await sayTasks(page, 'while they answer');
  await page.getByText('Saved', { exact: true }).waitFor({ timeout: 600_000 });
  say('an edit, saved', performance.now() - began);
  await sayTasks(page, 'while saving');
}

/** Runs in the page: keeps the length of every task above 50 ms. */
function watchTasks() {
  window.tasks = [];
  new PerformanceObserver((list) => {
    window.tasks.push(...list.getEntries().map(({ duration }) => duration));
  }).observe({ type: 'longtask', buffered: true });
}

async function sayTasks(page, when) {
  const tasks = await page.evaluate(() => window.tasks.splice(0));
  const sum = tasks.reduce((all, task) => all + task, 0);
  say(`long tasks ${when}: longest, all`, Math.max(0, ...tasks), sum);
}

function say(what, ...values) {
  console.log(
    `  ${what.padEnd(52)}${values.map((value) => value.toFixed(0).padStart(8)).join('')}`,
  );
}

function mb(bytes) {
  return `${(bytes / 1e6).toFixed(1)} MB`;
}

/** What a save does on the server beside writing, in processor time: the least of three rounds. */
async function measureSave(bytes) {
  const { patchWorkbook } = await fromSource('../../src/xlsx/patch/patch-workbook.ts');
  const { readWorkbook } = await fromSource('../../src/xlsx/read/read-workbook.ts');
  const times = [1, 2, 3].map((value) => {
    const began = process.cpuUsage();
    const cells = [{ row: 999, column: 4, value }];
    const patched = patchWorkbook(bytes, [{ sheet: 'Ledger', tables: [], cells }]);
    if (readWorkbook(patched.bytes, 'big.xlsx').kind !== 'read') throw new Error('not saved');
    const { user, system } = process.cpuUsage(began);
    return (user + system) / 1000;
  });
  say('a move changed in the file and read back, processor', Math.min(...times));
}

/** The source is TypeScript; Node gets it as one script. */
async function fromSource(path) {
  const script = join(folder, `${basename(path, '.ts')}.mjs`);
  await build({
    entryPoints: [fileURLToPath(new URL(path, import.meta.url))],
    bundle: true,
    platform: 'node',
    format: 'esm',
    outfile: script,
    logLevel: 'error',
  });
  return import(script);
}
