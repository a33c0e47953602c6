import { spawn, type ChildProcess } from 'node:child_process';
import { existsSync } from 'node:fs';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));

/** The starter workbook with the demo, as the build writes it. */
export const demoFile = `${dist}pour-ledger.xlsx`;

/** The same sheets without the demo. */
export const emptyFile = `${dist}pour-ledger-empty.xlsx`;

/** The workbench as a maker runs it: the built server in a process of its own. */
export interface BuiltWorkbench {
  /** What it said when it was up. */
  readonly greeting: string;
  readonly address: string;
  close(): Promise<void>;
}

/** Starts the built server with these arguments; `dataHome` is where working copies go. */
export async function startBuilt(
  given: readonly string[],
  dataHome: string,
): Promise<BuiltWorkbench> {
  const script = `${dist}workbench/server.js`;
  if (!existsSync(script) || !existsSync(demoFile)) {
    throw new Error('dist/ is missing: run `npm run build` first.');
  }
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
