import { period } from '../../src/domain/accounts/period.ts';
import { settlePartners } from '../../src/domain/accounts/settle.ts';
import { toCell } from '../../src/domain/kernel/exact.ts';
import { andThen, answer } from '../../src/domain/kernel/result.ts';
import type { AnswersOf } from '../answer.ts';
import type { accountsRecords } from '../records/accounts.ts';

export const accountsAnswers: AnswersOf<typeof accountsRecords> = {
  PERIOD: ({ book, from, to }) =>
    andThen(period(book, from, to), (days) =>
      answer([
        ['Takings', toCell(days.takings)],
        ['Tax', toCell(days.tax)],
        ['Commission', toCell(days.commission)],
        ['Fees', toCell(days.fees)],
        ['Postage', toCell(days.postage)],
        ['Net sales', toCell(days.netSales)],
        ['Opening stock', toCell(days.opening)],
        ['Purchases', toCell(days.purchases)],
        ['Closing stock', toCell(days.closing)],
        ['Cost of goods sold', toCell(days.costOfGoods)],
        ['Given', toCell(days.given)],
        ['Wasted', toCell(days.wasted)],
        ['Count differences', toCell(days.countDifferences)],
        ['Stall and travel', toCell(days.stallAndTravel)],
        ['Gross profit', toCell(days.grossProfit)],
        ['Profit', toCell(days.profit)],
      ]),
    ),

  SETTLE: ({ book, from, to }) =>
    andThen(settlePartners(book, from, to), (sides) =>
      answer(
        sides.map(({ partner, paid, took, minutes, share, owed }) => [
          partner,
          ...[paid, took, minutes, share, owed].map(toCell),
        ]),
      ),
    ),
};
