import type { SaveAnswer, SaveRequest } from '../../../xlsx/image.ts';
import { inBookWorker } from './in-book-worker.ts';
import type { KeptBook } from './kept-book.ts';
import type { KeptBooks } from './kept-books.ts';
import { REMOVED, storageSentence } from './storage-sentence.ts';

/** Keeps a save before it is answered for; goes over no other state than the one that it was made on. */
export async function saveBook(
  books: KeptBooks,
  id: string,
  request: SaveRequest,
  now: number,
): Promise<SaveAnswer> {
  try {
    const book = await books.get(id);
    if (book === undefined) return { kind: 'refused', sentence: REMOVED };
    if (book.save === request.id) return { kind: 'saved', version: book.version };
    if (!isMadeOn(request, book)) return { kind: 'changed outside', version: book.version };
    const { name, bytes } = book;
    const made = await inBookWorker({ kind: 'save', name, bytes, edits: request.edits });
    if (made.kind === 'refused') return made;
    const next = { bytes: made.bytes, version: made.version, save: request.id, keptAt: now };
    const stands = await books.change(id, (standing) =>
      standing.version === book.version ? { ...standing, ...next } : undefined,
    );
    if (stands === undefined) return { kind: 'refused', sentence: REMOVED };
    const { version } = stands;
    return { kind: version === made.version ? 'saved' : 'changed outside', version };
  } catch (error) {
    return { kind: 'refused', sentence: storageSentence(error) };
  }
}

/** Whether the edits were made on what the book holds now. */
const isMadeOn = (
  { baseVersion, after }: Pick<SaveRequest, 'baseVersion' | 'after'>,
  { version, save }: KeptBook,
): boolean => version === baseVersion || (after !== undefined && after === save);

/** What a page that went away had left unsaved comes in now; the sentence says why it could not. */
export async function takeLastWords(
  books: KeptBooks,
  id: string,
  now: number,
): Promise<string | undefined> {
  const words = await books.lastWords(id);
  if (words === undefined) return undefined;
  const answer = await saveBook(books, id, words, now);
  return answer.kind === 'refused' ? answer.sentence : undefined;
}
