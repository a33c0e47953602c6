import { findMaterial } from '../src/domain/book/find.ts';
import { andThen } from '../src/domain/kernel/result.ts';
import { convert } from '../src/domain/measure/convert.ts';
import { settleNumber } from './answer.ts';
import { exactArgument, optionalName } from './arguments.ts';
import { bookArgument } from './books.ts';
import { CellFailure } from './failure.ts';

/**
 * Converts a quantity between units; between weight, volume and drops by the material's density and drops.
 * @customfunction AMOUNT
 * @param {any} quantity How much.
 * @param {any} from Its unit: g, kg, oz, lb, ml, l, fl oz, tsp, drops and others.
 * @param {any} to The unit wanted.
 * @param {any} [material] A material, where weight and volume or drops meet; without one, 20 drops are 1 ml.
 * @param {any} [book] The cell named Book, with a material.
 * @returns {number} The quantity in the unit wanted.
 */
export function amount(quantity: any, from: any, to: any, material?: any, book?: any): number {
  const value = exactArgument(quantity, 'quantity');
  const source = unitArgument(from, 'from');
  const target = unitArgument(to, 'to');
  const name = optionalName(material, 'material');
  if (name === undefined) return settleNumber(convert(value, source, target));
  if (optionalName(book, 'book') === undefined) {
    throw new CellFailure(
      '#VALUE!',
      `book is blank. Give the cell named Book, which knows ${name}.`,
    );
  }
  return settleNumber(
    andThen(findMaterial(bookArgument(book), name), (found) =>
      convert(value, source, target, found),
    ),
  );
}

function unitArgument(argument: unknown, what: string): string {
  const unit = optionalName(argument, what);
  if (unit === undefined)
    throw new CellFailure('#VALUE!', `${what} is blank. Give a unit, such as g, ml or oz.`);
  return unit;
}
