import type { Book, Item } from '../book/book.ts';
import { count } from '../kernel/count.ts';
import type { Day } from '../kernel/day.ts';
import { Exact } from '../kernel/exact.ts';
import { onHand } from '../stock/on-hand.ts';

/** So much of an item, in its unit. */
export interface Needed {
  readonly item: Item;
  readonly quantity: Exact;
}

/** What stock is short of, as a sentence. */
export function shortOf(
  book: Book,
  needs: readonly Needed[],
  { day, latest }: { readonly day: Day; readonly latest: Day },
): string | undefined {
  for (const { item, quantity } of needs) {
    // Both then and now, so that neither that day's nor today's shelf falls below zero.
    const stock = Exact.min(onHand(book, item, day), onHand(book, item, latest));
    if (quantity.lte(stock)) continue;
    const are = quantity.eq(1) ? 'is' : 'are';
    return item.kind === 'material'
      ? `${quantity.toString()} of ${item.name} ${are} more than the ${stock.toString()} in stock. Enter the purchase first, or mend the count.`
      : `${count(quantity, 'bar')} of ${item.name} ${are} more than the ${stock.toString()} in stock. Record the pour first, or mend the count.`;
  }
  return undefined;
}
