import type { Batch, Book, Design } from '../book/book.ts';
import { count } from '../kernel/count.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { sum, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { isUndone } from '../stock/batch-moves.ts';
import { barsByBatch } from '../trace/bars-by-batch.ts';
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
  const ready = new Map<Design, Batch[]>();
  for (const batch of book.batches.values()) {
    const { readyOn, design } = batch;
    if (design === undefined) continue;
    const isNew = readyOn !== undefined && readyOn <= today && readyOn > today - WAIT_DAYS;
    if (isNew && !isUndone(book, batch)) ready.set(design, [...(ready.get(design) ?? []), batch]);
  }
  const fair = [...book.fairs.values()]
    .filter(({ opens }) => wholeDay(opens) >= today)
    .sort((a, b) => a.opens - b.opens)[0];
  const where = fair === undefined ? '' : ` The next fair is ${fair.fair}, ${isoDate(fair.opens)}.`;
  return [...ready].flatMap(([design, batches]) => {
    const byBatch = barsByBatch(book, design, today);
    const there = batches
      .map(({ batch, readyOn = today }) => ({
        batch,
        readyOn,
        bars: byBatch.get(nameKey(batch)) ?? zero,
      }))
      .filter(({ bars }) => bars.gt(0))
      .sort((a, b) => a.readyOn - b.readyOn || compareNames(a.batch, b.batch));
    const [first] = there;
    if (first === undefined) return [];
    const each = there.map(({ batch, readyOn, bars }) =>
      there.length === 1
        ? `Batch ${batch} is ready since ${isoDate(readyOn)}.`
        : `Batch ${batch}: ${count(bars, 'bar')}, ready since ${isoDate(readyOn)}.`,
    );
    return {
      kind: 'sell' as const,
      title: `Price and pack ${count(sum(there.map(({ bars }) => bars)), 'bar')} of ${design.name}`,
      reasons: [`${each.join(' ')}${where}`],
      due: wholeDay(first.readyOn) + WAIT_DAYS,
    };
  });
}
