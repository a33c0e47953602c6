import { findBatch, findDesign } from '../../src/domain/book/find.ts';
import { type BarCost, barCost } from '../../src/domain/cost/bar-cost.ts';
import { batchVariance } from '../../src/domain/cost/batch-variance.ts';
import { hundred, toCell } from '../../src/domain/kernel/exact.ts';
import { andThen, answer, type Result } from '../../src/domain/kernel/result.ts';
import type { AnswersOf, GivenTo } from '../answer.ts';
import type { costRecords } from '../records/cost.ts';

export const costAnswers: AnswersOf<typeof costRecords> = {
  /** Money for one bar. */
  COSTPERBAR: (given) => andThen(costOf(given), ({ perBar }) => answer(perBar)),

  COSTLINES: (given) =>
    andThen(costOf(given), ({ perBar, lines }) =>
      answer(
        lines.map((line) => [
          line.name,
          toCell(line.perBar),
          perBar.isZero() ? 0 : toCell(line.perBar.div(perBar).times(hundred)),
        ]),
      ),
    ),

  BATCHCOST: ({ batch, book }) =>
    andThen(findBatch(book.batches, batch), (found) =>
      andThen(batchVariance(book, found), (lines) =>
        answer(
          lines.map((line) => [
            line.item.name,
            line.item.unit,
            ...[
              line.planned,
              line.used,
              line.plannedCost,
              line.usedCost,
              line.quantityDifference,
              line.priceDifference,
            ].map(toCell),
          ]),
        ),
      ),
    ),
};

const costOf = ({
  design,
  book,
  bars,
  asOf,
}: GivenTo<(typeof costRecords)['COSTPERBAR']>): Result<BarCost> =>
  andThen(findDesign(book, design), (found) => barCost(book, found, bars, asOf));
