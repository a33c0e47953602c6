import type { Book, Design, Fair, Sale } from '../book/book.ts';
import { barCost } from '../cost/bar-cost.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact, exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { all, andThen, answer, type Result } from '../kernel/result.ts';
import { USUAL_BARS } from '../recipe/plain-plan.ts';
import { isUndone } from '../stock/batch-moves.ts';
import { breakEven } from './price.ts';
import { feesOn } from './sale-fees.ts';
import { paidFor } from './sales-tax.ts';

/** What some sales brought home, in the Settings' currency. */
export interface SalesResult {
  readonly bars: Exact;
  /** All the money taken, tax included. */
  readonly takings: Exact;
  readonly tax: Exact;
  readonly fees: Exact;
  /** Full cost of the bars sold. */
  readonly costOfBars: Exact;
  /** Stall fee, travel and other cost. */
  readonly stallAndTravel: Exact;
  readonly profit: Exact;
  /** Profit over the hours spent; undefined where they are unknown or 0. */
  readonly perHour: Exact | undefined;
  /** Whole bars at the average price; undefined with no sales, or where each bar sold at a loss. */
  readonly barsToBreakEven: Exact | undefined;
}

/** What a fair brought home. */
export interface FairResult extends SalesResult {
  readonly fair: Fair;
}

/** What selling took besides the bars. */
export interface SellingCosts {
  readonly stallAndTravel: Exact;
  readonly hours: Exact;
}

/** Sums up one fair from its lines in Sales. Fails where a bar sold has no cost yet. */
export function fairResult(book: Book, fair: Fair): Result<FairResult> {
  const sales = book.sales.filter((sale) => nameKey(sale.fair) === nameKey(fair.fair));
  const costs = {
    stallAndTravel: sum([fair.stallFee, fair.travel, fair.otherCost].map(exact)),
    hours: exact(fair.hours ?? 0),
  };
  return andThen(salesResult(book, sales, costs), (result) => answer({ fair, ...result }));
}

/** Sums up any lines of Sales, at a fair or over the counter. Fails where a bar sold has no cost yet. */
export function salesResult(
  book: Book,
  sales: readonly Sale[],
  selling: SellingCosts = { stallAndTravel: zero, hours: zero },
): Result<SalesResult> {
  const costs = all(
    sales.map((sale) =>
      andThen(fullCostOfBar(book, sale.design, sale.soldOn), (cost) =>
        answer(cost.times(exact(sale.bars))),
      ),
    ),
  );
  return andThen(costs, (each) => answer(addUp(book, sales, sum(each), selling)));
}

function addUp(
  book: Book,
  sales: readonly Sale[],
  costOfBars: Exact,
  { stallAndTravel, hours }: SellingCosts,
): SalesResult {
  const taxed = sales.map((sale) => paidFor(book.settings, sale));
  const takings = sum(taxed.map(({ paid }) => paid));
  const tax = sum(taxed.map((line) => line.tax));
  const fees = sum(sales.map((sale) => feesOn(book, sale)));
  const bars = sum(sales.map((sale) => exact(sale.bars)));
  const earned = takings.minus(tax).minus(fees);
  const profit = earned.minus(costOfBars).minus(stallAndTravel);
  const even = bars.gt(0)
    ? breakEven(stallAndTravel, earned.div(bars), costOfBars.div(bars))
    : undefined;
  return {
    bars,
    takings,
    tax,
    fees,
    costOfBars,
    stallAndTravel,
    profit,
    perHour: hours.isZero() ? undefined : profit.div(hours),
    barsToBreakEven: even?.ok === true ? even.value : undefined,
  };
}

/**
 * What one bar sold on a day had cost in full, labour and wear included: the Cost per bar that its
 * batches recorded (averaged over their good bars), or COSTPERBAR where none was recorded by then.
 */
function fullCostOfBar(book: Book, design: Design, soldOn: Day): Result<Exact> {
  let bars = zero;
  let cost = zero;
  for (const batch of book.batches.values()) {
    const counts =
      batch.design === design &&
      wholeDay(batch.poured) <= wholeDay(soldOn) &&
      !isUndone(book, batch);
    if (!counts || batch.costPerBar === undefined || batch.good === undefined) continue;
    bars = bars.plus(exact(batch.good));
    cost = cost.plus(exact(batch.costPerBar).times(exact(batch.good)));
  }
  if (bars.gt(0)) return answer(cost.div(bars));
  return andThen(barCost(book, design, USUAL_BARS, soldOn), ({ perBar }) => answer(perBar));
}
