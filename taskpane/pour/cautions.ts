import type { Material } from '../../src/domain/book/book.ts';
import { benchUnitOf } from '../../src/domain/measure/units.ts';
import { materialNeeds } from '../../src/domain/recipe/material-needs.ts';
import type { MeltPlan } from '../../src/domain/recipe/melt-plan.ts';

/** Short warnings for one pour, only those that apply (common practice, no substitute for the rules). */
export function cautionsFor(plan: MeltPlan): string[] {
  const materials = materialNeeds(plan).map(({ material }) => material);
  const melts = plan.melts.some(({ meltG }) => !meltG.isZero());
  const applying = [
    ...(melts ? [HOT, MICROWAVE] : []),
    ...(materials.some(isAlcohol) ? [ALCOHOL] : []),
    ...(materials.some(isPowder) ? [POWDER] : []),
    ...(materials.some(({ kind }) => kind === 'fragrance') ? [FRAGRANCE] : []),
  ];
  return applying.length === 0 ? [] : [...applying, RULES];
}

const HOT =
  'Melted base is about 60 °C or more and sticks to skin: it burns. Cover arms, keep children and pets away.';
const MICROWAVE =
  'In a microwave, short bursts with a stir between: it can overheat without boiling, then spurt.';
const ALCOHOL = 'Alcohol burns easily: no flame or hot plate near it, windows open.';
const POWDER =
  'Dry powder (mica, pigment and the like): measure it slowly and don’t breathe its dust; a mask helps.';
const FRAGRANCE =
  'Undiluted fragrance irritates skin and eyes and can burn: wear gloves, keep it from flame, wipe up spills.';
const RULES = 'Your local rules and the supplier’s sheet decide.';

/** Fatty alcohols in a base and benzyl alcohol in a scent are not what catches fire on the bench. */
function isAlcohol({ kind, name, inci }: Material): boolean {
  if (kind === 'base' || kind === 'packaging') return false;
  return (
    /\b(?:isopropyl|isopropanol|ethanol|rubbing alcohol|ipa)\b/iu.test(name) ||
    (kind === 'extra' && /\balcohol\b/iu.test(name)) ||
    inci
      .split(';')
      .some((part) => /^\s*(?:isopropyl alcohol|alcohol(?: denat\.?)?)[\s\d.]*$/iu.test(part))
  );
}

/** What is kept in g is taken for a powder unless its name says otherwise: a dye or an oxide need not say mica. */
function isPowder(material: Material): boolean {
  const { kind, name, inci, unit } = material;
  if ((kind !== 'colourant' && kind !== 'extra') || isAlcohol(material)) return false;
  return (benchUnitOf(unit) === 'g' && !LIQUID.test(name)) || /\bmica\b/iu.test(`${name} ${inci}`);
}

const LIQUID = /\b(?:alcohol|butter|drops|glycerine?|honey|liquid|oil|water)\b/iu;
