import type { Material, Soap } from '../book/book.ts';
import { oncePer } from '../kernel/once-per.ts';

/** The materials that a soap consists of, through all its blends. */
export const materialsIn = oncePer((soap: Soap): ReadonlySet<Material> => {
  const found = new Set<Material>();
  for (const { ingredient } of soap.lines) {
    if (ingredient.kind === 'material') found.add(ingredient.material);
    else for (const material of materialsIn(ingredient.soap)) found.add(material);
  }
  return found;
});
