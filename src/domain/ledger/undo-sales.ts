import type { Book, Sale } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { soldName } from '../accounts/sold-unmoved.ts';
import { feesOn } from '../sell/sale-fees.ts';
import { live } from '../stock/reversals.ts';
import { type NewSale, type SalesPosting, TAKES_BACK } from './sale.ts';
import { changesByReversals, reversalOf } from './reversal.ts';

/** Takes a selling day back: each sale by a line with its bars negative, each move (the boxes of sets too) by its reversal. */
export function undoSales(book: Book, dayId: string, today: Day, by: string): Result<SalesPosting> {
  const ofDay = (id: string): boolean => nameKey(id).startsWith(`${nameKey(dayId)}.`);
  const undone = new Set(book.sales.map(({ sale }) => nameKey(sale)));
  const sales = book.sales.filter(
    ({ sale, bars }) => ofDay(sale) && bars > 0 && !undone.has(nameKey(sale + TAKES_BACK)),
  );
  if (sales.length === 0)
    return wrong(`No sales of ${dayId} are left to take back: they are undone already.`);
  const moves = live(book.ledger.moves)
    .filter(({ entry, reason }) => ofDay(entry) && (reason === 'sold' || reason === 'used'))
    .map((move) => reversalOf(move, today, by));
  return answer({
    sales: sales.map((sale) => takenBack(book, sale)),
    moves,
    changes: changesByReversals(book, moves, today),
  });
}

function takenBack(book: Book, sale: Sale): NewSale {
  return {
    sale: sale.sale + TAKES_BACK,
    soldOn: sale.soldOn,
    design: soldName(sale),
    bars: -sale.bars,
    priceEach: exact(sale.priceEach),
    fair: sale.fair,
    fees: feesOn(book, sale).neg(),
    place: sale.place?.name ?? '',
    tender: sale.tender ?? '',
    takenBy: sale.takenBy,
  };
}
