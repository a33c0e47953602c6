import type { Material, Soap } from '../book/book.ts';
import { addTo, type Exact } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';

/** What each gram of a soap consists of, through all its blends, in stock units of materials. */
export const materialsPerG = oncePer((soap: Soap): ReadonlyMap<Material, Exact> => {
  const shares = new Map<Material, Exact>();
  for (const { ingredient, g, stockPerG } of soap.lines) {
    const share = g.div(soap.recipeG);
    const parts: Iterable<readonly [Material, Exact]> =
      ingredient.kind === 'material'
        ? [[ingredient.material, stockPerG]]
        : materialsPerG(ingredient.soap);
    for (const [material, quantity] of parts) addTo(shares, material, quantity.times(share));
  }
  return shares;
});
