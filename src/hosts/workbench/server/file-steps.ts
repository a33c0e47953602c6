import { constants, lstatSync, renameSync, type BigIntStats } from 'node:fs';
import {
  access,
  copyFile,
  link,
  lstat,
  mkdir,
  open,
  readdir,
  rm,
  stat,
  type FileHandle,
} from 'node:fs/promises';
import { basename } from 'node:path';
import { takeAttributes } from './attributes.ts';
import { exchangeNames } from './exchange.ts';
import { FileRefused } from './file-sentence.ts';

/** A file being written. */
export interface OpenFile {
  write(bytes: Uint8Array): Promise<void>;
  /** Resolves once the bytes are on the disk, not only in memory. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** What stands under a name, links not followed. */
export interface FileFacts {
  readonly kind: 'file' | 'link' | 'other';
  /** Permission bits. */
  readonly mode: number;
  readonly owner: number;
  readonly group: number;
  /** How many names it has; more than one are hard links. */
  readonly names: number;
  readonly isWritable: boolean;
  readonly size: number;
  /** When its bytes were last written, in milliseconds since 1970. */
  readonly written: number;
  /** Another text once anything under this name has changed. */
  readonly mark: string;
}

/** The single steps that saving takes; tests make each of them fail. */
export interface FileSteps {
  /** Reads a plain file, not through a link; refuses pipes and the like, which would never end. */
  read(path: string): Promise<Uint8Array>;
  look(path: string): Promise<FileFacts>;
  /**
   * Makes a new file, never one over another or through a link, with the owner, group, permissions and
   * extended attributes of `like`.
   */
  create(path: string, like: string): Promise<OpenFile>;
  /** Lets two names change places in one step; false where the system can't. */
  exchange(one: string, other: string): Promise<boolean>;
  /** Renames over `to` in the same breath as looking whether its mark is still this; false when not. */
  renameOver(from: string, to: string, mark: string): Promise<boolean>;
  /** Gives a file another name, never over one that stands (then it throws EEXIST). */
  moveNew(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Makes a folder that only its owner sees; one that stands is left as it is. */
  makeFolder(path: string): Promise<void>;
  /** The names in a folder; none when it isn't there. */
  list(folder: string): Promise<readonly string[]>;
  /** Makes a rename in this folder last through a power cut, where the system can. */
  syncFolder(folder: string): Promise<void>;
}

export const nodeFileSteps: FileSteps = {
  read: readPlain,
  async look(path) {
    const facts = await lstat(path, { bigint: true });
    const mode = Number(facts.mode) & 0o777;
    return {
      kind: facts.isFile() ? 'file' : facts.isSymbolicLink() ? 'link' : 'other',
      mode,
      owner: Number(facts.uid),
      group: Number(facts.gid),
      names: Number(facts.nlink),
      // The administrator may write what no permission allows; the maker still meant it as it is marked.
      isWritable: (mode & 0o222) !== 0 && (await mayWrite(path)),
      size: Number(facts.size),
      written: Number(facts.mtimeMs),
      mark: markOf(facts),
    };
  },
  async create(path, like) {
    const handle = await open(path, 'wx', 0o600);
    try {
      await takeAttributes(handle, path, like);
    } catch (error) {
      await handle.close();
      await rm(path, { force: true });
      throw error;
    }
    return {
      write: (bytes) => handle.writeFile(bytes),
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  exchange: exchangeNames,
  renameOver(from, to, mark) {
    // One after the other without a pause: as near to one step as Node.js comes.
    const isSame = markOf(lstatSync(to, { bigint: true })) === mark;
    if (isSame) renameSync(from, to);
    return Promise.resolve(isSame);
  },
  async moveNew(from, to) {
    try {
      await link(from, to);
    } catch (error) {
      if (codeOf(error) === 'EEXIST') throw error;
      // A disk without hard links.
      await copyFile(from, to, constants.COPYFILE_EXCL);
    }
    await rm(from);
  },
  remove: (path) => rm(path, { force: true }),
  async makeFolder(path) {
    try {
      await mkdir(path, { mode: 0o700 });
    } catch (error) {
      if (codeOf(error) !== 'EEXIST' || !(await stat(path)).isDirectory()) throw error;
    }
  },
  async list(folder) {
    try {
      return await readdir(folder);
    } catch (error) {
      if (codeOf(error) === 'ENOENT') return [];
      throw error;
    }
  },
  async syncFolder(folder) {
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};

/** The system's short word for an error, such as "ENOENT"; "" for any other error. */
export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';

async function readPlain(path: string): Promise<Uint8Array> {
  // A pipe that nobody writes to would otherwise hold us at its opening.
  const { O_RDONLY, O_NONBLOCK = 0, O_NOFOLLOW = 0 } = constants as Partial<typeof constants>;
  const handle = await open(path, (O_RDONLY ?? 0) | O_NONBLOCK | O_NOFOLLOW);
  try {
    await refuseUnlessPlain(handle, path);
    return await handle.readFile();
  } finally {
    await handle.close();
  }
}

async function refuseUnlessPlain(handle: FileHandle, path: string): Promise<void> {
  if ((await handle.stat()).isFile()) return;
  throw new FileRefused(`"${basename(path)}" is no plain file, so it can't hold a workbook.`);
}

const markOf = ({ dev, ino, size, mtimeNs, ctimeNs }: BigIntStats): string =>
  [dev, ino, size, mtimeNs, ctimeNs].join();

const mayWrite = (path: string): Promise<boolean> =>
  access(path, constants.W_OK).then(
    () => true,
    () => false,
  );
