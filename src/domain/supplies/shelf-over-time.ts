import type { Book, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { addTo, type Exact, exact, least, sum, zero } from '../kernel/exact.ts';
import { shelfAt, stockAt } from '../stock/valuation.ts';
import type { Need } from './explode.ts';
import type { Bucket } from './gross-to-net.ts';

/** Stock with the days between which it can be used. */
interface DatedStock {
  /** -Infinity for what is there already. */
  readonly comes: Day;
  readonly bestBefore: Day;
  quantity: Exact;
}

export interface ShelfOverTime {
  /** On hand at the start, whatever its date; below zero where more was taken than there was. */
  readonly onHand: Exact;
  /** The same without what is past its best before on the day of the first need. */
  readonly stillGood: Exact;
  /** One for each day with a need. */
  readonly buckets: readonly (Bucket & { readonly day: Day })[];
}

/**
 * Needs of a material, none before `from`, day by day against its lots: each need takes what is best before soonest, lots
 * dated later than `from` are on their way, and what is past its best-before date on the day of the
 * need is lost to the plan. What the shelf owes is repaid
 * by what comes in before the first need; what is left of it is bought with that.
 */
export function shelfOverTime(
  book: Book,
  material: Material,
  needs: readonly Need[],
  from: Day,
): ShelfOverTime {
  const shelf = datedStock(book, material, from);
  let { owed } = shelfAt(book, itemOfMaterial(material), from);
  const days = byDay(needs);
  const onHand = heldIn(shelf, from, -Infinity).minus(owed);
  const stillGood = heldIn(shelf, from, days[0]?.day ?? from).minus(owed);
  let before = from;
  const buckets = days.map(({ day, quantity }) => {
    const receipts = sum(
      shelf.filter(({ comes }) => comes > before && comes <= day).map((stock) => stock.quantity),
    );
    for (const stock of shelf) {
      if (stock.comes <= day) owed = owed.minus(takeFrom(stock, owed));
    }
    owed = zero;
    const losses = sum(
      shelf
        .filter(({ comes, bestBefore }) => comes <= day && bestBefore < day)
        .map((stock) => takeFrom(stock, stock.quantity)),
    );
    let left = quantity;
    for (const stock of shelf) {
      if (stock.comes <= day) left = left.minus(takeFrom(stock, left));
    }
    before = day;
    return { day, gross: quantity, receipts, losses };
  });
  return { onHand, stillGood, buckets };
}

/** What has come by a day and is best before another or later. */
const heldIn = (shelf: readonly DatedStock[], by: Day, goodOn: Day): Exact =>
  sum(
    shelf
      .filter(({ comes, bestBefore }) => comes <= by && bestBefore >= goodOn)
      .map(({ quantity }) => quantity),
  );

function datedStock(book: Book, material: Material, from: Day): DatedStock[] {
  const layers = stockAt(book, itemOfMaterial(material), from).filled.map((layer) => ({
    comes: -Infinity,
    bestBefore: layer.bestBefore ?? Infinity,
    quantity: layer.quantity,
  }));
  const coming = book.lots
    .filter((lot) => lot.material === material && wholeDay(lot.received) > from)
    .map((lot) => ({
      comes: wholeDay(lot.received),
      bestBefore: lot.bestBefore ?? Infinity,
      quantity: exact(lot.quantity),
    }));
  return [...layers, ...coming].sort((a, b) => a.bestBefore - b.bestBefore || a.comes - b.comes);
}

function takeFrom(stock: DatedStock, wanted: Exact): Exact {
  const taken = least(stock.quantity, wanted);
  stock.quantity = stock.quantity.minus(taken);
  return taken;
}

function byDay(needs: readonly Need[]): Need[] {
  const days = new Map<Day, Exact>();
  for (const { day, quantity } of needs) addTo(days, day, quantity);
  return [...days].map(([day, quantity]) => ({ day, quantity })).sort((a, b) => a.day - b.day);
}
