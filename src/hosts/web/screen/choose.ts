import { today } from '../../../../functions/clock.ts';
import { download } from '../../workbench/page/download.ts';
import { element, timeInWords } from '../../workbench/page/elements.ts';
import { workerAnswer } from '../../worker-answer.ts';
import { addBook, bookOfFile, type Chosen } from '../kept/add-book.ts';
import type { FileHandle, KeptBook } from '../kept/kept-book.ts';
import type { KeptBooks } from '../kept/kept-books.ts';
import type { FreshBook } from '../starter-work.ts';
import { button, made } from './elements.ts';

declare global {
  interface Window {
    /** Not in every browser, and not among TypeScript's own types. */
    showOpenFilePicker?(): Promise<readonly FileHandle[]>;
  }
}

/** Asks which workbook to open: one that is kept, one from the device, or a fresh one. */
export async function chooseWorkbook(books: KeptBooks): Promise<void> {
  element('file-name').textContent = 'Pour Ledger';
  // Nothing to act on is open yet.
  for (const id of ['opening', 'undo', 'redo', 'pane-toggle']) element(id).hidden = true;
  const news = made('p');
  news.setAttribute('role', 'status');
  const list = made('ul');
  const fill = async () => {
    list.replaceChildren(...(await books.list()).map((book) => entry(books, book, fill)));
  };
  const open = async (choose: () => Promise<Chosen | undefined>) => {
    news.textContent = 'Reading the workbook';
    const chosen = await choose().catch((error: unknown) => sentenceOf(error));
    if (typeof chosen === 'string') news.textContent = chosen;
    else if (chosen === undefined) news.textContent = '';
    else news.textContent = await openChosen(books, chosen);
  };
  const choices = made(
    'p',
    button('Open a workbook from this device', () => open(chosenFile)),
    button('Begin with an empty workbook', () => open(() => fresh({ kind: 'empty' }))),
    button('Look at the demo', () => open(() => fresh({ kind: 'demo', today: today() }))),
  );
  const place = made(
    'section',
    made('h2', 'Which workbook?'),
    list,
    choices,
    news,
    made('p', STAYS),
  );
  place.className = 'choose';
  await fill();
  element('workbench').replaceChildren(place);
}

const STAYS =
  'Workbooks stay on this device: this page sends nothing anywhere. Download them now and then, and keep a copy elsewhere.';

/** Opens it; the answer is "" or why not. */
async function openChosen(books: KeptBooks, chosen: Chosen): Promise<string> {
  const known = chosen.handle && (await bookOfFile(books, chosen.handle));
  const added = known
    ? { kind: 'added' as const, id: known.id }
    : await addBook(books, chosen, Date.now());
  if (added.kind === 'refused') return added.sentence;
  location.hash = added.id;
  return '';
}

function entry(books: KeptBooks, book: KeptBook, fill: () => Promise<void>): HTMLLIElement {
  const ask = made('span');
  const remove = button('Remove', () => {
    const really = button(`Yes, remove ${book.name} from this browser`, async () => {
      await books.remove(book.id);
      await fill();
    });
    ask.replaceChildren(
      really,
      button('Keep it', () => ask.replaceChildren(remove)),
    );
    really.focus();
  });
  ask.append(remove);
  const open = button(`Open ${book.name}`, () => {
    location.hash = book.id;
  });
  const get = button('Download', async () => {
    await download(book.bytes, book.name);
  });
  return made('li', open, made('span', keptWords(book)), get, ask);
}

function keptWords({ keptAt, file, version }: KeptBook): string {
  const kept = `kept in this browser, ${timeInWords(keptAt)}`;
  if (file === undefined) return kept;
  return file.version === version
    ? `${kept}, and in its file, ${timeInWords(file.at)}`
    : `${kept}; its file has what it had ${timeInWords(file.at)}`;
}

/** What the maker picks; undefined where they think better of it. */
async function chosenFile(): Promise<Chosen | undefined> {
  if (window.showOpenFilePicker === undefined) return fileByInput();
  const [handle] = await window.showOpenFilePicker().catch((error: unknown) => {
    if (error instanceof Error && error.name === 'AbortError') return [];
    throw error;
  });
  return handle && { ...(await chosenOf(await handle.getFile())), handle };
}

function fileByInput(): Promise<Chosen | undefined> {
  const input = made('input');
  input.type = 'file';
  input.accept = '.xlsx';
  return new Promise((resolve, reject) => {
    input.addEventListener('change', () => {
      const [file] = input.files ?? [];
      if (file === undefined) resolve(undefined);
      else chosenOf(file).then(resolve, reject);
    });
    input.addEventListener('cancel', () => {
      resolve(undefined);
    });
    input.click();
  });
}

const chosenOf = async (file: File): Promise<Chosen> => ({
  name: file.name,
  bytes: new Uint8Array(await file.arrayBuffer()),
});

async function fresh(wanted: FreshBook): Promise<Chosen> {
  const bytes = await workerAnswer<Uint8Array>(
    () =>
      new Worker(/* webpackChunkName: "starter" */ new URL('../starter-work.ts', import.meta.url)),
    wanted,
  );
  if (bytes === undefined) throw new Error('The workbook could not be made. Try again.');
  return { name: wanted.kind === 'demo' ? 'demo.xlsx' : 'pour-ledger.xlsx', bytes };
}

const sentenceOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
