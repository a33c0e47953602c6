import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { Tally } from '../kernel/tally.ts';
import { type ItemHistory, oncePerContent } from './item-history.ts';

/** What all lots and moves of an item come to, whenever they were. */
interface ItemSums {
  /** In the item's stock unit. */
  readonly onHand: Exact;
  /** The whole day on which something last happened; -Infinity where nothing ever did. */
  readonly lastDay: Day;
  /** Whether any move takes another back. */
  readonly hasReversals: boolean;
}

export const itemSums = oncePerContent(({ lots, rows, ledger }: ItemHistory): ItemSums => {
  const { whens, quantities, reasons } = ledger.columns;
  const tally = new Tally();
  const reversed = reasons.values.map((reason) => reason === 'reversed');
  let lastMove = -Infinity;
  let hasReversals = false;
  for (const row of rows) {
    tally.add(quantities[row] as number);
    lastMove = Math.max(lastMove, whens[row] as Day);
    hasReversals ||= reversed[reasons.places[row] as number] as boolean;
  }
  for (const lot of lots) tally.add(lot.quantity);
  return {
    onHand: tally.total(),
    lastDay: Math.floor(Math.max(lastMove, lots.at(-1)?.received ?? -Infinity)),
    hasReversals,
  };
});

/** What lots and moves come to by the end of a day. */
export function quantityOn(history: ItemHistory, asOf: Day): Exact {
  const sums = itemSums(history);
  if (Math.floor(asOf) >= sums.lastDay) return sums.onHand;
  const { lots, rows, ledger } = history;
  const { whens, quantities } = ledger.columns;
  const until = Math.floor(asOf) + 1;
  const tally = new Tally();
  for (const row of rows) if ((whens[row] as Day) < until) tally.add(quantities[row] as number);
  for (const lot of lots) if (lot.received < until) tally.add(lot.quantity);
  return tally.total();
}
