import { createHash, randomBytes } from 'node:crypto';
import { chmod, mkdir, rename } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { isRecord } from '../../../domain/kernel/is-record.ts';
import { readOwn, writeOwn } from './own-file.ts';

/** What is kept beside one workbook file on this machine, for as long as the file stands where it is. */
export interface LedgerPlace {
  /** The folder for what is kept: the maker's own account alone may look into it. */
  readonly folder: string;
  /**
   * The host name of its pages, such as "k3f….localhost", which browsers take for this machine. Nobody
   * can guess it, so no other program can have put anything of its own into the browser under it.
   */
  readonly host: string;
  /** What a request must know. */
  readonly secret: string;
  /** The port that served it last. */
  readonly port: number | undefined;
  /** Keeps the port that it is served at from now on, so that the address stays the same. */
  keepPort(port: number): Promise<void>;
  /**
   * Another program held its port while nobody served it, and may have heard name and secret from a page
   * that was still open, or left something in the browser under that name: both are made anew.
   */
  renew(): Promise<void>;
}

/** The place of the workbook at a real path, made when it is first opened. */
export async function ledgerPlace(dataFolder: string, path: string): Promise<LedgerPlace> {
  const folder = folderOf(dataFolder, path);
  await mkdir(folder, { recursive: true, mode: 0o700 });
  // A folder of ours that stood before, made by whatever rules.
  await chmod(dataFolder, 0o700);
  const file = join(folder, 'address.json');
  const known = await readOwn(file);
  let kept = isAddress(known) ? known : newAddress();
  const keep = async (next: Address) => {
    kept = next;
    await writeOwn(file, JSON.stringify(kept));
  };
  if (kept !== known) await keep(kept);
  return {
    folder,
    get host() {
      return `${kept.name}.localhost`;
    },
    get secret() {
      return kept.secret;
    },
    get port() {
      return kept.port;
    },
    keepPort: (port) => (port === kept.port ? Promise.resolve() : keep({ ...kept, port })),
    renew: () => keep(newAddress()),
  };
}

/** Has what is kept of a workbook follow it to another path; what is kept of that path stays as it is. */
export async function moveLedgerPlace(dataFolder: string, from: string, to: string): Promise<void> {
  const [old, next] = [folderOf(dataFolder, from), folderOf(dataFolder, to)];
  if (existsSync(old) && !existsSync(next)) await rename(old, next);
}

interface Address {
  /** Letters and digits. */
  readonly name: string;
  readonly secret: string;
  readonly port?: number;
}

const newAddress = (): Address => ({
  name: randomBytes(10).toString('hex'),
  secret: randomBytes(24).toString('base64url'),
});

const folderOf = (dataFolder: string, path: string): string =>
  join(dataFolder, 'ledgers', createHash('sha256').update(path).digest('hex').slice(0, 32));

/** Whether it is as we write it: a damaged one must never lead to a name or secret that can be guessed. */
function isAddress(value: unknown): value is Address {
  if (!isRecord(value)) return false;
  const { name, secret, port } = value;
  return (
    typeof name === 'string' &&
    /^[0-9a-f]{20}$/.test(name) &&
    typeof secret === 'string' &&
    /^[\w-]{32}$/.test(secret) &&
    (port === undefined || (Number.isInteger(port) && Number(port) > 0 && Number(port) <= 65_535))
  );
}
