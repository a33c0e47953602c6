import { open, readFile, rename, rm, stat } from 'node:fs/promises';

/** A file being written. */
export interface OpenFile {
  write(bytes: Uint8Array): Promise<void>;
  /** Resolves once the bytes are on the disk, not only in memory. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

/** The single steps that saving takes; tests make each of them fail. */
export interface FileSteps {
  read(path: string): Promise<Uint8Array>;
  /** The permission bits of a file. */
  mode(path: string): Promise<number>;
  /** Makes a new file, or empties a standing one. */
  create(path: string, mode: number): Promise<OpenFile>;
  rename(from: string, to: string): Promise<void>;
  remove(path: string): Promise<void>;
  /** Makes a rename in this folder last through a power cut, where the system can. */
  syncFolder(folder: string): Promise<void>;
}

export const nodeFileSteps: FileSteps = {
  read: (path) => readFile(path),
  mode: async (path) => (await stat(path)).mode & 0o777,
  async create(path, mode) {
    const handle = await open(path, 'w', mode);
    return {
      write: (bytes) => handle.writeFile(bytes),
      sync: () => handle.sync(),
      close: () => handle.close(),
    };
  },
  rename: (from, to) => rename(from, to),
  remove: (path) => rm(path, { force: true }),
  async syncFolder(folder) {
    const handle = await open(folder, 'r');
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  },
};
