import { findBatch, findFair } from '../src/domain/book/find.ts';
import { batchVariance } from '../src/domain/cost/batch-variance.ts';
import { type Exact, toCell, zero } from '../src/domain/kernel/exact.ts';
import { andThen } from '../src/domain/kernel/result.ts';
import { fairResult } from '../src/domain/sell/fair-result.ts';
import { breakEven as unitsToBreakEven, priceFor } from '../src/domain/sell/price.ts';
import { settle, settleNumber } from './answer.ts';
import { exactArgument, nameArgument, optionalExact } from './arguments.ts';
import { bookArgument } from './books.ts';

/**
 * The price to ask, tax included, that leaves the margin after tax and fees.
 * @customfunction PRICE
 * @param {any} cost Full cost of what is sold, such as POUR.COSTPERBAR.
 * @param {any} marginPercent Profit wanted, in percent of the price without tax.
 * @param {any} [feePercent] Card or market fee, in percent of the price paid; 0 if blank.
 * @param {any} [feeFixed] Fixed fee for each payment; 0 if blank.
 * @param {any} [taxPercent] Sales tax in percent; 0 if blank.
 * @param {any} [ending] What the price ends in, such as 0.95; to the cent if blank.
 * @returns {number} Money, rounded up.
 */
export function price(
  cost: any,
  marginPercent: any,
  feePercent?: any,
  feeFixed?: any,
  taxPercent?: any,
  ending?: any,
): number {
  return settleNumber(
    priceFor({
      cost: exactArgument(cost, 'cost'),
      marginPercent: exactArgument(marginPercent, 'margin %'),
      feePercent: optionalExact(feePercent, 'fee %') ?? zero,
      feeFixed: optionalExact(feeFixed, 'fee fixed') ?? zero,
      taxPercent: optionalExact(taxPercent, 'tax %') ?? zero,
      ending: optionalExact(ending, 'ending'),
    }),
  );
}

/**
 * Whole units to sell before the fixed cost is earned back.
 * @customfunction BREAKEVEN
 * @param {any} fixedCost What it costs however many are sold, such as the stall.
 * @param {any} price What one brings in, without tax and fees.
 * @param {any} costPerUnit What one costs.
 * @returns {number} Units, rounded up.
 */
export function breakEven(fixedCost: any, price: any, costPerUnit: any): number {
  return settleNumber(
    unitsToBreakEven(
      exactArgument(fixedCost, 'fixed cost'),
      exactArgument(price, 'price'),
      exactArgument(costPerUnit, 'cost per unit'),
    ),
  );
}

/**
 * What a fair brought home, from its lines in Sales and its costs in Fairs.
 * @customfunction FAIR
 * @param {any} fair Name of the fair, as in Fairs.
 * @param {any} book The cell named Book.
 * @returns {any[][]} Line, Amount.
 */
export function fair(fair: any, book: any): any[][] {
  const pourBook = bookArgument(book);
  const result = settle(
    andThen(findFair(pourBook.fairs, nameArgument(fair, 'fair')), (found) =>
      fairResult(pourBook, found),
    ),
  );
  return [
    ['Line', 'Amount'],
    ['Takings', toCell(result.takings)],
    ['Tax', toCell(result.tax)],
    ['Fees', toCell(result.fees)],
    ['Cost of bars sold', toCell(result.costOfBars)],
    ['Stall and travel', toCell(result.stallAndTravel)],
    ['Profit', toCell(result.profit)],
    ['Per hour', orBlank(result.perHour)],
    ['Bars to break even', orBlank(result.barsToBreakEven)],
  ];
}

/**
 * Planned against actual for one batch: what it should have used, what it used, and why the cost differs.
 * @customfunction BATCHCOST
 * @param {any} batch Id of the batch, as in Batches.
 * @param {any} book The cell named Book.
 * @returns {any[][]} Item, Unit, Planned, Used, Planned cost, Used cost, By quantity, By price.
 */
export function batchCost(batch: any, book: any): any[][] {
  const pourBook = bookArgument(book);
  const lines = settle(
    andThen(findBatch(pourBook.batches, nameArgument(batch, 'batch')), (found) =>
      batchVariance(pourBook, found),
    ),
  );
  return [
    ['Item', 'Unit', 'Planned', 'Used', 'Planned cost', 'Used cost', 'By quantity', 'By price'],
    ...lines.map((line) => [
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
  ];
}

const orBlank = (value: Exact | undefined): number | string =>
  value === undefined ? '' : toCell(value);
