import { findDesign } from '../src/domain/book/find.ts';
import { type Exact, toCell } from '../src/domain/kernel/exact.ts';
import { andThen } from '../src/domain/kernel/result.ts';
import { checksOf } from '../src/domain/label/checks.ts';
import { ingredientsText } from '../src/domain/label/ingredients.ts';
import { settle } from './answer.ts';
import { nameArgument } from './arguments.ts';
import { bookArgument } from './books.ts';
import { today } from './clock.ts';

/**
 * The ingredients for a design's label: by weight, colour additives last, allergens above the threshold named.
 * @customfunction INGREDIENTS
 * @param {any} design Name of the design, as in Designs.
 * @param {any} book The cell named Book.
 * @returns {string} The text.
 */
export function ingredients(design: any, book: any): string {
  const pourBook = bookArgument(book);
  return settle(
    andThen(findDesign(pourBook, nameArgument(design, 'design')), (found) =>
      ingredientsText(pourBook, found),
    ),
  );
}

/**
 * Limits, names, net weight and lots of a design as ok, over or unknown; an aid, not an approval.
 * @customfunction CHECKS
 * @param {any} design Name of the design, as in Designs.
 * @param {any} book The cell named Book.
 * @returns {any[][]} Check, Value, Limit, Result, Source.
 */
export function checks(design: any, book: any): any[][] {
  const pourBook = bookArgument(book);
  const lines = settle(
    andThen(findDesign(pourBook, nameArgument(design, 'design')), (found) =>
      checksOf(pourBook, found, today()),
    ),
  );
  return [
    ['Check', 'Value', 'Limit', 'Result', 'Source'],
    ...lines.map(({ check, value, limit, result, source }) => [
      check,
      asCell(value),
      asCell(limit),
      result,
      source,
    ]),
  ];
}

const asCell = (value: Exact | string): number | string =>
  typeof value === 'string' ? value : toCell(value);
