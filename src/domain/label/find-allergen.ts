import { nameKey } from '../kernel/names.ts';
import { type Allergen, allergens } from './allergens.ts';

const byName = new Map<string, Allergen>();
const beginnings: { readonly start: string; readonly allergen: Allergen }[] = [];
for (const allergen of allergens) {
  for (const name of [allergen.name, ...allergen.cas, ...allergen.also]) {
    if (name.endsWith('*')) beginnings.push({ start: nameKey(name.slice(0, -1)), allergen });
    else byName.set(nameKey(name), allergen);
  }
}

/** The allergen of the dated list that a name, a CAS number or a plant's own name means, if any. */
export function findAllergen(name: string): Allergen | undefined {
  // Everyday names often stand in brackets: Lavandula Angustifolia (Lavender) Oil.
  const key = nameKey(name.replace(/\([^)]*\)/gu, ' '));
  return (
    byName.get(key) ??
    beginnings.find(({ start }) => key === start || key.startsWith(`${start} `))?.allergen
  );
}
