import { download } from '../../workbench/page/download.ts';
import { element } from '../../workbench/page/elements.ts';
import type { Saver } from '../../workbench/page/saver.ts';
import { addBook } from '../kept/add-book.ts';
import { inBookWorker } from '../kept/in-book-worker.ts';
import type { KeptBooks } from '../kept/kept-books.ts';
import { type FileStanding, lastStanding, saveIntoFile } from '../kept/linked-file.ts';
import { REMOVED, storageSentence } from '../kept/storage-sentence.ts';
import { button, createNotice, made } from './elements.ts';
import { standingWords } from './standing-words.ts';

/** The line that always says where the open workbook is kept and how old each copy is. */
export interface StandingLine {
  /** Says it anew, and brings the file on the device in step where this tab may. */
  update(): void;
  /** From now on a download holds what is not saved yet, too. */
  follow(saver: Saver): void;
}

/** Puts the line into the page's header. `mayWrite` tells whether this tab may write into the file. */
export function createStandingLine(
  books: KeptBooks,
  id: string,
  mayWrite: () => boolean,
  now: () => number,
): StandingLine {
  let saver: Saver | undefined;
  const line = made('p');
  line.id = 'kept-where';
  const notice = createNotice();
  const intoFile = button('Save into the file', () => inTurn(true));
  const handOver = button('Download', async () => {
    const why = await handOverBook(books, id, saver, now());
    if (why === undefined) await say();
    else notice(why);
  });
  element('save-again').after(line, intoFile, handOver);
  let last: FileStanding | undefined;
  const say = async () => {
    const book = await books.get(id);
    if (book === undefined) return;
    const standing = last ?? lastStanding(book);
    line.textContent = standingWords(book, standing, await navigator.storage.persisted());
    intoFile.hidden = !(mayWrite() && ['not allowed', 'failed'].includes(standing.kind));
    if (standing.kind !== 'changed') notice('');
    else notice(changedWords(book.name), goOverButton(books, id));
  };
  let queue = Promise.resolve();
  const inTurn = (ask: boolean): Promise<void> => {
    const write = async () => {
      last = mayWrite() ? await saveIntoFile(books, id, ask, now()) : undefined;
      await say();
    };
    queue = queue.then(write).catch((error: unknown) => {
      line.textContent = storageSentence(error);
    });
    return queue;
  };
  return {
    update: () => void inTurn(false),
    follow(next) {
      saver = next;
    },
  };
}

const changedWords = (name: string): string =>
  `Another program changed ${name} since this page read or wrote it, so nothing is written over it. ` +
  'What you have here stays kept in this browser: you can download it, or open what the file holds beside it.';

const goOverButton = (books: KeptBooks, id: string): HTMLButtonElement =>
  button('Open what the file holds', () => goOver(books, id));

/** Hands the workbook over with every cell that the page shows, saved or not; the sentence says why it could not. */
async function handOverBook(
  books: KeptBooks,
  id: string,
  saver: Saver | undefined,
  now: number,
): Promise<string | undefined> {
  const book = await books.get(id);
  if (book === undefined) return REMOVED;
  const { name, bytes, version } = book;
  const edits = saver?.unsaved() ?? [];
  const made =
    edits.length === 0
      ? { kind: 'saved', bytes, version }
      : await inBookWorker({ kind: 'save', name, bytes, edits });
  if (!('bytes' in made)) return made.sentence;
  await download(made.bytes, name);
  // Without room this can't be noted; the file is with the maker all the same.
  await books
    .change(id, (standing) => ({ ...standing, handedOver: { version: made.version, at: now } }))
    .catch(() => undefined);
  return undefined;
}

/** The file's own state becomes a workbook beside this one, which keeps its state and leaves the file. */
async function goOver(books: KeptBooks, id: string): Promise<void> {
  const book = await books.get(id);
  const handle = book?.file?.handle;
  if (book === undefined || handle === undefined) return;
  const bytes = new Uint8Array(await (await handle.getFile()).arrayBuffer());
  const added = await addBook(books, { name: book.name, bytes, handle }, Date.now());
  if (added.kind === 'refused') {
    createNotice()(added.sentence);
    return;
  }
  await books.change(id, (standing) => ({ ...standing, file: undefined }));
  location.hash = added.id;
}
