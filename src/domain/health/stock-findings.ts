import type { Book, Item, Lot, Move } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { type Exact, exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { Tally } from '../kernel/tally.ts';
import { roundMoney } from '../money/currency.ts';
import type { MoveLine } from '../ledger/posting.ts';
import type { ItemHistory } from '../stock/item-history.ts';
import { indexOf, liveMoves } from '../stock/ledger-index.ts';
import { unitCost } from '../stock/valuation.ts';
import {
  finding,
  type HealthFinding,
  inWords,
  type Mender,
  mendingBy,
  reversalIn,
} from './finding.ts';

/** How far a running sum fell below zero at the end of a day, and when first. */
interface Shortfall {
  readonly first: Day;
  readonly onFirst: Exact;
  readonly deepest: Exact;
}

/** Items whose stock was below zero at the end of some day. A move that was taken back never counts. */
export function stockFindings(book: Book, mender: Mender): HealthFinding[] {
  return [...indexOf(book).values()].flatMap((history) => {
    const item = itemOf(history);
    if (item === undefined) return [];
    const changes = [
      ...history.lots.map(({ received, quantity }) => ({ when: received, quantity })),
      ...liveMoves(history, Infinity),
    ];
    const shortfall = findShortfall(changes);
    if (shortfall === undefined) return [];
    const { first, onFirst, deepest } = shortfall;
    return [
      finding(
        'stock below zero',
        item.name,
        () =>
          `On ${isoDate(first)} the ledger had ${inWords(onFirst, item.unit)} of ${item.name}, and at worst ${deepest.neg().toString()}. A purchase, a count or a pour is missing or dated too late.`,
        () => ({
          says: `Count in ${inWords(deepest, item.unit)} of ${item.name} on ${isoDate(first)}.`,
          moves: [countedIn(book, item, deepest, first, { lot: '', mender })],
          batches: [],
        }),
      ),
    ];
  });
}

/** Lots that moves took from before they came, or took more of than there was. */
export function lotFindings(book: Book, mender: Mender): HealthFinding[] {
  const movesOf = movesByLot(book);
  return book.lots.flatMap((lot): HealthFinding[] => {
    const moves = movesOf.get(nameKey(lot.lot)) ?? [];
    const early = moves.filter(
      ({ when, quantity }) => quantity < 0 && wholeDay(when) < wholeDay(lot.received),
    );
    const start = { when: Math.min(lot.received, ...early.map(({ when }) => when)) };
    const beyond = findShortfall([{ ...start, quantity: lot.quantity }, ...moves]);
    return [
      ...(early.length === 0 ? [] : [usedEarly(lot, early, mender)]),
      ...(beyond === undefined ? [] : [usedBeyond(book, lot, beyond, mender)]),
    ];
  });
}

/** The live moves that name a lot of a material, by the lot's `nameKey`. */
function movesByLot(book: Book): ReadonlyMap<string, readonly Move[]> {
  const movesOf = new Map<string, Move[]>();
  for (const history of indexOf(book).values()) {
    if (itemOf(history)?.kind !== 'material') continue;
    for (const move of liveMoves(history, Infinity)) {
      if (move.lot === '') continue;
      const key = nameKey(move.lot);
      const known = movesOf.get(key);
      if (known === undefined) movesOf.set(key, [move]);
      else known.push(move);
    }
  }
  return movesOf;
}

const usedBeyond = (
  book: Book,
  lot: Lot,
  { first, deepest }: Shortfall,
  mender: Mender,
): HealthFinding =>
  finding(
    'lot used beyond its quantity',
    lot.lot,
    () =>
      `The ledger took ${inWords(deepest, lot.material.unit)} more of lot ${lot.lot} (${lot.material.name}) than there was, from ${isoDate(first)} on. The lot's Quantity is too small, or a line of the ledger names the wrong lot.`,
    () => ({
      says: `Count in ${inWords(deepest, lot.material.unit)} of lot ${lot.lot} on ${isoDate(first)}.`,
      moves: [
        countedIn(book, itemOfMaterial(lot.material), deepest, first, { lot: lot.lot, mender }),
      ],
      batches: [],
    }),
  );

/** The day of the use is as likely wrong as the day of the lot; only the use can be mended by lines. */
function usedEarly(lot: Lot, early: readonly Move[], mender: Mender): HealthFinding {
  const came = isoDate(lot.received);
  return finding(
    'lot used before it came',
    lot.lot,
    () => {
      const uses = early.map(({ entry, when }) => `entry ${entry} on ${isoDate(when)}`);
      return `Lot ${lot.lot} (${lot.material.name}) came on ${came}, but was taken from before: ${uses.join(', ')}. If the lot came sooner, mend Received in Lots. If it was used later, put the use on ${came}.`;
    },
    () => {
      const mending = mendingBy(mender);
      return {
        says: `Take ${early.length === 1 ? 'the use' : `the ${early.length} uses`} back and write ${early.length === 1 ? 'it' : 'them'} again on ${came}.`,
        moves: early.flatMap((move) => [
          reversalIn(move, mending),
          {
            ...move,
            entry: mending.entryFor(`${move.entry}.2`),
            when: lot.received,
            quantity: exact(move.quantity),
            value: move.value === undefined ? undefined : exact(move.value),
            by: mending.by,
            note: `Health check: ${move.entry} on the day the lot came`,
          },
        ]),
        batches: [],
      };
    },
  );
}

const itemOf = ({ moves, lots }: ItemHistory): Item | undefined =>
  moves[0]?.item ?? (lots[0] && itemOfMaterial(lots[0].material));

/** Sums day by day; within a day order does not matter. */
function findShortfall(
  changes: readonly { readonly when: Day; readonly quantity: number }[],
): Shortfall | undefined {
  const ofDay = new Map<Day, number[]>();
  for (const { when, quantity } of changes) {
    const day = wholeDay(when);
    const known = ofDay.get(day);
    if (known === undefined) ofDay.set(day, [quantity]);
    else known.push(quantity);
  }
  const running = new Tally();
  let shortfall: Shortfall | undefined;
  for (const [day, quantities] of [...ofDay].sort(([a], [b]) => a - b)) {
    for (const quantity of quantities) running.add(quantity);
    if (running.sign() >= 0) continue;
    const onFirst = running.total();
    const deepest = onFirst.neg();
    if (shortfall === undefined) shortfall = { first: day, onFirst, deepest };
    else if (deepest.gt(shortfall.deepest)) shortfall = { ...shortfall, deepest };
  }
  return shortfall;
}

function countedIn(
  book: Book,
  item: Item,
  quantity: Exact,
  when: Day,
  { lot, mender }: { readonly lot: string; readonly mender: Mender },
): MoveLine {
  const { by, entryFor } = mendingBy(mender);
  const cost = unitCost(book, item, mender.today);
  const value = cost.ok
    ? roundMoney(cost.value.times(quantity), book.settings.currency)
    : undefined;
  return {
    entry: entryFor(`Found ${lot === '' ? item.name : lot} ${isoDate(when)}`),
    when,
    reason: 'counted',
    item,
    quantity,
    lot,
    value,
    batch: '',
    by,
    note: `Health check: the ledger was short of this${cost.ok ? '' : '; its Value is not known'}`,
  };
}
