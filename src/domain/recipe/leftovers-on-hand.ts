import type { Book } from '../book/book.ts';
import { findItem } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { notBelowZero, zero } from '../kernel/exact.ts';
import { onHand } from '../stock/on-hand.ts';
import { noLeftovers, type OnHandByName } from './melt.ts';

/** Leftover soap and spare pieces as the ledger has them, or none where they are not to be used. */
export function leftoversOnHand(book: Book, asOf: Day, use: boolean): OnHandByName {
  if (!use) return noLeftovers;
  return (itemName) => {
    const item = findItem(book, itemName);
    return item.ok ? notBelowZero(onHand(book, item.value, asOf)) : zero;
  };
}
