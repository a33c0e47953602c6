/** `node dist/workbench/server.js [path/to/book.xlsx] [--port N] [--fresh] [--backups] [--take N]` */
import { realpathSync } from 'node:fs';
import { realpath } from 'node:fs/promises';
import { homedir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { today } from '../../../../functions/clock.ts';
import { demoFile } from '../../../starter/file/starter-file.ts';
import { parseArguments } from './arguments.ts';
import { listEarlier, takeEarlier } from './earlier-states.ts';
import { nodeFileSteps } from './file-steps.ts';
import { startWorkbench } from './start.ts';
import { workingCopy, workingFolder } from './working-copy.ts';

async function main(): Promise<void> {
  const asked = parseArguments(process.argv.slice(2));
  if (asked.kind === 'refused') return fail(asked.sentence);
  // The bundle knows its place only by how it was started.
  const here = dirname(realpathSync(process.argv[1] ?? ''));
  const folder = workingFolder(process.env['XDG_DATA_HOME'], homedir());
  const file =
    asked.file ??
    (await workingCopy(() => demoFile(today()), folder, asked.kind === 'serve' && asked.fresh));
  if (asked.kind === 'backups') return tellOfBackups(file, asked.take);
  const started = await startWorkbench(file, join(here, 'page'), folder, asked.port);
  if ('kind' in started) return fail(started.sentence);
  console.log(`Pour Ledger shows ${file} at ${started.address}`);
  for (const signal of ['SIGINT', 'SIGTERM'] as const) {
    process.once(signal, () => {
      void started.close().then(() => process.exit(0));
    });
  }
}

async function tellOfBackups(file: string, take: number | undefined): Promise<void> {
  const path = await realpath(file).catch(() => resolve(file));
  const told =
    take === undefined
      ? await listEarlier(nodeFileSteps, path)
      : await takeEarlier(nodeFileSteps, path, take, Date.now());
  if (told.ok) console.log(told.sentence);
  else fail(told.sentence);
}

function fail(sentence: string): void {
  console.error(sentence);
  process.exitCode = 1;
}

main().catch((error: unknown) => {
  fail(`The workbench could not start: ${error instanceof Error ? error.message : String(error)}`);
});
