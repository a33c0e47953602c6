import type { Material } from '../book/book.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import type { MaterialNeed, MeltPlan } from './melt-plan.ts';

/** Materials that a plan takes from stock, each once, in stock units, by kind of use and name. */
export const materialNeeds = oncePer((plan: MeltPlan): readonly MaterialNeed[] =>
  Array.from(materialQuantities(plan), ([material, quantity]) => ({ material, quantity })).sort(
    (a, b) => kindRank(a) - kindRank(b) || compareNames(a.material.name, b.material.name),
  ),
);

/** The same by material, in no order. */
export function materialQuantities(plan: MeltPlan): ReadonlyMap<Material, Exact> {
  const byMaterial = new Map<Material, Exact>();
  const add = (material: Material, quantity: Exact): void => {
    byMaterial.set(material, (byMaterial.get(material) ?? zero).plus(quantity));
  };
  for (const { ingredients } of plan.melts) {
    for (const { ingredient, quantity } of ingredients) {
      if (ingredient.kind === 'material') add(ingredient.material, quantity);
    }
  }
  for (const { material, quantity } of plan.added) add(material, quantity);
  return byMaterial;
}

const kinds: readonly string[] = ['base', 'colourant', 'fragrance', 'extra', 'packaging'];
const kindRank = ({ material }: MaterialNeed): number => kinds.indexOf(material.kind);
