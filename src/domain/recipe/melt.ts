import { asGrams, asStock, type Grams, type InStock } from '../kernel/measured.ts';
import type { Layer, Material, Mold, Soap } from '../book/book.ts';
import { leftoverName, spareName } from '../book/find.ts';
import { addTo, divideUp, type Exact, least, one, roundUpTo, sum, zero } from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { handQuantity } from './hand-amount.ts';
import { type WeighedIngredient, weighByHand, weighExactly } from './weigh-out.ts';

/** One melting of one soap: for its own tiles, embeds and pours and for the blends made from it. */
export interface Melt {
  readonly soap: Soap;
  readonly shapes: readonly Shaping[];
  readonly pouredG: Grams;
  readonly blendedG: Grams;
  /** Fills with their scrape, pours and blends. */
  readonly neededG: Grams;
  /** `neededG` rounded up to the scale step. */
  readonly meltG: Grams;
  /** Leftover soap of this colour melted first; part of `meltG`. */
  readonly remeltG: Grams;
  readonly ingredients: readonly WeighedIngredient[];
  /** What remains of the melt, with the scrape. */
  readonly leftoverG: Grams;
}

/** Whole fills of one mold with one soap. */
export interface Shaping {
  readonly mold: Mold;
  readonly piecesNeeded: Exact;
  /** Taken from spare pieces on hand. */
  readonly piecesFromSpares: Exact;
  readonly fills: Exact;
  readonly soapG: Grams;
  readonly scrapeG: Grams;
  /** Pieces poured beyond need; those that break are among them. */
  readonly sparePieces: Exact;
}

export interface MaterialNeed {
  readonly material: Material;
  /** In the material's stock unit. */
  readonly quantity: InStock;
}

/** Leftover soap and spare pieces on hand, by item name; nothing of a name is 0. */
export type OnHandByName = (itemName: string) => Exact;

/** Plans as if no leftovers or spares were there. */
export const noLeftovers: OnHandByName = () => zero;

/** A picogram: what thirds lose in the fortieth digit must not tip a melt over the next scale step. */
const GRAM_DECIMALS = 12;

/** How amounts are made out: just as the recipe says, or as a hand can measure them. */
export interface Measuring {
  readonly weigh: (soap: Soap, g: Exact, scaleStepG: Exact) => WeighedIngredient[];
  readonly add: (need: MaterialNeed, scaleStepG: Exact) => MaterialNeed;
}

export const measuredExactly: Measuring = { weigh: weighExactly, add: (need) => need };

export const measuredByHand: Measuring = {
  weigh: weighByHand,
  add: ({ material, quantity }, scaleStepG) => ({
    material,
    quantity: asStock(handQuantity(quantity, material.unit, scaleStepG)),
  }),
};

/** Layers made of soap. */
export type SoapLayer = Extract<Layer, { readonly soap: Soap }>;

/** A layer, and of how many bars. */
export interface LayerOfBars {
  readonly layer: SoapLayer;
  readonly bars: Exact;
}

/** The pieces of a soap that all the layers made of it take, in whole fills of each mold. */
export function planShapes(
  soap: Soap,
  layers: readonly LayerOfBars[],
  onHand: OnHandByName,
): Shaping[] {
  const byMold = new Map<Mold, Exact>();
  for (const { layer, bars } of layers)
    if (layer.part !== 'pour') addTo(byMold, layer.mold, layer.perBar.times(bars));
  return [...byMold].map(([mold, piecesNeeded]) => {
    const piecesFromSpares = least(piecesNeeded, onHand(spareName(soap, mold)));
    const toPour = piecesNeeded.minus(piecesFromSpares);
    // The fills whose pieces that don't break are enough (contract §3.1), without a division that has no last digit.
    const fills = divideUp(toPour, wholePieces(mold));
    return {
      mold,
      piecesNeeded,
      piecesFromSpares,
      fills,
      soapG: asGrams(soapForFills(mold, fills)),
      scrapeG: asGrams(fills.times(mold.scrapeG)),
      sparePieces: fills.times(mold.cavities).minus(toPour),
    };
  });
}

/** Pieces of one fill that come out whole, as a long run of fills has it. */
export const wholePieces = ({ cavities, lossShare }: Mold): Exact =>
  cavities.times(one.minus(lossShare));

/** Grams of soap that go into whole fills of a mold, the scrape with them. */
export function soapForFills(mold: Mold, fills: Exact): Exact {
  return fills.times(mold.fillG.plus(mold.scrapeG));
}

/** One melt for all that its soap goes into. */
export function planMelt(
  { soap, shapes, pouredG, blendedG }: Pick<Melt, 'soap' | 'shapes' | 'pouredG' | 'blendedG'>,
  scaleStepG: Exact,
  onHand: OnHandByName,
  { weigh }: Measuring,
): Melt {
  const soapG = shapes.map((shape) => shape.soapG);
  const neededG = asGrams(sum([...soapG, pouredG, blendedG]).toDecimalPlaces(GRAM_DECIMALS));
  const meltG = asGrams(roundUpTo(neededG, scaleStepG));
  const remeltG = asGrams(least(meltG, onHand(leftoverName(soap))));
  const scrapeG = sum(shapes.map((shape) => shape.scrapeG));
  return {
    soap,
    shapes,
    pouredG,
    blendedG,
    neededG,
    meltG,
    remeltG,
    ingredients: weigh(soap, meltG.minus(remeltG), scaleStepG),
    leftoverG: meltG.minus(neededG).plus(scrapeG),
  };
}

/** Share by weight of base-kind materials in a soap, through all its blends: 0 to 1. */
export const baseShare = oncePer((soap: Soap): Exact => {
  const baseG = sum(
    soap.lines.map(({ ingredient, g }) =>
      ingredient.kind === 'soap'
        ? g.times(baseShare(ingredient.soap))
        : ingredient.material.kind === 'base'
          ? g
          : zero,
    ),
  );
  return soap.base === undefined ? baseG.div(soap.recipeG) : one;
});
