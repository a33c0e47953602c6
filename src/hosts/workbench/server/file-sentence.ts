import { basename } from 'node:path';

/** A file that we will not read or write, with its sentence for the maker. */
export class FileRefused extends Error {
  override readonly name = 'FileRefused';
}

/** What went wrong with a file, for the maker. */
export function fileSentence(error: unknown, path: string): string {
  if (error instanceof FileRefused) return error.message;
  const name = basename(path);
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  switch (code) {
    case 'ENOENT':
      return `The file "${name}" is not there. Was it moved or renamed?`;
    case 'ELOOP':
      return `"${name}" is now a link to another file. Open the file that it leads to.`;
    case 'EACCES':
    case 'EPERM':
    case 'EBUSY':
    case 'EROFS':
      return `The file "${name}" could not be written. If it is open in another program, close it there and save again.`;
    case 'ENOSPC':
    case 'EDQUOT':
      return `The disk is full, so "${name}" was not saved. It is as it was; free some space and save again.`;
    default:
      return `"${name}" could not be read or saved (${error instanceof Error ? error.message : String(error)}). It is as it was.`;
  }
}
