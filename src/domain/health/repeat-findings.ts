import type { Book, Lot, Move } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { roundMoney } from '../money/currency.ts';
import { isOfPour } from '../stock/batch-moves.ts';
import { landedCost } from '../stock/lot-cost.ts';
import { live } from '../stock/reversals.ts';
import {
  finding,
  type HealthFinding,
  inWords,
  type Mender,
  mendingBy,
  reversalIn,
} from './finding.ts';

/**
 * Lines that stand twice under two ids: a move of a batch written again, or a line that was given an
 * id of its own (`M-7.2` beside `M-7`) because two bore the same.
 */
export function repeatFindings(book: Book, mender: Mender): HealthFinding[] {
  const lots = repeated(
    book.lots,
    factsOfLot,
    ({ lot }) => lot,
    () => false,
  );
  const isTakenOut = lots.length === 0 ? () => false : takenOut(book);
  return [
    ...repeated(live(book.ledger.moves), factsOfMove, ({ entry }) => entry, isOncePerLot).map(
      ([first, again]) => moveFinding(first, again, mender),
    ),
    ...lots
      .filter(([, again]) => !isTakenOut(again))
      .map(([first, again]) => lotFinding(book, first, again, mender)),
  ];
}

/**
 * Each line that repeats another of the same facts, with the first of those: any line of which there
 * can be one only, or the line whose id it bears with a number.
 */
function repeated<T>(
  lines: readonly T[],
  factsOf: (line: T) => string,
  idOf: (line: T) => string,
  isOnce: (line: T) => boolean,
): [T, T][] {
  const firsts = new Map<string, T>();
  const byId = new Map<T, Map<string, T>>();
  const found: [T, T][] = [];
  for (const line of lines) {
    const facts = factsOf(line);
    const first = firsts.get(facts);
    if (first === undefined) {
      firsts.set(facts, line);
      continue;
    }
    const alike = byId.get(first) ?? new Map([[nameKey(idOf(first)), first]]);
    byId.set(first, alike);
    const key = nameKey(idOf(line));
    const known = isOnce(line) ? first : alike.get(key.replace(/\.\d+$/u, ''));
    if (known === undefined) alike.set(key, line);
    else found.push([known, line]);
  }
  return found;
}

/** A posting takes each item from a lot once; by hand two like lines on one day may both be true. */
const isOncePerLot = (move: Move): boolean => move.batch !== '' && isOfPour(move);

const factsOfMove = ({ when, reason, item, quantity, lot, value, batch, note }: Move): string =>
  JSON.stringify([
    when,
    reason,
    nameKey(item.name),
    quantity,
    nameKey(lot),
    value,
    nameKey(batch),
    note,
  ]);

const factsOfLot = ({ material, received, quantity, paid, freight }: Lot): string =>
  JSON.stringify([nameKey(material.name), received, quantity, paid, freight]);

/** Tells whether a count has taken a whole lot out again. */
function takenOut(book: Book): (lot: Lot) => boolean {
  const keyOf = (lot: string, quantity: number): string => `${nameKey(lot)} ${quantity}`;
  const counted = new Set(
    live(book.ledger.moves)
      .filter(({ reason }) => reason === 'counted')
      .map(({ lot, quantity }) => keyOf(lot, quantity)),
  );
  return ({ lot, quantity }) => counted.has(keyOf(lot, -quantity));
}

const moveFinding = (first: Move, again: Move, mender: Mender): HealthFinding =>
  finding(
    'ledger line written twice',
    again.entry,
    () =>
      `Entry ${again.entry} says the same as entry ${first.entry}: ${again.reason} ${inWords(again.quantity, again.item.unit)} of ${again.item.name} on the same day. If it happened once, take ${again.entry} back.`,
    () => ({
      says: `Take back entry ${again.entry}.`,
      moves: [reversalIn(again, mendingBy(mender))],
      batches: [],
    }),
  );

function lotFinding(book: Book, first: Lot, again: Lot, mender: Mender): HealthFinding {
  const { material, quantity } = again;
  const amount = inWords(quantity, material.unit);
  return finding(
    'lot written twice',
    again.lot,
    () =>
      `Lot ${again.lot} says the same as lot ${first.lot}: ${amount} of ${material.name} came on the same day for the same money. If it came once, take ${again.lot} out.`,
    () => ({
      says: `Count out the ${amount} of lot ${again.lot}.`,
      moves: [
        {
          entry: mendingBy(mender).entryFor(`Not there ${again.lot}`),
          when: again.received,
          reason: 'counted',
          item: itemOfMaterial(material),
          quantity: exact(quantity).neg(),
          lot: again.lot,
          value: roundMoney(landedCost(again), book.settings.currency).neg(),
          batch: '',
          by: mender.by,
          note: `Health check: ${first.lot} is the same purchase`,
        },
      ],
      batches: [],
    }),
  );
}
