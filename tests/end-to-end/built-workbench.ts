import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import type { Browser } from 'playwright-core';
import { built, builtFile } from '../build/built.ts';
import { openAt, type PageTools } from '../hosts/page/open-page.ts';

/** The starter workbook with the demo, as the build writes it. */
export const demoFile = builtFile('dist/pour-ledger.xlsx');

/** The same sheets without the demo. */
export const emptyFile = builtFile('dist/pour-ledger-empty.xlsx');

/** The workbench as a maker runs it: the built server in a process of its own. */
export interface BuiltWorkbench {
  /** What it said when it was up. */
  readonly greeting: string;
  readonly address: string;
  close(): Promise<void>;
}

/** Opens the page as it is shipped, with the tests' handle brought along. */
export const openBuilt = (browser: Browser, address: string, now: string): Promise<PageTools> =>
  openAt(browser, address, now, built('for-tests/test-handle.js'));

/** Starts the built server with these arguments; `dataHome` is where working copies go. */
export async function startBuilt(
  given: readonly string[],
  dataHome: string,
): Promise<BuiltWorkbench> {
  const script = builtFile('dist/workbench/server.js');
  const child = spawn(process.execPath, [script, ...given, '--port', '0'], {
    env: { ...process.env, XDG_DATA_HOME: dataHome },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const greeting = await firstLine(child);
  const address = /http:\/\/\S+/.exec(greeting)?.[0];
  if (address === undefined) throw new Error(`The server said no address: ${greeting}`);
  return {
    greeting,
    address,
    async close() {
      child.kill();
      if (child.exitCode === null) await once(child, 'exit');
    },
  };
}

function firstLine({ stdout, stderr }: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    stdout?.once('data', (text: Buffer) => {
      resolve(text.toString().trim());
    });
    stderr?.once('data', (text: Buffer) => {
      reject(new Error(text.toString()));
    });
  });
}
