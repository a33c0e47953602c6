import type { Material } from '../../src/domain/book/book.ts';
import { materialNeeds } from '../../src/domain/recipe/material-needs.ts';
import type { MeltPlan } from '../../src/domain/recipe/melt-plan.ts';

/** Short warnings for one pour, only those that apply (common practice, no substitute for the rules). */
export function cautionsFor(plan: MeltPlan): string[] {
  const materials = materialNeeds(plan).map(({ material }) => material);
  const melts = plan.melts.some(({ meltG }) => !meltG.isZero());
  const applying = [
    ...(melts ? [HOT, MICROWAVE] : []),
    ...(materials.some(isAlcohol) ? [ALCOHOL] : []),
    ...(materials.some(isMica) ? [MICA] : []),
  ];
  return applying.length === 0 ? [] : [...applying, RULES];
}

const HOT =
  'Melted base is about 60 °C or more and sticks to skin: it burns. Cover arms, keep children and pets away.';
const MICROWAVE =
  'In a microwave, short bursts with a stir between: it can overheat without boiling, then spurt.';
const ALCOHOL = 'Alcohol burns easily: no flame or hot plate near it, windows open.';
const MICA = 'Mica dust: measure it slowly and don’t breathe it in; a mask helps.';
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

function isMica({ kind, name, inci }: Material): boolean {
  return (kind === 'colourant' || kind === 'extra') && /\bmica\b/iu.test(`${name} ${inci}`);
}
