import type { Batch, Book } from '../book/book.ts';
import { itemOfBars } from '../book/find.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { nameKey } from '../kernel/names.ts';
import { isUndone } from '../stock/batch-moves.ts';
import { onHand } from '../stock/on-hand.ts';
import type { Advice } from './advice.ts';

/** After this many days a fair without sales is taken for one that was missed. */
const LATEST_DAYS = 30;
/** Bars just ready can wait so long for a price tag. */
const WAIT_DAYS = 5;

/** Fairs whose sales are not in the ledger yet, and bars that became ready and are not sold yet. */
export function sellAdvice(book: Book, today: Day): Advice[] {
  return [...unrecordedFairs(book, today), ...justReady(book, today)];
}

function unrecordedFairs(book: Book, today: Day): Advice[] {
  // What was taken back stands there as a line of as many bars below 0.
  const barsOf = new Map<string, number>();
  for (const { fair, bars } of book.sales) {
    barsOf.set(nameKey(fair), (barsOf.get(nameKey(fair)) ?? 0) + bars);
  }
  return [...book.fairs.values()]
    .filter(({ fair, opens }) => {
      const day = wholeDay(opens);
      return day < today && day >= today - LATEST_DAYS && (barsOf.get(nameKey(fair)) ?? 0) <= 0;
    })
    .map(({ fair, opens }) => ({
      kind: 'sell',
      title: `Record the sales of ${fair}`,
      reasons: [
        `It opened on ${isoDate(opens)} and has no sales yet, so its bars still count as stock.`,
      ],
      due: today,
    }));
}

function justReady(book: Book, today: Day): Advice[] {
  const ready = new Map<Batch['design'], Batch>();
  for (const batch of book.batches.values()) {
    const { readyOn } = batch;
    const isNew = readyOn !== undefined && readyOn <= today && readyOn > today - WAIT_DAYS;
    if (isNew && !isUndone(book, batch)) ready.set(batch.design, batch);
  }
  const fair = [...book.fairs.values()]
    .filter(({ opens }) => wholeDay(opens) >= today)
    .sort((a, b) => a.opens - b.opens)[0];
  const where = fair === undefined ? '' : ` The next fair is ${fair.fair}, ${isoDate(fair.opens)}.`;
  return [...ready].flatMap(([design, { batch, readyOn = today }]) => {
    const bars = onHand(book, itemOfBars(design), today);
    return bars.lte(0)
      ? []
      : {
          kind: 'sell' as const,
          title: `Price and pack ${count(bars, 'bar')} of ${design.name}`,
          reasons: [`Batch ${batch} is ready since ${isoDate(readyOn)}.${where}`],
          due: wholeDay(readyOn) + WAIT_DAYS,
        };
  });
}
