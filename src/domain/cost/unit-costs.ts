import type { Book, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { all, answer, type Result, andThen } from '../kernel/result.ts';
import { unitCost } from '../stock/valuation.ts';

/** Money for quantities of materials at their unit cost on a day, a line each. Fails on the first without a cost. */
export function costOf(
  book: Book,
  quantities: ReadonlyMap<Material, Exact>,
  asOf: Day,
): Result<{ readonly material: Material; readonly cost: Exact }[]> {
  return all(
    [...quantities].map(([material, quantity]) =>
      andThen(unitCost(book, itemOfMaterial(material), asOf), (unit) =>
        answer({ material, cost: unit.times(quantity) }),
      ),
    ),
  );
}
