import type { Book, Design, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { onHand } from '../stock/on-hand.ts';
import { materialNeeds } from './material-needs.ts';
import { materialsIn } from './materials-in.ts';
import { type MeltPlan, meltsFor } from './melt-plan.ts';
import { noLeftovers } from './melt.ts';
import { plainPlan, USUAL_BARS } from './plain-plan.ts';

/** From this many bars on stock is no limit: more than a cell can show to the last one. */
const NO_LIMIT_BARS = 1e15;

/** The material of which stock covers least of what some bars need. */
interface Scarcest {
  readonly bars: number;
  readonly material: Material;
  /** 1 or more just where there is enough. */
  readonly share: number;
  /** How many materials are short, this one among them. */
  readonly shortOnes: number;
}

/** The scarcest material for a number of bars of a design, or of a part of it; undefined where it takes none. */
type ScarcestFor = (design: Design, bars: number) => Scarcest | undefined;

/** Most whole good bars that the materials on hand allow, without leftovers or spares. */
export function canMake(book: Book, design: Design, asOf: Day): Result<number> {
  const usual = plainPlan(design, USUAL_BARS, book.settings);
  if (!usual.ok) return usual;
  const stock = (material: Material): Exact => onHand(book, itemOfMaterial(material), asOf);
  const start = scarcestIn(usual.value, stock);
  if (start === undefined) return notYet(`${design.name} uses no materials, so stock is no limit.`);
  const scarcest = oncePerKey<Design, Scarcest | undefined>();
  const most = mostBars(design, start, (part, bars) =>
    scarcest(part, String(bars), () =>
      scarcestIn(meltsFor(part, bars, book.settings, noLeftovers), stock),
    ),
  );
  return most < NO_LIMIT_BARS
    ? answer(most)
    : notYet(`Stock is no limit for ${design.name}: it allows over ${NO_LIMIT_BARS} bars.`);
}

/**
 * Follows the scarcest material by itself, which takes a fraction of planning the whole design. Where
 * another is scarcer for the bars that it allows, that one is followed next.
 */
function mostBars(design: Design, tried: Scarcest, scarcestFor: ScarcestFor): number {
  const part = partWith(tried.material, design);
  const most = mostOf(tried, (bars) => scarcestFor(part, bars)?.share ?? Infinity);
  // Of all others there is enough even for more bars.
  if (most === 0 || tried.shortOnes === 1) return most;
  const next = scarcestFor(design, most);
  return next === undefined || next.share >= 1 ? most : mostBars(design, next, scarcestFor);
}

/**
 * A design with only those layers that take a material. It needs as much of that material as the whole,
 * and no more of any other: what is made of a soap with the material in it has the material in it too.
 */
function partWith(material: Material, design: Design): Design {
  const takes = design.layers.filter((layer) =>
    'soap' in layer ? materialsIn(layer.soap).has(material) : layer.material === material,
  );
  // The design itself is planned no second time for as many bars.
  return takes.length === design.layers.length ? design : { ...design, layers: takes };
}

function scarcestIn(plan: MeltPlan, stock: (material: Material) => Exact): Scarcest | undefined {
  let scarcest: Pick<Scarcest, 'material' | 'share'> | undefined;
  let shortOnes = 0;
  for (const { material, quantity } of materialNeeds(plan)) {
    const share = shareCovered(stock(material), quantity);
    if (share < 1) shortOnes += 1;
    if (scarcest === undefined || share < scarcest.share) scarcest = { material, share };
  }
  return scarcest && { bars: plan.bars, ...scarcest, shortOnes };
}

/** How much of a need what is held covers: 1 or more just where it is enough. */
function shareCovered(held: Exact, need: Exact): number {
  // Floating point is near enough to guess by, not to tell enough from short.
  const guess = held.toNumber() / need.toNumber() || 0;
  return need.lte(held) ? Math.max(1, guess) : Math.min(guess, ALMOST_ONE);
}

const ALMOST_ONE = 1 - Number.EPSILON;

/** After so many guesses the range is halved instead. */
const MOST_GUESSES = 8;

/**
 * The most bars that are covered, from a number tried already. Need never falls as bars rise, and rises
 * nearly in proportion, so what stock covers of one number of bars is a good guess at the next to try.
 */
function mostOf(tried: Scarcest, shareFor: (bars: number) => number): number {
  let { bars, share } = tried;
  let [enough, short] = [0, NO_LIMIT_BARS + 1];
  for (let guesses = 0, step = 1; ; guesses += 1) {
    if (share >= 1) enough = bars;
    else short = bars;
    if (short - enough <= 1) return enough;
    bars = Math.floor(bars * share);
    if (bars <= enough) {
      bars = enough + step;
      step *= 2;
    }
    if (bars >= short || guesses > MOST_GUESSES) bars = Math.floor((enough + short) / 2);
    share = shareFor(bars);
  }
}
