import { type BarCost, barCost } from '../src/domain/cost/bar-cost.ts';
import { findDesign } from '../src/domain/book/find.ts';
import { hundred, toCell } from '../src/domain/kernel/exact.ts';
import { andThen } from '../src/domain/kernel/result.ts';
import { USUAL_BARS } from '../src/domain/recipe/plain-plan.ts';
import { settle } from './answer.ts';
import { dayArgument, nameArgument, optionalCount } from './arguments.ts';
import { bookArgument } from './books.ts';

/**
 * Full cost of one good bar: material, labour, setup, mold wear and overhead, lost bars included.
 * @customfunction COSTPERBAR
 * @param {any} design Name of the design, as in Designs.
 * @param {any} book The cell named Book.
 * @param {any} [bars] Good bars in the batch; 12 if blank.
 * @param {any} [asOf] At the costs of this day; today if blank.
 * @returns {number} Money for one bar.
 */
export function costPerBar(design: any, book: any, bars?: any, asOf?: any): number {
  return toCell(costArgument(design, book, bars, asOf).perBar);
}

/**
 * Where the cost of one good bar goes, line by line.
 * @customfunction COSTLINES
 * @param {any} design Name of the design, as in Designs.
 * @param {any} book The cell named Book.
 * @param {any} [bars] Good bars in the batch; 12 if blank.
 * @param {any} [asOf] At the costs of this day; today if blank.
 * @returns {any[][]} Line, Per bar, Share %.
 */
export function costLines(design: any, book: any, bars?: any, asOf?: any): any[][] {
  const { perBar, lines } = costArgument(design, book, bars, asOf);
  const rows = lines.map((line) => [
    line.name,
    toCell(line.perBar),
    perBar.isZero() ? 0 : toCell(line.perBar.div(perBar).times(hundred)),
  ]);
  return [['Line', 'Per bar', 'Share %'], ...rows];
}

function costArgument(design: unknown, book: unknown, bars: unknown, asOf: unknown): BarCost {
  const pourBook = bookArgument(book);
  const count = optionalCount(bars, 'bars') ?? USUAL_BARS;
  const day = dayArgument(asOf, 'as of');
  return settle(
    andThen(findDesign(pourBook, nameArgument(design, 'design')), (found) =>
      barCost(pourBook, found, count, day),
    ),
  );
}
