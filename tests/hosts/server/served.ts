import { mkdirSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { startWorkbench } from '../../../src/hosts/workbench/server/start.ts';
import { ask, bookFile, testFolder, type Answer } from './support.ts';

export const JSON_TYPE = { 'Content-Type': 'application/json' };

/** Asks a server to save. */
export const save = (
  address: string,
  root: string,
  body: string,
  headers: Record<string, string> = JSON_TYPE,
): Promise<Answer> => ask(address, `${root}api/save`, { method: 'POST', headers, body });

/** A little workbook, served over a little page. */
export async function workbench() {
  const { path, folder } = bookFile();
  const data = join(folder, 'data');
  const page = join(testFolder(), 'page');
  mkdirSync(page);
  writeFileSync(join(page, 'index.html'), '<!doctype html><title>Pour Ledger</title>');
  writeFileSync(join(page, 'start.js'), '"use strict";');
  writeFileSync(join(page, '..', 'secret.txt'), 'secret');
  symlinkSync(join(page, '..', 'secret.txt'), join(page, 'link.txt'));
  const started = await startWorkbench(path, page, data, 0);
  if ('kind' in started) throw new Error(started.sentence);
  onTestFinished(() => started.close());
  const { pathname: root, host, port } = new URL(started.address);
  const { address, close } = started;
  return { path, root, host, port: Number(port), address, pageRoot: page, data, close };
}

/** The same workbook served again, as after the server ended. */
export async function again({ path, pageRoot, data }: Awaited<ReturnType<typeof workbench>>) {
  const started = await startWorkbench(path, pageRoot, data);
  if ('kind' in started) throw new Error(started.sentence);
  onTestFinished(() => started.close());
  return started;
}
