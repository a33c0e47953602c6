import type { Material } from '../book/book.ts';
import type { Settings } from '../book/settings.ts';
import { Exact } from '../kernel/exact.ts';
import { andThen, answer, type Result, wrong } from '../kernel/result.ts';
import type { Allergen } from './allergens.ts';
import { findAllergen } from './find-allergen.ts';
import { readShares } from './shares.ts';

/** One entry of a material's Allergens cell. */
export interface AllergenEntry {
  /** The dated list's name where the entry is on it, else the name as typed. */
  readonly name: string;
  readonly listed: Allergen | undefined;
  /** Percent of the material; undefined where the cell gives none. */
  readonly percent: Exact | undefined;
}

/** What a maker may type to say that a document names no allergen. */
const NONE = /^(?:none|no allergens|nil|-|–|0)$/iu;

/** Reads a material's Allergens; a cell that says "none" has no entries. Fails with a sentence. */
export function allergensOf(material: Material): Result<readonly AllergenEntry[]> {
  if (NONE.test(material.allergens.trim())) return answer([]);
  const shares = readShares(material.allergens);
  if (!shares.ok)
    return wrong(`Allergens of ${material.name} in Materials ${shares.failure.sentence}. Mend it.`);
  return andThen(shares, (list) =>
    answer(
      list.map(({ name, percent }) => {
        const listed = findAllergen(name);
        return { name: listed?.name ?? name, listed, percent };
      }),
    ),
  );
}

/**
 * Percent of the bar above which (strictly) an allergen is named: 0.01 % in what is rinsed off,
 * 0.001 % in what stays on the skin (Reg. (EC) 1223/2009, Annex III; recital of Reg. (EU) 2023/1545).
 */
export function allergenThreshold(skinStay: Settings['skinStay']): Exact {
  return new Exact(skinStay === 'rinse-off' ? '0.01' : '0.001');
}
