import { findItem } from '../../domain/book/find.ts';
import type { Day } from '../../domain/kernel/day.ts';
import { exact, toCell } from '../../domain/kernel/exact.ts';
import { roundMoney } from '../../domain/money/currency.ts';
import { unitCost } from '../../domain/stock/valuation.ts';
import { serial } from '../cells/serial.ts';
import { type Diary, sound } from './diary.ts';
import { type StockLost, movesOut } from './take-out.ts';

interface Mishap extends Omit<StockLost, 'by' | 'when'> {
  readonly on: string;
  /** More was found on the shelf than written, so it comes in. */
  readonly found?: true;
}

/** Soap spoilt, bars dropped, and two counts of the shelf. */
const mishaps: readonly Mishap[] = [
  {
    entry: 'C-001',
    on: '2026-01-05',
    reason: 'counted',
    item: 'Clear base',
    quantity: 42,
    note: 'Stocktake: crumbs left in the tub',
  },
  {
    entry: 'C-002',
    on: '2026-01-05',
    reason: 'counted',
    item: 'Teal drops',
    quantity: 1.8,
    note: 'Stocktake: more in the bottle than written',
    found: true,
  },
  {
    entry: 'W-001',
    on: '2026-02-17',
    reason: 'wasted',
    item: 'Winter Beacon',
    quantity: 3,
    note: 'Dropped while packing',
  },
  {
    entry: 'W-002',
    on: '2026-06-09',
    reason: 'wasted',
    item: 'Glassine wrap',
    quantity: 17,
    note: 'Got wet',
  },
  {
    entry: 'C-003',
    on: '2026-07-06',
    reason: 'counted',
    item: 'Label',
    quantity: 4,
    note: 'Stocktake: misprints',
  },
];

/** Writes what went wrong, or was counted, on a day. */
export function mishapsOn(diary: Diary, day: Day, by: string): void {
  for (const { on, found, ...mishap } of mishaps) {
    if (serial(on) !== day) continue;
    const leaving = { ...mishap, when: day, by };
    if (found) countIn(diary, leaving);
    else
      movesOut(diary.book(), leaving).forEach((move) => {
        diary.add('moves', move);
      });
  }
}

/** Comes in at what the stock already there costs. */
function countIn(diary: Diary, { entry, when, reason, item, quantity, by, note }: StockLost): void {
  const book = diary.book();
  const cost = sound(unitCost(book, sound(findItem(book, item)), when));
  diary.add('moves', {
    entry: `${entry}.01`,
    when,
    reason,
    material: item,
    quantity,
    value: toCell(roundMoney(cost.times(exact(quantity)), book.settings.currency)),
    by,
    note,
  });
}
