import type { Book } from '../../src/domain/book/book.ts';
import type { Day } from '../../src/domain/kernel/day.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import { TAKES_BACK } from '../../src/domain/ledger/sale.ts';

/** A selling day as Sales shows it. */
export interface PastSellingDay {
  readonly id: string;
  readonly soldOn: Day;
  readonly fair: string;
  readonly bars: number;
  /** All its lines were taken back. */
  readonly isUndone: boolean;
}

/** The selling days in Sales, newest first. Lines with ids of another form belong to none. */
export function sellingDays(book: Book): PastSellingDay[] {
  const takenBack = new Set(book.sales.map(({ sale }) => nameKey(sale)));
  const days = new Map<string, PastSellingDay>();
  for (const { sale, soldOn, fair, bars } of book.sales) {
    const id = /^(.+)\.\d{2,}$/u.exec(sale)?.[1];
    if (id === undefined) continue;
    const before = days.get(nameKey(id));
    days.set(nameKey(id), {
      id,
      soldOn,
      fair,
      bars: (before?.bars ?? 0) + bars,
      isUndone: (before?.isUndone ?? true) && takenBack.has(nameKey(sale + TAKES_BACK)),
    });
  }
  return [...days.values()].reverse().sort((a, b) => b.soldOn - a.soldOn);
}
