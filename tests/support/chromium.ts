import { chromium, type Browser } from 'playwright-core';

const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking ' +
  '--disable-component-update --disable-sync';

/** What a page may take for one thing: ten times the longest seen, for a machine with as much else to do. */
const PATIENCE_MS = 120_000;

/** Starts the system's own Chromium, which asks nothing of the network by itself; its pages are waited for with patience. */
export async function startChromium(): Promise<Browser> {
  const browser = await chromium.launch({
    executablePath: '/usr/bin/chromium',
    args: FLAGS.split(' '),
    timeout: PATIENCE_MS,
  });
  const newContext = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await newContext(options);
    context.setDefaultTimeout(PATIENCE_MS);
    return context;
  };
  return browser;
}
