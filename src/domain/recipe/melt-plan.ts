import { asGrams, asStock, type Grams } from '../kernel/measured.ts';
import type { Book, Design, Material } from '../book/book.ts';
import { addUnder } from '../kernel/add-under.ts';
import { addTo, type Exact, exact, sum, zero } from '../kernel/exact.ts';
import { andThen, answer, type Result, wrong } from '../kernel/result.ts';
import {
  measuredByHand,
  measuredExactly,
  type LayerOfBars,
  type MaterialNeed,
  type Measuring,
  type Melt,
  type OnHandByName,
  planMelt,
  planShapes,
} from './melt.ts';
import { pouringOrder } from './pouring-order.ts';

/** Good bars wanted of a design. */
export interface BarsWanted {
  readonly design: Design;
  readonly bars: number;
}

export interface BarsStarted extends BarsWanted {
  /** Bars to start so that as many come out good. */
  readonly barsToStart: Exact;
}

/** What designs made in one sitting need together: one melt of a colour serves them all (contract §3.9). */
export interface Sitting {
  /** Each design once. */
  readonly batches: readonly BarsStarted[];
  /** The step that melts are rounded up to; 0 for none. */
  readonly scaleStepG: Exact;
  /** One melt for each soap, in pouring order. */
  readonly melts: readonly Melt[];
  /** Scent, paint and packaging, in stock units. */
  readonly added: readonly MaterialNeed[];
}

/** Everything that a number of bars of a design needs, before any stock is looked at for shortage. */
export interface MeltPlan extends BarsStarted, Sitting {}

/** More than a lifetime of bars; a slip of the finger beyond it would only fill the screen with noughts. */
const MOST_BARS = 1_000_000;

type Settings = Pick<Book['settings'], 'scaleStepG'>;
type Asked = readonly [design: Design, bars: number, settings: Settings, onHand: OnHandByName];
type AskedTogether = readonly [
  wanted: readonly BarsWanted[],
  settings: Settings,
  onHand: OnHandByName,
];

/** Works out the melts for whole bars (contract §3). Fails unless `bars` is a whole number from 1. */
export const planMelts = (...asked: Asked): Result<MeltPlan> => plan(asked, measuredExactly);

/**
 * The same in amounts that a scale and a dropper can do, for all that is weighed or recorded. A colour
 * is melted for what its blends take when weighed so, which can come to a scale step more or less.
 */
export const planByHand = (...asked: Asked): Result<MeltPlan> => plan(asked, measuredByHand);

/**
 * The melts of several designs made in one sitting: their needs are summed before fills and melts are
 * rounded up. A design that stands twice is one batch of all its bars. Fails as `planMelts`.
 */
export const planSitting = (...asked: AskedTogether): Result<Sitting> =>
  planTogether(asked, measuredExactly);

/** `planSitting` in the amounts of `planByHand`. */
export const planSittingByHand = (...asked: AskedTogether): Result<Sitting> =>
  planTogether(asked, measuredByHand);

/** `planMelts` for a whole number of bars from 1 of a design that has layers, however many. */
export function meltsFor(...[design, bars, settings, onHand]: Asked): MeltPlan {
  const batch = started({ design, bars });
  return { ...batch, ...melted([batch], settings, onHand, measuredExactly) };
}

function plan([design, bars, settings, onHand]: Asked, measuring: Measuring): Result<MeltPlan> {
  const wanted = { design, bars };
  return andThen(planTogether([[wanted], settings, onHand], measuring), (sitting) =>
    answer({ ...started(wanted), ...sitting }),
  );
}

function planTogether(
  [wanted, settings, onHand]: AskedTogether,
  measuring: Measuring,
): Result<Sitting> {
  const bars = new Map<Design, number>();
  for (const each of wanted) {
    const reason = whyNot(each, wanted.length > 1 ? `Bars of ${each.design.name}` : 'Bars');
    if (reason !== undefined) return wrong(reason);
    bars.set(each.design, (bars.get(each.design) ?? 0) + each.bars);
  }
  const batches = Array.from(bars, ([design, count]) => started({ design, bars: count }));
  return answer(melted(batches, settings, onHand, measuring));
}

function whyNot({ design, bars }: BarsWanted, what: string): string | undefined {
  if (!Number.isInteger(bars) || bars < 1)
    return `${what} is ${bars}. Give a whole number, 1 or more.`;
  if (bars > MOST_BARS) return `${what} is ${bars}. Give at most ${MOST_BARS}.`;
  if (design.layers.length === 0)
    return `${design.name} has no lines in Layers. Add what one bar is made of.`;
  return undefined;
}

const started = ({ design, bars }: BarsWanted): BarsStarted => ({
  design,
  bars,
  barsToStart: exact(bars).div(design.yieldShare).ceil(),
});

function melted(
  batches: readonly BarsStarted[],
  settings: Settings,
  onHand: OnHandByName,
  measuring: Measuring,
): Sitting {
  const layers = batches.flatMap(({ design, barsToStart }) =>
    design.layers.flatMap((layer) => ('soap' in layer ? [{ layer, bars: barsToStart }] : [])),
  );
  const melts = meltsOf(layers, settings, onHand, measuring);
  const added = planAdded(batches).map((need) => measuring.add(need, settings.scaleStepG));
  return { batches, scaleStepG: settings.scaleStepG, melts, added };
}

/** One melt for each soap that layers are made of, or that these are blended from, in pouring order. */
export function meltsOf(
  all: readonly LayerOfBars[],
  settings: Settings,
  onHand: OnHandByName,
  measuring: Measuring,
): Melt[] {
  const order = pouringOrder(all.map(({ layer }) => layer));
  const layersOf = layersBySoap(all);
  const blended = new Map<string, Grams>();
  const melts: Melt[] = [];
  // Blends first: what they take of a colour is added to it before that colour is rounded up.
  for (const soap of [...order].reverse()) {
    const layers = layersOf.get(soap.name) ?? [];
    const shapes = planShapes(soap, layers, onHand);
    const pouredG = sum(
      layers.flatMap(({ layer, bars }) =>
        layer.part === 'pour' ? [layer.gPerBar.times(bars)] : [],
      ),
    );
    const melt = planMelt(
      {
        soap,
        shapes,
        pouredG: asGrams(pouredG),
        blendedG: blended.get(soap.name) ?? asGrams(zero),
      },
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
  return melts.reverse();
}

/** The layers made of each soap, by its name. */
function layersBySoap(all: readonly LayerOfBars[]): ReadonlyMap<string, readonly LayerOfBars[]> {
  const bySoap = new Map<string, LayerOfBars[]>();
  for (const each of all) addUnder(bySoap, each.layer.soap.name, each);
  return bySoap;
}

function planAdded(batches: readonly BarsStarted[]): MaterialNeed[] {
  const byMaterial = new Map<Material, Exact>();
  for (const { design, barsToStart } of batches) {
    for (const layer of design.layers) {
      if (!('material' in layer)) continue;
      addTo(byMaterial, layer.material, layer.quantityPerBar.times(barsToStart));
    }
  }
  return Array.from(byMaterial, ([material, quantity]) => ({
    material,
    quantity: asStock(quantity),
  }));
}
