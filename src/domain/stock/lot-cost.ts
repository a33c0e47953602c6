import type { Item, Lot } from '../book/book.ts';
import { type Exact, exact } from '../kernel/exact.ts';

/** What one stock unit of a lot cost, carriage and duty included (IAS 2 ¶10): (Paid + Freight) ÷ Quantity. */
export function landedUnitCost(lot: Lot): Exact {
  return landedCost(lot).div(exact(lot.quantity));
}

export function landedCost(lot: Lot): Exact {
  return exact(lot.paid).plus(exact(lot.freight));
}

/** Pack price ÷ Pack size, where both are filled in. */
export function packUnitCost(item: Item): Exact | undefined {
  if (item.kind !== 'material') return undefined;
  const { packPrice, packSize } = item.material;
  return packPrice === undefined || packSize === undefined ? undefined : packPrice.div(packSize);
}
