import type { Item, Lot, Move } from '../book/book.ts';
import { type Exact, exact } from '../kernel/exact.ts';

/** What one stock unit of a lot cost, carriage and duty included (IAS 2 ¶10): (Paid + Freight) ÷ Quantity. */
export function landedUnitCost(lot: Lot): Exact {
  return landedCost(lot).div(exact(lot.quantity));
}

export function landedCost(lot: Lot): Exact {
  return exact(lot.paid).plus(exact(lot.freight));
}

/** What a unit was worth by the Value of the move that put it in. */
export const ownPrice = ({ value = 0, quantity }: Move): Exact =>
  exact(value).abs().div(exact(quantity));

/** Pack price ÷ Pack size, where both are filled in. */
export function packUnitCost(item: Item): Exact | undefined {
  if (item.kind !== 'material') return undefined;
  const { packPrice, packSize } = item.material;
  return packPrice === undefined || packSize === undefined ? undefined : packPrice.div(packSize);
}
