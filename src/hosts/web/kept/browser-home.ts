import type { SaveRequest, WorkbookImage } from '../../../xlsx/image.ts';
import type { FileNews } from '../../workbench/protocol.ts';
import { createBookReader } from '../../workbench/book-lines.ts';
import type { Connection } from '../../workbench/page/connection.ts';
import { type FileHome, FileLost, helpBesidePage } from '../../workbench/page/file-home.ts';
import type { Talk } from '../tabs/talk.ts';
import { inBookWorker } from './in-book-worker.ts';
import type { KeptBooks } from './kept-books.ts';
import { saveBook, takeLastWords } from './save-book.ts';
import { REMOVED, storageSentence } from './storage-sentence.ts';

/** What a home in the browser works with. */
export interface HomeParts {
  readonly books: KeptBooks;
  readonly id: string;
  readonly talk: Talk;
  /** Why this tab may only look, and a way to hear when that changes. */
  readonly readsOnly: () => string | undefined;
  readonly onReadsOnly: (listener: () => void) => void;
  readonly now: () => number;
  /** Called after each save, and once at the opening. */
  readonly kept: () => void;
  /** Says a sentence in a place of its own. */
  readonly say: (sentence: string) => void;
  readonly opened: NonNullable<FileHome['opened']>;
}

/** A workbook that this browser keeps. */
export function createBrowserHome(parts: HomeParts): FileHome {
  const { books, id, talk, now, readsOnly } = parts;
  // Where there is no room for them, the save that follows says so.
  const keepWords = (request: SaveRequest) => {
    if (readsOnly() === undefined) void books.keepLastWords(id, request).catch(() => undefined);
  };
  return {
    connection: connectionOf(parts),
    get readsOnly() {
      return readsOnly();
    },
    book: (told) => readBook(parts, told),
    functionHelp: helpBesidePage,
    texts: () => books.texts(id),
    async keepTexts(texts) {
      const sentence = readsOnly();
      if (sentence !== undefined) return { kind: 'refused', sentence };
      try {
        await books.keepTexts(id, texts);
        return { kind: 'kept' };
      } catch (error) {
        return { kind: 'refused', sentence: storageSentence(error) };
      }
    },
    async look(): Promise<FileNews> {
      const book = await books.get(id);
      return book ? { kind: 'stands', version: book.version } : LOST;
    },
    async save(request) {
      const sentence = readsOnly();
      if (sentence !== undefined) return { kind: 'refused', sentence };
      const answer = await saveBook(books, id, request, now());
      if (answer.kind === 'saved') {
        talk.tell({ kind: 'stands', book: id, version: answer.version });
        parts.kept();
      }
      return answer;
    },
    note: keepWords,
    // Begun before the page goes, the browser ends it.
    sendLast: keepWords,
    opened: parts.opened,
  };
}

async function readBook(
  { books, id, now, readsOnly, kept, say }: HomeParts,
  told: (share: number) => Promise<void>,
): Promise<WorkbookImage> {
  const why = readsOnly() === undefined ? await takeLastWords(books, id, now()) : undefined;
  if (why !== undefined) say(`What was typed last is kept, but not in the workbook yet. ${why}`);
  const book = await books.get(id);
  if (book === undefined) throw new FileLost(LOST);
  const opened = await inBookWorker({ kind: 'open', name: book.name, bytes: book.bytes });
  if (opened.kind === 'refused') throw new FileLost({ ...opened, kind: 'lost' });
  const reader = createBookReader();
  for (const line of opened.lines) {
    reader.take(line);
    await told(reader.share);
  }
  kept();
  return reader.finish();
}

const LOST = { kind: 'lost', sentence: REMOVED } as const;

/** The browser's own storage always answers; news come from the other tabs. */
function connectionOf({ talk, id, onReadsOnly }: HomeParts): Connection {
  return {
    isOpen: true,
    onChange: onReadsOnly,
    onNews(listener) {
      talk.onNews(id, (news) => {
        if (news.kind === 'stands') listener({ kind: 'stands', version: news.version });
      });
    },
    onBackups: () => undefined,
    end: () => undefined,
    opened: () => Promise.resolve(),
  };
}
