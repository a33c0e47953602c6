import { versionOf } from '../../../xlsx/version.ts';
import type { KeptBook, LinkedFile } from './kept-book.ts';
import type { KeptBooks } from './kept-books.ts';

/** How the file on the device stands against the book that is kept. */
export type FileStanding =
  | { readonly kind: 'no file' }
  | { readonly kind: 'in step'; readonly at: number }
  /** It has an older state, which another tab may be about to bring in step. */
  | { readonly kind: 'behind'; readonly at: number }
  /** The browser wants to be asked again, by a press, whether the page may write there. */
  | { readonly kind: 'not allowed'; readonly at: number }
  /** Another program has changed it: nothing is written over that. */
  | { readonly kind: 'changed'; readonly at: number }
  | { readonly kind: 'failed'; readonly at: number; readonly why: string };

/** How the file was left, without a look at it. */
export function lastStanding({ file, version }: KeptBook): FileStanding {
  if (file === undefined) return { kind: 'no file' };
  return { kind: file.version === version ? 'in step' : 'behind', at: file.at };
}

/**
 * Writes the newest state of a book into its file, unless another program has changed that. With `ask`, which takes a
 * press of the maker's, the browser asks whether it may.
 */
export async function saveIntoFile(
  books: KeptBooks,
  id: string,
  ask: boolean,
  now: number,
): Promise<FileStanding> {
  const book = await books.get(id);
  if (book?.file === undefined) return { kind: 'no file' };
  const { file } = book;
  try {
    if (!(await isAllowed(file, ask))) return { kind: 'not allowed', at: file.at };
    const found = await versionIn(file);
    if (found === book.version) return await note(books, book, now);
    if (found !== file.version && found !== file.intends) return { kind: 'changed', at: file.at };
    await books.change(id, (standing) => withFile(standing, { intends: book.version }));
    await write(file, book.bytes);
    if ((await versionIn(file)) !== book.version) return { kind: 'changed', at: file.at };
    return await note(books, book, now);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return { kind: 'failed', at: file.at, why };
  }
}

async function note(books: KeptBooks, book: KeptBook, now: number): Promise<FileStanding> {
  const { version } = book;
  const at = book.file?.version === version ? book.file.at : now;
  await books.change(book.id, (standing) => withFile(standing, { version, at }));
  return { kind: 'in step', at };
}

const withFile = (book: KeptBook, known: Partial<LinkedFile>): KeptBook =>
  book.file === undefined ? book : { ...book, file: { ...book.file, ...known } };

/** Where a browser knows of no such permissions, choosing the file was one. */
async function isAllowed({ handle }: LinkedFile, ask: boolean): Promise<boolean> {
  const wish = { mode: 'readwrite' } as const;
  const answer = ask
    ? await handle.requestPermission?.(wish)
    : await handle.queryPermission?.(wish);
  return (answer ?? 'granted') === 'granted';
}

const versionIn = async ({ handle }: LinkedFile): Promise<string> =>
  versionOf(new Uint8Array(await (await handle.getFile()).arrayBuffer()));

/** The browser writes beside the file and puts that in its place as it is closed: whole or not at all. */
async function write({ handle }: LinkedFile, bytes: Uint8Array): Promise<void> {
  const writable = await handle.createWritable();
  try {
    await writable.write(new Uint8Array(bytes));
  } catch (error) {
    await writable.abort().catch(() => undefined);
    throw error;
  }
  await writable.close();
}
