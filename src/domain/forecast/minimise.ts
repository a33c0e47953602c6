/** A box to search in, and where to begin. */
export interface Search {
  readonly low: readonly number[];
  readonly high: readonly number[];
  readonly guesses: readonly (readonly number[])[];
}

const MOST_STEPS = 400;
const CLOSE_ENOUGH = 1e-12;

interface Corner {
  readonly at: readonly number[];
  readonly cost: number;
}

/**
 * The point of least cost in a box, by the simplex search of Nelder and Mead (The Computer Journal 7,
 * 1965), begun from each guess and once more from where that ends; the best is kept. Always the same
 * answer for the same question. The npm packages for this are unkept or bring build tools along.
 */
export function minimise(cost: (at: readonly number[]) => number, search: Search): number[] {
  const inside = (at: readonly number[]): number[] =>
    at.map((x, index) => Math.min(search.high[index] ?? x, Math.max(search.low[index] ?? x, x)));
  const corner = (at: readonly number[]): Corner => {
    const clipped = inside(at);
    const value = cost(clipped);
    return { at: clipped, cost: Number.isFinite(value) ? value : Infinity };
  };
  let best: Corner | undefined;
  for (const guess of search.guesses) {
    const once = descend(simplexAround(guess, search, corner), corner);
    const twice = descend(simplexAround(once.at, search, corner), corner);
    const found = twice.cost <= once.cost ? twice : once;
    if (best === undefined || found.cost < best.cost) best = found;
  }
  return [...(best?.at ?? [])];
}

/** The guess and, for each direction, a point a tenth of the box away. */
function simplexAround(
  guess: readonly number[],
  { low, high }: Search,
  corner: (at: readonly number[]) => Corner,
): Corner[] {
  const moved = guess.map((x, index) => {
    const from = low[index] ?? 0;
    const to = high[index] ?? 1;
    const stride = (to - from) / 10;
    return guess.map((other, at) =>
      at === index ? (x + stride > to ? x - stride : x + stride) : other,
    );
  });
  return [guess, ...moved].map(corner);
}

function descend(corners: Corner[], corner: (at: readonly number[]) => Corner): Corner {
  for (let step = 0; step < MOST_STEPS; step += 1) {
    corners.sort((a, b) => a.cost - b.cost);
    const best = corners[0] as Corner;
    const worst = corners[corners.length - 1] as Corner;
    const secondWorst = corners[corners.length - 2] ?? best;
    if (worst.cost - best.cost <= CLOSE_ENOUGH * (Math.abs(best.cost) + CLOSE_ENOUGH)) break;
    const centre = best.at.map(
      (_, index) =>
        corners.slice(0, -1).reduce((sum, { at }) => sum + (at[index] ?? 0), 0) /
        (corners.length - 1),
    );
    const along = (factor: number): Corner =>
      corner(centre.map((middle, index) => middle + factor * ((worst.at[index] ?? 0) - middle)));
    const reflected = along(-1);
    if (reflected.cost < best.cost) {
      const expanded = along(-2);
      corners[corners.length - 1] = expanded.cost < reflected.cost ? expanded : reflected;
    } else if (reflected.cost < secondWorst.cost) {
      corners[corners.length - 1] = reflected;
    } else {
      const drawnIn = reflected.cost < worst.cost ? along(-0.5) : along(0.5);
      if (drawnIn.cost < Math.min(reflected.cost, worst.cost))
        corners[corners.length - 1] = drawnIn;
      else corners = corners.map(({ at }) => corner(at.map((x, i) => (x + (best.at[i] ?? 0)) / 2)));
    }
  }
  return corners.sort((a, b) => a.cost - b.cost)[0] as Corner;
}
