import type { Book } from '../../../src/domain/book/book.ts';
import { trace } from '../../../src/domain/trace/trace.ts';
import { sound } from '../label/label-book.ts';

export const linesOf = (book: Book, name: string) => sound(trace(book, name));
export const batchesOf = (book: Book, lot: string) =>
  [...new Set(linesOf(book, lot).map(({ batch }) => batch))].sort();
export const lotsOf = (book: Book, batch: string, lots: readonly string[]) =>
  [...new Set(linesOf(book, batch).map(({ lot }) => lot))]
    .filter((lot) => lots.includes(lot))
    .sort();
