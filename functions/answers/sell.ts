import { findFair } from '../../src/domain/book/find.ts';
import { toCell } from '../../src/domain/kernel/exact.ts';
import { andThen, answer } from '../../src/domain/kernel/result.ts';
import { fairLoad } from '../../src/domain/sell/fair-load.ts';
import { fairResult } from '../../src/domain/sell/fair-result.ts';
import { breakEven, priceFor } from '../../src/domain/sell/price.ts';
import { amountCell, type AnswersOf, cellOrBlank } from '../answer.ts';
import type { sellRecords } from '../records/sell.ts';

export const sellAnswers: AnswersOf<typeof sellRecords> = {
  /** Money, rounded up. */
  PRICE: priceFor,

  /** Units, rounded up. */
  BREAKEVEN: ({ fixedCost, price, costPerUnit }) => breakEven(fixedCost, price, costPerUnit),

  FAIR: ({ fair, book }) =>
    andThen(findFair(book.fairs, fair), (found) =>
      andThen(fairResult(book, found), (result) =>
        answer([
          ['Takings', toCell(result.takings)],
          ['Tax', toCell(result.tax)],
          ['Fees', toCell(result.fees)],
          ['Cost of bars sold', toCell(result.costOfBars)],
          ['Stall and travel', toCell(result.stallAndTravel)],
          ['Profit', toCell(result.profit)],
          ['Per hour', cellOrBlank(result.perHour)],
          ['Bars to break even', cellOrBlank(result.barsToBreakEven)],
        ]),
      ),
    ),

  FAIRLOAD: ({ fair, book }) =>
    andThen(findFair(book.fairs, fair), (found) =>
      andThen(fairLoad(book, found), ({ lines }) =>
        answer(
          lines.map((line) => [
            line.design.name,
            line.bring,
            amountCell(line.have),
            line.pour,
            line.sellsOutPercent,
            line.expectedSold,
            line.expectedProfit,
          ]),
        ),
      ),
    ),
};
