import type { TextsToKeep } from '../../workbench/protocol.ts';
import type { Database } from './database.ts';
import type { KeptBook, LastWords } from './kept-book.ts';

/** The workbooks that this browser keeps. What resolves is on the device; what rejects changed nothing. */
export interface KeptBooks {
  /** All of them, the one kept last first. */
  list(): Promise<readonly KeptBook[]>;
  get(id: string): Promise<KeptBook | undefined>;
  add(book: KeptBook): Promise<void>;
  /**
   * Puts what `next` makes of the book as it stands, in one step with the look at it; undefined leaves it.
   * Resolves with what stands then.
   */
  change(id: string, next: (book: KeptBook) => KeptBook | undefined): Promise<KeptBook | undefined>;
  remove(id: string): Promise<void>;
  texts(id: string): Promise<Readonly<Record<string, string>>>;
  keepTexts(id: string, texts: TextsToKeep): Promise<void>;
  /** Keeps what a page has not saved yet, in case it ends before. The next save of that book drops it. */
  keepLastWords(id: string, words: LastWords): Promise<void>;
  lastWords(id: string): Promise<LastWords | undefined>;
}

type Texts = Readonly<Record<string, string>>;

export const keptBooks = (database: Database): KeptBooks => ({
  async list() {
    const all = await database.run('readonly', ({ all }) => all<KeptBook>('books'));
    return [...all].sort((a, b) => b.keptAt - a.keptAt);
  },
  get: (id) => database.run('readonly', ({ get }) => get<KeptBook>('books', id)),
  add: (book) =>
    database.run('readwrite', ({ put }) => {
      put('books', book.id, book);
      return Promise.resolve();
    }),
  change: (id, next) =>
    database.run('readwrite', async (stores) => {
      const book = await stores.get<KeptBook>('books', id);
      const changed = book && next(book);
      if (changed === undefined) return book;
      stores.put('books', id, changed);
      if (changed.version === book?.version) return changed;
      // Words that came while this save was under way go on top of it.
      const words = await stores.get<LastWords>('last words', id);
      if (words?.after === undefined || words.after !== changed.save) {
        stores.delete('last words', id);
      }
      return changed;
    }),
  remove: (id) =>
    database.run('readwrite', (stores) => {
      for (const store of ['books', 'texts', 'last words'] as const) stores.delete(store, id);
      return Promise.resolve();
    }),
  texts: (id) => database.run('readonly', async ({ get }) => (await get<Texts>('texts', id)) ?? {}),
  keepTexts: (id, texts) =>
    database.run('readwrite', async ({ get, put }) => {
      const kept = { ...(await get<Texts>('texts', id)), ...texts };
      const standing = Object.entries(kept).filter(([, text]) => text !== null);
      put('texts', id, Object.fromEntries(standing));
    }),
  keepLastWords: (id, words) =>
    database.run('readwrite', ({ put }) => {
      put('last words', id, words);
      return Promise.resolve();
    }),
  lastWords: (id) => database.run('readonly', ({ get }) => get<LastWords>('last words', id)),
});
