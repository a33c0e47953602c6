import type { MaterialNeed, Melt } from '../../../src/domain/recipe/melt.ts';

/** A material kept in oz is not taken by the gram. */
export const meant = (need: MaterialNeed, melt: Melt) => need.quantity.minus(melt.neededG);
