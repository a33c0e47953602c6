import type { Book, Lot, Move } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { roundMoney } from '../money/currency.ts';
import { landedCost } from '../stock/lot-cost.ts';
import { live } from '../stock/reversals.ts';
import { isOfPour } from './batch-findings.ts';
import { type HealthFinding, inWords, type Mending, takeBack } from './finding.ts';

/**
 * Lines that stand twice under two ids: a move of a batch written again, or a line that was given an
 * id of its own (`M-7.2` beside `M-7`) because two bore the same.
 */
export function repeatFindings(book: Book, mending: Mending): HealthFinding[] {
  return [
    ...repeated(live(book.ledger.moves), factsOfMove, isRepeatOfMove).map(([first, again]) => ({
      kind: 'move written twice' as const,
      about: again.entry,
      says: `Entry ${again.entry} says the same as entry ${first.entry}: ${again.reason} ${inWords(again.quantity, again.item.unit)} of ${again.item.name} on the same day. If it happened once, take ${again.entry} back.`,
      repair: {
        says: `Take back entry ${again.entry}.`,
        moves: [takeBack(again, mending)],
        batches: [],
      },
    })),
    ...repeated(book.lots, factsOfLot, (first, again) => isNumbered(first.lot, again.lot))
      .filter(([, again]) => !isTakenOut(book, again))
      .map(([first, again]) => lotFinding(book, first, again, mending)),
  ];
}

function repeated<T>(
  lines: readonly T[],
  factsOf: (line: T) => string,
  isRepeat: (first: T, again: T) => boolean,
): [T, T][] {
  const firsts = new Map<string, T[]>();
  const found: [T, T][] = [];
  for (const line of lines) {
    const facts = factsOf(line);
    const alike = firsts.get(facts);
    const first = alike?.find((known) => isRepeat(known, line));
    if (first !== undefined) found.push([first, line]);
    else if (alike === undefined) firsts.set(facts, [line]);
    else alike.push(line);
  }
  return found;
}

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

/** A posting takes each item from a lot once; by hand two like lines on one day may both be true. */
const isRepeatOfMove = (first: Move, again: Move): boolean =>
  isNumbered(first.entry, again.entry) || (again.batch !== '' && isOfPour(again));

/** Whether an id is the other's with a number: the id of a line that bore the other's. */
function isNumbered(first: string, again: string): boolean {
  const [one, other] = [nameKey(first), nameKey(again)];
  return other.startsWith(`${one}.`) && /^\d+$/u.test(other.slice(one.length + 1));
}

const factsOfLot = ({ material, received, quantity, paid, freight }: Lot): string =>
  JSON.stringify([nameKey(material.name), received, quantity, paid, freight]);

/** Whether a count has taken the whole lot out again. */
const isTakenOut = (book: Book, lot: Lot): boolean =>
  live(book.ledger.moves).some(
    (move) =>
      move.reason === 'counted' &&
      nameKey(move.lot) === nameKey(lot.lot) &&
      move.quantity === -lot.quantity,
  );

function lotFinding(book: Book, first: Lot, again: Lot, mending: Mending): HealthFinding {
  const { material, quantity } = again;
  return {
    kind: 'lot written twice',
    about: again.lot,
    says: `Lot ${again.lot} says the same as lot ${first.lot}: ${inWords(quantity, material.unit)} of ${material.name} came on the same day for the same money. If it came once, take ${again.lot} out.`,
    repair: {
      says: `Count out the ${inWords(quantity, material.unit)} of lot ${again.lot}.`,
      moves: [
        {
          entry: mending.entryFor(`Not there ${again.lot}`),
          when: again.received,
          reason: 'counted',
          item: itemOfMaterial(material),
          quantity: exact(quantity).neg(),
          lot: again.lot,
          value: roundMoney(landedCost(again), book.settings.currency).neg(),
          batch: '',
          by: mending.by,
          note: `Health check: ${first.lot} is the same purchase`,
        },
      ],
      batches: [],
    },
  };
}
