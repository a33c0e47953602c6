import type { Book, Material, Soap } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { all, answer, type Result, andThen } from '../kernel/result.ts';
import { unitCost } from '../stock/valuation.ts';

/** What each gram of a soap consists of, through all its blends, in stock units of materials. */
export const materialsPerG = oncePer((soap: Soap): ReadonlyMap<Material, Exact> => {
  const shares = new Map<Material, Exact>();
  for (const { ingredient, g, stockPerG } of soap.lines) {
    const share = g.div(soap.recipeG);
    const parts: Iterable<readonly [Material, Exact]> =
      ingredient.kind === 'material'
        ? [[ingredient.material, stockPerG]]
        : materialsPerG(ingredient.soap);
    for (const [material, quantity] of parts) {
      shares.set(material, (shares.get(material) ?? zero).plus(quantity.times(share)));
    }
  }
  return shares;
});

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
