import type { Book } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { compareNames } from '../kernel/names.ts';
import { type Advice, adviceKinds } from './advice.ts';
import { countAdvice } from './now-count.ts';
import { orderAdvice } from './now-order.ts';
import { pourAdvice } from './now-pour.ts';
import { sellAdvice } from './now-sell.ts';

/** As many things as one remembers while walking to the shelf. */
export const MOST_ADVICE = 3;

/** What is due later than this many days ahead is not for today. */
export const HORIZON_DAYS = 14;

/** Of one kind no more than this while something of another kind waits. */
const MOST_OF_A_KIND = 2;

/**
 * The three things most worth doing, the most urgent first: by the last day to do it; on one day what
 * others must send before what the maker makes, that before selling, and counting last; then by name.
 * A third of one kind gives way to the first of another, so that orders never hide the pour.
 * Kept for the book, so each day's is worked out once.
 */
export function whatNow(book: Book, asOf: Day): readonly Advice[] {
  const today = wholeDay(asOf);
  return kept(book, String(today), () => mostUrgent(book, today));
}

const kept = oncePerKey<Book, readonly Advice[]>();

function mostUrgent(book: Book, today: Day): readonly Advice[] {
  const sorted = [
    ...orderAdvice(book, today),
    ...pourAdvice(book, today),
    ...sellAdvice(book, today),
    ...countAdvice(book, today),
  ]
    .filter(({ due }) => due <= today + HORIZON_DAYS)
    .sort(moreUrgent);
  const isTooMany = (advice: Advice): boolean =>
    sorted.filter(({ kind }) => kind === advice.kind).indexOf(advice) >= MOST_OF_A_KIND;
  return [...sorted.filter((advice) => !isTooMany(advice)), ...sorted.filter(isTooMany)]
    .slice(0, MOST_ADVICE)
    .sort(moreUrgent);
}

const moreUrgent = (a: Advice, b: Advice): number =>
  a.due - b.due ||
  adviceKinds.indexOf(a.kind) - adviceKinds.indexOf(b.kind) ||
  compareNames(a.title, b.title);
