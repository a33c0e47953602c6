import { mkdir, realpath, rename, writeFile } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { basename, join } from 'node:path';
import { backupFolder } from './backups.ts';
import { moveLedgerPlace } from './ledger-place.ts';

/**
 * The maker's own copy of the starter workbook in `folder`, made on first use and kept from then on.
 * `starter` is asked for its bytes only then, since they are of the day. `fresh` begins a new one; the
 * old one stays beside it under another name, since it may be a ledger.
 */
export async function workingCopy(
  starter: () => Uint8Array,
  folder: string,
  fresh: boolean,
): Promise<string> {
  await mkdir(folder, { recursive: true, mode: 0o700 });
  const copy = join(folder, 'pour-ledger.xlsx');
  if (!fresh && existsSync(copy)) return copy;
  const bytes = starter();
  if (existsSync(copy)) await putAside(copy, folder);
  // Never over a standing copy, even if another run makes it at this moment. A ledger is its maker's alone.
  await writeFile(copy, bytes, { flag: 'wx', mode: 0o600 });
  return copy;
}

/** Where working copies live: the system's data folder where it names one, else the home folder. */
export function workingFolder(dataHome: string | undefined, home: string): string {
  return dataHome ? join(dataHome, 'pour-ledger') : join(home, '.pour-ledger');
}

/** What was begun over the old copy goes with it: none of it is of the new one. */
async function putAside(copy: string, folder: string): Promise<void> {
  const aside = freeName(folder);
  const real = await realpath(copy);
  const inside = await realpath(folder);
  // A link is put aside alone: the file that it leads to stays where it is.
  if (real === join(inside, basename(copy))) {
    await moveLedgerPlace(folder, real, join(inside, basename(aside)));
    const backups = backupFolder(copy);
    if (existsSync(backups)) await rename(backups, backupFolder(aside));
  }
  await rename(copy, aside);
}

function freeName(folder: string): string {
  let number = 1;
  const name = () => join(folder, `pour-ledger.old-${number}.xlsx`);
  while (existsSync(name()) || existsSync(backupFolder(name()))) number += 1;
  return name();
}
