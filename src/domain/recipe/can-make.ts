import type { Book, Design, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { onHand } from '../stock/on-hand.ts';
import { plainQuantities } from './plain-plan.ts';

/** From this many bars on stock is no limit. */
const NO_LIMIT_BARS = 1 << 19;

/** Most whole good bars that the materials on hand allow, without leftovers or spares. */
export function canMake(book: Book, design: Design, asOf: Day): Result<number> {
  const one = plainQuantities(design, 1, book.settings);
  if (!one.ok) return one;
  if (one.value.size === 0)
    return notYet(`${design.name} uses no materials, so stock is no limit.`);
  const stock = new Map<Material, Exact>();
  for (const material of one.value.keys())
    stock.set(material, onHand(book, itemOfMaterial(material), asOf));
  const most = mostOf(NO_LIMIT_BARS, (bars) => {
    const needs = plainQuantities(design, bars, book.settings);
    return needs.ok ? leastShare(stock, needs.value) : 0;
  });
  return most < NO_LIMIT_BARS
    ? answer(most)
    : notYet(`Stock is no limit for ${design.name}: it allows over ${NO_LIMIT_BARS} bars.`);
}

/** How much of the need stock covers, of the material it covers least: 1 or more just where there is enough of all. */
function leastShare(
  stock: ReadonlyMap<Material, Exact>,
  needs: ReadonlyMap<Material, Exact>,
): number {
  let least = Infinity;
  for (const [material, need] of needs) {
    const held = stock.get(material);
    if (held === undefined) return 0;
    if (need.isZero()) continue;
    const share = held.toNumber() / need.toNumber();
    // Floating point is near enough to guess by, not to tell enough from short.
    const covered = need.lte(held) ? Math.max(1, share) : Math.min(share, ALMOST_ONE);
    least = Math.min(least, covered);
  }
  return least;
}

const ALMOST_ONE = 1 - Number.EPSILON;

/** A usual batch, whose plan other answers ask for as well. */
const FIRST_GUESS = 12;
/** After so many guesses the range is halved instead. */
const MOST_GUESSES = 8;

/**
 * The most bars, up to a limit, that are covered. Need never falls as bars rise, and rises nearly in
 * proportion, so what stock covers of one number of bars is a good guess at the next one to try.
 */
function mostOf(limit: number, shareCovered: (bars: number) => number): number {
  let [enough, short] = [0, limit + 1];
  let [bars, step] = [FIRST_GUESS, 1];
  for (let tried = 0; short - enough > 1; tried += 1) {
    const share = shareCovered(bars);
    if (share >= 1) enough = bars;
    else short = bars;
    bars = Math.floor(bars * share);
    if (bars <= enough) {
      bars = enough + step;
      step *= 2;
    }
    if (bars >= short || tried > MOST_GUESSES) bars = Math.floor((enough + short) / 2);
  }
  return enough;
}
