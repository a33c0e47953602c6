import { dice } from '../kernel/dice.ts';
import { type SimulatedStock, simulateStock, type WatchedStock } from './simulate-stock.ts';

const YEAR = 365;
/** Years to choose from. */
const TRIED = 25;
/** How long orders take is rolled apart from use, so that two points meet the same days of use. */
const WAITS = 1000;

/**
 * A simulated year to show, by its number: the first whose waits for an order went as many years' did on
 * the whole, so that no picture flatters a point or wrongs it.
 */
export function typicalYear(stock: WatchedStock, servicePercent: number): number {
  let [nearest, best] = [Infinity, 1];
  for (let year = 1; year <= TRIED; year += 1) {
    const { waits, covered } = playYear(stock, year);
    const far = waits === 0 ? Infinity : Math.abs((covered / waits) * 100 - servicePercent);
    if (far < nearest) [nearest, best] = [far, year];
  }
  return best;
}

/** One simulated year by its number. */
export function playYear(stock: WatchedStock, year: number): SimulatedStock {
  return simulateStock(stock, stock.point + stock.lot, YEAR, dice(year), dice(WAITS + year));
}
