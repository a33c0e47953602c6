import { asStock } from '../kernel/measured.ts';
import type { Material } from '../book/book.ts';
import { addTo, type Exact } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import type { MaterialNeed } from './melt.ts';
import type { Sitting } from './melt-plan.ts';

/** Two pounds taken in thirds are two pounds: the fortieth digit must not ask for a third one. */
const NOISE_DECIMALS = 12;

/** Materials that a plan takes from stock, each once, in stock units, by kind of use and name. */
export const materialNeeds = oncePer(({ melts, added }: Sitting): readonly MaterialNeed[] => {
  const byMaterial = new Map<Material, Exact>();
  for (const { ingredients } of melts) {
    for (const {
      line: { ingredient },
      quantity,
    } of ingredients) {
      if (ingredient.kind === 'material') addTo(byMaterial, ingredient.material, quantity);
    }
  }
  for (const { material, quantity } of added) addTo(byMaterial, material, quantity);
  return Array.from(byMaterial, ([material, quantity]) => ({
    material,
    quantity: asStock(quantity.toDecimalPlaces(NOISE_DECIMALS)),
  })).sort((a, b) => kindRank(a) - kindRank(b) || compareNames(a.material.name, b.material.name));
});

const kinds: readonly string[] = ['base', 'colourant', 'fragrance', 'extra', 'packaging'];
const kindRank = ({ material }: MaterialNeed): number => kinds.indexOf(material.kind);
