import { count } from '../../src/domain/kernel/count.ts';
import type { SalesResult } from '../../src/domain/sell/fair-result.ts';
import { moneyText } from '../format.ts';

/** A result as lines of a list, costs with a minus. */
export function resultLines(result: SalesResult, currency: string): (readonly [string, string])[] {
  const shown = (amount: SalesResult['profit']): string => moneyText(amount, currency);
  const { bars, takings, tax, fees, costOfBars, stallAndTravel, profit, perHour } = result;
  const costs = [
    ['Sales tax', tax],
    ['Fees', fees],
    ['Full cost of the bars', costOfBars],
    ['Stall, travel and other', stallAndTravel],
  ] as const;
  return [
    ['Bars sold', bars.toString()],
    ['Takings', shown(takings)],
    ...costs
      .filter(([, amount]) => !amount.isZero())
      .map(([name, amount]) => [name, shown(amount.neg())] as const),
    [profit.isNegative() ? 'Loss' : 'Profit', shown(profit.abs())],
    ...(perHour === undefined ? [] : [['Per hour', shown(perHour)] as const]),
  ];
}

/** The result in a sentence or two. */
export function resultSentence(result: SalesResult, currency: string): string {
  const { bars, costOfBars, stallAndTravel, profit, perHour, barsToBreakEven: even } = result;
  if (!bars.gt(0)) return 'No bars are sold.';
  const brought = profit.isNegative()
    ? `It cost ${moneyText(profit.abs(), currency)} more than it brought in.`
    : `It brought home ${moneyText(profit, currency)}${
        perHour === undefined ? '' : `, which is ${moneyText(perHour, currency)} an hour`
      }.`;
  if (stallAndTravel.isZero()) return brought;
  if (even === undefined) {
    const each = moneyText(costOfBars.div(bars), currency);
    return `${brought} At these prices a bar brings in less than the ${each} it costs, so no number of bars would pay for the stall.`;
  }
  const pays = `${count(even, 'bar')} at these prices ${even.eq(1) ? 'pays' : 'pay'} for stall and travel`;
  return `${brought} ${pays}; you sold ${bars.toString()}.`;
}
