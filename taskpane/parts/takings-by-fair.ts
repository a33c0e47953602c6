import type { Book } from '../../src/domain/book/book.ts';
import { answer, type Result, wrong } from '../../src/domain/kernel/result.ts';
import { type FairResult, fairResult } from '../../src/domain/sell/fair-result.ts';
import { day, moneyText } from '../format.ts';
import { lyingBars } from '../pictures/bars.ts';
import type { Picture } from '../pictures/picture.ts';

/** What each fair took, in order of time, with what it brought home. */
export function takingsByFair(book: Book): Result<Picture> {
  const { currency } = book.settings;
  const fairs = fairsSoFar(book);
  const best = fairs.reduce<FairResult | undefined>(
    (most, result) => (most === undefined || result.profit.gt(most.profit) ? result : most),
    undefined,
  );
  if (best === undefined) return wrong('No fair has sales yet. Record them under Sell.');
  const home = ({ profit }: FairResult): string =>
    `${profit.isNegative() ? 'loss' : 'profit'} ${moneyText(profit.abs(), currency)}`;
  return answer({
    key: 'fairs',
    title: 'Takings by fair',
    says: `${best.fair.fair} did best: ${home(best)}, of ${moneyText(best.takings, currency)} taken.`,
    ...lyingBars(
      fairs.slice(-MOST_FAIRS).map((result) => ({
        name: result.fair.fair,
        amount: moneyText(result.takings, currency),
        length: Math.max(result.takings.toNumber(), 0),
      })),
    ),
    headers: ['Fair', 'Takings', 'Brought home'],
    rows: fairs.map((result) => [
      `${result.fair.fair}, ${day(result.fair.opens)}`,
      moneyText(result.takings, currency),
      home(result),
    ]),
  });
}

/** The newest fairs that are drawn; the table has all. */
const MOST_FAIRS = 12;

/** Fairs with sales, in order of time; one whose result can't be worked out is left out. */
function fairsSoFar(book: Book): FairResult[] {
  return [...book.fairs.values()]
    .sort((a, b) => a.opens - b.opens)
    .flatMap((fair) => {
      const result = fairResult(book, fair);
      return result.ok && result.value.bars.gt(0) ? [result.value] : [];
    });
}
