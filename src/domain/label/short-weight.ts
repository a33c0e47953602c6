import { Exact } from '../kernel/exact.ts';

/**
 * Tolerable negative error of one prepack, in g, by nominal weight: Dir. 76/211/EEC, Annex I, 2.4
 * (5 g to 10 kg). A percentage is rounded up to the next 0.1 g (from memory). Undefined outside.
 */
export function tolerableErrorG(netG: Exact): Exact | undefined {
  const band = bands.find(({ to }) => netG.lte(to));
  if (netG.lt(5) || band === undefined) return undefined;
  return band.g === undefined
    ? netG.times(band.percent).div(100).toDecimalPlaces(1, Exact.ROUND_UP)
    : new Exact(band.g);
}

interface Band {
  readonly to: number;
  readonly percent: number;
  /** A fixed number of grams instead of the percent. */
  readonly g: number | undefined;
}

const bands: readonly Band[] = [
  { to: 50, percent: 9, g: undefined },
  { to: 100, percent: 0, g: 4.5 },
  { to: 200, percent: 4.5, g: undefined },
  { to: 300, percent: 0, g: 9 },
  { to: 500, percent: 3, g: undefined },
  { to: 1000, percent: 0, g: 15 },
  { to: 10_000, percent: 1.5, g: undefined },
];

/**
 * Maximum allowable variation of one package, in g: NIST Handbook 133, Table 2-5, from memory and
 * not held against the handbook, so it may warn but never clear. Undefined above 489 g.
 */
export function allowableVariationG(netG: Exact): Exact | undefined {
  if (netG.lte(36)) return netG.div(10);
  const band = variations.find(([to]) => netG.lte(to));
  return band === undefined ? undefined : new Exact(band[1]);
}

const variations: readonly (readonly [toG: number, variationG: number])[] = [
  [54, 3.6],
  [81, 5.4],
  [117, 7.2],
  [154, 9],
  [208, 10.8],
  [263, 12.7],
  [317, 14.5],
  [381, 16.3],
  [426, 18.1],
  [489, 19.9],
];
