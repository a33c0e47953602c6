import type { Book, Lot } from '../../src/domain/book/book.ts';
import { exact } from '../../src/domain/kernel/exact.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { day, ledgerAmount } from '../format.ts';
import type { RecentEntry } from '../parts/recent-list.ts';
import { isListOfTexts } from '../task/kept.ts';

/** What undoing a delivery does, before it is done. */
export const UNDO_MEANS =
  'Its lines in Lots are cleared, and stock and costs are as if it never came. A copy of this workbook that still holds it brings it back when the two are merged.';

/** The lots to take back, as one text: their names alone say which belong together. */
export const targetOf = (lots: readonly Lot[]): string =>
  JSON.stringify(lots.map(({ lot }) => lot));

/** The names in a text by `targetOf`. */
export function lotsIn(target: string): readonly string[] {
  const names: unknown = JSON.parse(target);
  return isListOfTexts(names) ? names : [];
}

/** Lots by name, for a sentence. */
export const lotNames = (lots: readonly string[]): string => lots.join(', ');

/** The deliveries in Lots, newest first. */
export const recentDeliveries = (book: Book): RecentEntry[] =>
  deliveries(book).map((lots) => {
    const [first] = lots;
    const came = lots.map(
      ({ material, quantity }) =>
        `${material.name} ${ledgerAmount(exact(quantity), material.unit)}`,
    );
    return {
      id: lotNames(lots.map(({ lot }) => lot)),
      target: targetOf(lots),
      name: first === undefined || first.supplier === '' ? 'No supplier named' : first.supplier,
      details: [first === undefined ? '' : day(first.received), came.join(', ')].join(' · '),
      isUndone: false,
    };
  });

/**
 * Lots that came together: on one day from one supplier, those named after a delivery apart from those
 * of any other. Lots with a number of their own go with the one delivery of that day and supplier; where
 * there is none, and nobody says who they came from, each is by itself.
 */
function deliveries({ lots }: Book): Lot[][] {
  const days = new Map<string, Lot[]>();
  for (const lot of lots) {
    const key = `${String(lot.received)} ${nameKey(lot.supplier)}`;
    const together = days.get(key);
    if (together === undefined) days.set(key, [lot]);
    else together.push(lot);
  }
  return [...days.values()]
    .flatMap(byDelivery)
    .reverse()
    .sort(([one], [other]) => (other?.received ?? 0) - (one?.received ?? 0));
}

function byDelivery(lots: readonly Lot[]): Lot[][] {
  const ids = new Set(lots.map(deliveryOf).filter((id) => id !== ''));
  if (ids.size === 0 && lots[0]?.supplier === '') return lots.map((lot) => [lot]);
  if (ids.size <= 1) return [[...lots]];
  return [...ids, ''].flatMap((id) => {
    const mine = lots.filter((lot) => deliveryOf(lot) === id);
    return mine.length === 0 ? [] : [mine];
  });
}

/** The id of the delivery that a lot is named after, "" for a number of its own. */
const deliveryOf = ({ lot }: Lot): string =>
  /^(R\d{8}-[^.]+)\.\d{2,}$/u.exec(lot)?.[1]?.toUpperCase() ?? '';
