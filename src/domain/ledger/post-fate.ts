import type { Book, Design, Item } from '../book/book.ts';
import { itemAtPlace, itemOfBars } from '../book/find.ts';
import type { SellingPlace } from '../book/trade.ts';
import type { givenAs } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { andThen, answer, type Result, wrong } from '../kernel/result.ts';
import { roundMoney } from '../money/currency.ts';
import { entryId, type NewMove, type StockChange } from './posting.ts';
import { shortOf } from './short-of.ts';
import { stockChanges } from './stock-changes.ts';
import { type Taken, takeStock } from './take-stock.ts';

/** Lines of the ledger alone, and how they change the stock. */
export interface FatePosting {
  readonly moves: readonly NewMove[];
  readonly changes: readonly StockChange[];
}

interface Fate {
  /** Made once when the form opens and kept through every retry. */
  readonly id: string;
  readonly when: Day;
  readonly by: string;
}

/** Stock that was given away, or came to nothing. */
export interface GoneForGood extends Fate {
  readonly item: Item;
  /** In the item's unit. */
  readonly quantity: Exact;
  /** How it was given; undefined where it was wasted. */
  readonly givenAs?: (typeof givenAs)[number];
  /** Who has it now, or what happened. */
  readonly why: string;
}

/** Good bars on their way to a place, or back from it to the shelf. */
export interface BarsSent extends Fate {
  readonly design: Design;
  readonly place: SellingPlace;
  readonly bars: number;
  readonly isBack: boolean;
}

/** Takes what was given or wasted out of stock, a line for each lot or batch, at what it cost. Writes nothing itself. */
export function postGone(book: Book, gone: GoneForGood, today: Day): Result<FatePosting> {
  const { item, quantity, givenAs: as, why } = gone;
  const reason = as === undefined ? ('wasted' as const) : ('given' as const);
  const note = [as ?? [], why === '' ? [] : why].flat().join(': ');
  return andThen(takeOut(book, gone, item, quantity, today), (picks) => {
    const moves = picks.map((pick, at) => ({
      ...moveOf(book, gone, pick, at + 1),
      reason,
      note,
    }));
    return answer({ moves, changes: stockChanges(book, moves, gone.when) });
  });
}

/** Moves bars between the shelf and a place with their cost; they stay in stock. Writes nothing itself. */
export function postSent(book: Book, sent: BarsSent, today: Day): Result<FatePosting> {
  const { design, place, bars, isBack } = sent;
  const [shelf, lying] = [itemOfBars(design), itemAtPlace(design, place)];
  const [from, to] = isBack ? [lying, shelf] : [shelf, lying];
  return andThen(takeOut(book, sent, from, exact(bars), today), (picks) => {
    const moves = picks.flatMap((pick, at) => {
      // Not rounded: what lies elsewhere is worth what it was, to the last digit.
      const value = pick.value.neg();
      const out = { ...moveOf(book, sent, pick, at * 2 + 1), reason: 'sent' as const, value };
      const entry = entryId(sent.id, at * 2 + 2);
      return [
        out,
        { ...out, entry, item: to, quantity: out.quantity.neg(), value: out.value.neg() },
      ];
    });
    return answer({ moves, changes: stockChanges(book, moves, sent.when) });
  });
}

function takeOut(
  book: Book,
  { id, when }: Fate,
  item: Item,
  quantity: Exact,
  today: Day,
): Result<readonly Taken[]> {
  const isThere = book.ledger.moves.some(({ entry }) =>
    nameKey(entry).startsWith(`${nameKey(id)}.`),
  );
  if (isThere) return wrong(`${id} is in LedgerLines already, so it is not recorded again.`);
  const isCounted = item.unit === 'each';
  if (quantity.lte(0) || (isCounted && !quantity.isInteger()))
    return wrong(
      `Quantity of ${item.name} is ${quantity.toString()}. Give ${isCounted ? 'a whole number, 1 or more' : 'more than 0'}.`,
    );
  const days = { day: when, latest: Math.max(today, when) };
  const short = shortOf(book, [{ item, quantity }], days);
  if (short !== undefined) return wrong(short);
  return andThen(takeStock(book, item, quantity, days, false), ({ picks }) => answer(picks));
}

const moveOf = (
  { settings }: Book,
  { id, when, by }: Fate,
  pick: Taken,
  number: number,
): Omit<NewMove, 'reason'> => ({
  entry: entryId(id, number),
  when,
  item: pick.item,
  quantity: pick.quantity.neg(),
  lot: pick.lot,
  value: roundMoney(pick.value, settings.currency).neg(),
  batch: '',
  by,
  note: '',
});
