import type { Book, Design, Material, Soap } from '../book/book.ts';
import { addTo, type Exact, hundred, sum, zero } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import { oncePer } from '../kernel/once-per.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { convert } from '../measure/convert.ts';
import { benchUnitOf } from '../measure/units.ts';

/** What one finished bar weighs and is made of, by the recipe; packaging and what dries off are left out. */
export interface Composition {
  readonly totalG: Exact;
  /** By name. Grams of each material that stay in one bar. */
  readonly materials: readonly { readonly material: Material; readonly g: Exact }[];
  /** Materials counted by the piece, which have no weight here. */
  readonly unweighed: readonly Material[];
  /** Materials whose weight rests on a density of 1 g/ml that nobody has measured. */
  readonly densityAssumed: readonly Material[];
}

/**
 * One finished bar by weight, of each material what stays in it (Stays %): tiles and embeds as pieces × Fill g ÷ Cavities, pours,
 * scent and paint, each soap taken apart through its blends. Fails where the design has no layers.
 */
export function compositionOf(book: Book, design: Design): Result<Composition> {
  if (design.layers.length === 0)
    return wrong(`${design.name} has no lines in Layers. Add what one bar is made of.`);
  const grams = new Map<Material, Exact>();
  const unweighed = new Set<Material>();
  const add = (material: Material, g: Exact): void => {
    const staysG = g.times(material.staysShare);
    if (material.kind !== 'packaging' && !staysG.isZero()) addTo(grams, material, staysG);
  };
  for (const layer of design.layers) {
    if ('soap' in layer) {
      const g =
        layer.part === 'pour'
          ? layer.gPerBar
          : layer.perBar.times(layer.mold.fillG).div(layer.mold.cavities);
      for (const [material, share] of gramsPerG(layer.soap)) add(material, share.times(g));
    } else if (layer.part !== 'pack') {
      const { material, quantityPerBar } = layer;
      const g = convert(quantityPerBar, material.unit, 'g', material);
      if (g.ok) add(material, g.value);
      else if (material.kind !== 'packaging' && !material.staysShare.isZero())
        unweighed.add(material);
    }
  }
  const materials = [...grams]
    .map(([material, g]) => ({ material, g }))
    .sort((a, b) => compareNames(a.material.name, b.material.name));
  return answer({
    totalG: sum(materials.map(({ g }) => g)),
    materials,
    unweighed: [...unweighed].sort((a, b) => compareNames(a.name, b.name)),
    densityAssumed: materials
      .map(({ material }) => material)
      .filter((material) => isDensityAssumed(book, material)),
  });
}

/** Grams of each material in one gram of a soap, through all its blends; many may share one colour. */
const gramsPerG = oncePer((soap: Soap): ReadonlyMap<Material, Exact> => {
  const shares = new Map<Material, Exact>();
  for (const { ingredient, g } of soap.lines) {
    const parts: Iterable<[Material, Exact]> =
      ingredient.kind === 'material' ? [[ingredient.material, g]] : scaled(ingredient.soap, g);
    for (const [material, part] of parts) addTo(shares, material, part.div(soap.recipeG));
  }
  return shares;
});

const scaled = (soap: Soap, g: Exact): [Material, Exact][] =>
  [...gramsPerG(soap)].map(([material, share]) => [material, share.times(g)]);

/** Finer than any label asks, and coarse enough to take back what a division by three lost. */
const SHARE_DECIMALS = 12;

/** Percent of the bar by weight; 0 where the bar weighs nothing. */
export function percentOf(g: Exact, totalG: Exact): Exact {
  return totalG.isZero() ? zero : g.div(totalG).times(hundred).toDecimalPlaces(SHARE_DECIMALS);
}

function isDensityAssumed(book: Book, material: Material): boolean {
  return (
    material.densityGPerMl === undefined &&
    (benchUnitOf(material.unit) === 'ml' ||
      book.assumptions.some(({ kind, about }) => kind === 'density' && about === material.name))
  );
}
