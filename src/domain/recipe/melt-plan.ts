import type { Book, Design, Layer, Material, Mold, Soap } from '../book/book.ts';
import { leftoverName, spareName } from '../book/find.ts';
import { addUnder } from '../kernel/add-under.ts';
import {
  addTo,
  divideUp,
  type Exact,
  exact,
  least,
  one,
  roundUpTo,
  sum,
  zero,
} from '../kernel/exact.ts';
import { oncePer } from '../kernel/once-per.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { handAmount } from './hand-amount.ts';
import { pouringOrder } from './pouring-order.ts';
import { type WeighedIngredient, weighByHand, weighExactly } from './weigh-out.ts';

/** Everything that a number of bars of a design needs, before any stock is looked at for shortage. */
export interface MeltPlan {
  readonly design: Design;
  /** Good bars wanted. */
  readonly bars: number;
  /** Bars to start so that as many come out good. */
  readonly barsToStart: Exact;
  /** The step that melts are rounded up to; 0 for none. */
  readonly scaleStepG: Exact;
  /** One melt for each soap, in pouring order. */
  readonly melts: readonly Melt[];
  /** Scent, paint and packaging, in stock units. */
  readonly added: readonly MaterialNeed[];
}

/** One melting of one soap: for its own tiles, embeds and pours and for the blends made from it. */
export interface Melt {
  readonly soap: Soap;
  readonly shapes: readonly Shaping[];
  readonly pouredG: Exact;
  readonly blendedG: Exact;
  /** Fills with their scrape, pours and blends. */
  readonly neededG: Exact;
  /** `neededG` rounded up to the scale step. */
  readonly meltG: Exact;
  /** Leftover soap of this colour melted first; part of `meltG`. */
  readonly remeltG: Exact;
  readonly ingredients: readonly WeighedIngredient[];
  /** What remains of the melt, with the scrape. */
  readonly leftoverG: Exact;
}

/** Whole fills of one mold with one soap. */
export interface Shaping {
  readonly mold: Mold;
  readonly piecesNeeded: Exact;
  /** Taken from spare pieces on hand. */
  readonly piecesFromSpares: Exact;
  readonly fills: Exact;
  readonly soapG: Exact;
  readonly scrapeG: Exact;
  /** Pieces poured beyond need. */
  readonly sparePieces: Exact;
}

export interface MaterialNeed {
  readonly material: Material;
  /** In the material's stock unit. */
  readonly quantity: Exact;
}

/** Leftover soap and spare pieces on hand, by item name; nothing of a name is 0. */
export type OnHandByName = (itemName: string) => Exact;

/** Plans as if no leftovers or spares were there. */
export const noLeftovers: OnHandByName = () => zero;

/** A picogram: what thirds lose in the fortieth digit must not tip a melt over the next scale step. */
const GRAM_DECIMALS = 12;

/** More than a lifetime of bars; a slip of the finger beyond it would only fill the screen with noughts. */
const MOST_BARS = 1_000_000;

/** How amounts are made out: just as the recipe says, or as a hand can measure them. */
interface Measuring {
  readonly weigh: (soap: Soap, g: Exact, scaleStepG: Exact) => WeighedIngredient[];
  readonly add: (need: MaterialNeed, scaleStepG: Exact) => MaterialNeed;
}

const exactly: Measuring = { weigh: weighExactly, add: (need) => need };

const byHand: Measuring = {
  weigh: weighByHand,
  add: ({ material, quantity }, scaleStepG) => ({
    material,
    quantity: handAmount(quantity, material.unit, scaleStepG),
  }),
};

type Asked = readonly [
  design: Design,
  bars: number,
  settings: Book['settings'],
  onHand: OnHandByName,
];

/** Works out the melts for whole bars (contract §3). Fails unless `bars` is a whole number from 1. */
export const planMelts = (...asked: Asked): Result<MeltPlan> => plan(asked, exactly);

/**
 * The same in amounts that a scale and a dropper can do, for all that is weighed or recorded. A colour
 * is melted for what its blends take when weighed so, which can come to a scale step more or less.
 */
export const planByHand = (...asked: Asked): Result<MeltPlan> => plan(asked, byHand);

function plan(asked: Asked, measuring: Measuring): Result<MeltPlan> {
  const [design, bars] = asked;
  if (!Number.isInteger(bars) || bars < 1)
    return wrong(`Bars is ${bars}. Give a whole number, 1 or more.`);
  if (bars > MOST_BARS) return wrong(`Bars is ${bars}. Give at most ${MOST_BARS}.`);
  if (design.layers.length === 0)
    return wrong(`${design.name} has no lines in Layers. Add what one bar is made of.`);
  return answer(melted(asked, measuring));
}

/** `planMelts` for a whole number of bars from 1 of a design that has layers, however many. */
export const meltsFor = (...asked: Asked): MeltPlan => melted(asked, exactly);

function melted([design, bars, settings, onHand]: Asked, measuring: Measuring): MeltPlan {
  const barsToStart = exact(bars).div(design.yieldShare).ceil();
  const order = pouringOrder(design);
  const layersOf = layersBySoap(design);
  const blended = new Map<string, Exact>();
  const melts: Melt[] = [];
  // Blends first: what they take of a colour is added to it before that colour is rounded up.
  for (const soap of [...order].reverse()) {
    const layers = layersOf.get(soap.name) ?? [];
    const shapes = planShapes(layers, soap, barsToStart, onHand);
    const pouredG = sum(
      layers.flatMap((layer) => (layer.part === 'pour' ? [layer.gPerBar.times(barsToStart)] : [])),
    );
    const melt = planMelt(
      { soap, shapes, pouredG, blendedG: blended.get(soap.name) ?? zero },
      settings.scaleStepG,
      onHand,
      measuring,
    );
    for (const {
      line: { ingredient },
      g,
    } of melt.ingredients) {
      if (ingredient.kind !== 'soap') continue;
      addTo(blended, ingredient.soap.name, g);
    }
    melts.push(melt);
  }
  melts.reverse();
  const added = planAdded(design, barsToStart).map((need) =>
    measuring.add(need, settings.scaleStepG),
  );
  return { design, bars, barsToStart, scaleStepG: settings.scaleStepG, melts, added };
}

/** Layers made of soap, by its name. */
type SoapLayer = Extract<Layer, { readonly soap: Soap }>;

function layersBySoap({ layers }: Design): ReadonlyMap<string, readonly SoapLayer[]> {
  const bySoap = new Map<string, SoapLayer[]>();
  for (const layer of layers) if ('soap' in layer) addUnder(bySoap, layer.soap.name, layer);
  return bySoap;
}

function planShapes(
  layers: readonly SoapLayer[],
  soap: Soap,
  bars: Exact,
  onHand: OnHandByName,
): Shaping[] {
  const byMold = new Map<Mold, Exact>();
  for (const layer of layers)
    if (layer.part !== 'pour') addTo(byMold, layer.mold, layer.perBar.times(bars));
  return [...byMold].map(([mold, piecesNeeded]) => {
    const piecesFromSpares = least(piecesNeeded, onHand(spareName(soap, mold)));
    const toPour = piecesNeeded.minus(piecesFromSpares);
    const fills = divideUp(toPour, mold.cavities);
    return {
      mold,
      piecesNeeded,
      piecesFromSpares,
      fills,
      soapG: soapForFills(mold, fills),
      scrapeG: fills.times(mold.scrapeG),
      sparePieces: fills.times(mold.cavities).minus(toPour),
    };
  });
}

/** Grams of soap that go into whole fills of a mold, the scrape with them. */
export function soapForFills(mold: Mold, fills: Exact): Exact {
  return fills.times(mold.fillG.plus(mold.scrapeG));
}

function planMelt(
  { soap, shapes, pouredG, blendedG }: Pick<Melt, 'soap' | 'shapes' | 'pouredG' | 'blendedG'>,
  scaleStepG: Exact,
  onHand: OnHandByName,
  { weigh }: Measuring,
): Melt {
  const neededG = sum(shapes.map((shape) => shape.soapG))
    .plus(pouredG)
    .plus(blendedG)
    .toDecimalPlaces(GRAM_DECIMALS);
  const meltG = roundUpTo(neededG, scaleStepG);
  const remeltG = least(meltG, onHand(leftoverName(soap)));
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

function planAdded(design: Design, bars: Exact): MaterialNeed[] {
  const byMaterial = new Map<Material, Exact>();
  for (const layer of design.layers) {
    if (!('material' in layer)) continue;
    addTo(byMaterial, layer.material, layer.quantityPerBar.times(bars));
  }
  return [...byMaterial].map(([material, quantity]) => ({ material, quantity }));
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
