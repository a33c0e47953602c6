import { newToken } from '../../in-browser.ts';
import { inBookWorker } from './in-book-worker.ts';
import type { FileHandle, KeptBook } from './kept-book.ts';
import type { KeptBooks } from './kept-books.ts';
import { storageSentence } from './storage-sentence.ts';

/** A workbook that somebody chose. */
export interface Chosen {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** The file that it came from, where the browser can save back into it. */
  readonly handle?: FileHandle;
}

export type Added =
  | { readonly kind: 'added'; readonly id: string }
  | { readonly kind: 'refused'; readonly sentence: string };

/** Keeps a chosen workbook beside the others once it is known to be one; resolves with its id, or why not. */
export async function addBook(books: KeptBooks, chosen: Chosen, now: number): Promise<Added> {
  const opened = await inBookWorker({ kind: 'open', name: chosen.name, bytes: chosen.bytes });
  if (opened.kind === 'refused') return opened;
  const { version } = opened;
  const { name, bytes, handle } = chosen;
  const file = handle && { handle, version, at: now };
  const id = newToken();
  try {
    await books.add({ id, name, bytes, version, keptAt: now, ...(file ? { file } : {}) });
  } catch (error) {
    return { kind: 'refused', sentence: storageSentence(error) };
  }
  // A wish: a browser that refuses it may clear what it keeps, which the page says.
  await navigator.storage.persist().catch(() => false);
  return { kind: 'added', id };
}

/** The kept workbook that is saved back into this very file. */
export async function bookOfFile(
  books: KeptBooks,
  handle: FileHandle,
): Promise<KeptBook | undefined> {
  for (const book of await books.list()) {
    if (await book.file?.handle.isSameEntry(handle)) return book;
  }
  return undefined;
}
