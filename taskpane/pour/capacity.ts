import type { Book, Design } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { canMake } from '../../src/domain/recipe/can-make.ts';

const known = new WeakMap<Book, Map<string, number | undefined>>();

/** Whole good bars that stock allows, or undefined where it is no limit; worked out once for a book. */
export function barsAllowed(book: Book, design: Design, today: Day): number | undefined {
  const ofBook = known.get(book) ?? new Map<string, number | undefined>();
  known.set(book, ofBook);
  const key = `${String(today)} ${design.name}`;
  if (!ofBook.has(key)) {
    const bars = canMake(book, design, today);
    ofBook.set(key, bars.ok ? bars.value : undefined);
  }
  return ofBook.get(key);
}
