import { randomBytes } from 'node:crypto';
import { mkdir, open, readFile, rename, rm } from 'node:fs/promises';
import { dirname } from 'node:path';

/** Only the maker's own account may look into what we keep. */
const OWN_FOLDER = 0o700;
const OWN_FILE = 0o600;

/** Writes a text whole or not at all into a file of ours; resolves once it is on the disk. */
export async function writeOwn(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true, mode: OWN_FOLDER });
  // A name that nobody can have put there before, and refused if somebody has.
  const fresh = `${path}.${randomBytes(8).toString('hex')}`;
  try {
    const file = await open(fresh, 'wx', OWN_FILE);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(fresh, path);
  } catch (error) {
    await rm(fresh, { force: true });
    throw error;
  }
}

/** The JSON in a file of ours; undefined where there is none, or none that can be read. */
export async function readOwn(path: string): Promise<unknown> {
  try {
    return JSON.parse(await readFile(path, 'utf8')) as unknown;
  } catch {
    return undefined;
  }
}
