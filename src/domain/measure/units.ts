import { Exact } from '../kernel/exact.ts';

/** What a stock item is counted in: as the maker buys it. */
export const stockUnits = ['g', 'kg', 'oz', 'lb', 'ml', 'l', 'fl oz', 'each'] as const;
export type StockUnit = (typeof stockUnits)[number];

/** What a bench scale, a measuring jug or a count shows. */
export type BenchUnit = 'g' | 'ml' | 'each';
export type BenchMeasure = BenchUnit | 'drops';

/** What a recipe or layer line may be measured in besides its stock unit. */
export type Measure = StockUnit | 'drops';

export type Dimension = 'mass' | 'volume' | 'drops' | 'count';

interface Unit {
  readonly dimension: Dimension;
  /** Size in the dimension's own unit: g, ml, drops or each. */
  readonly size: Exact;
}

const GALLON_ML = new Exact('3785.411784');

/**
 * Exact legal values: 1 lb = 453.59237 g and 1 US gal = 231 in³ = 3785.411784 ml
 * (NIST Handbook 44, appendix C; the same figures in UCUM 2.2).
 */
const units: ReadonlyMap<string, Unit> = new Map(
  Object.entries<Unit>({
    mg: { dimension: 'mass', size: new Exact('0.001') },
    g: { dimension: 'mass', size: new Exact(1) },
    kg: { dimension: 'mass', size: new Exact(1000) },
    oz: { dimension: 'mass', size: new Exact('28.349523125') },
    lb: { dimension: 'mass', size: new Exact('453.59237') },
    ml: { dimension: 'volume', size: new Exact(1) },
    l: { dimension: 'volume', size: new Exact(1000) },
    tsp: { dimension: 'volume', size: GALLON_ML.div(768) },
    tbsp: { dimension: 'volume', size: GALLON_ML.div(256) },
    'fl oz': { dimension: 'volume', size: GALLON_ML.div(128) },
    cup: { dimension: 'volume', size: GALLON_ML.div(16) },
    pt: { dimension: 'volume', size: GALLON_ML.div(8) },
    qt: { dimension: 'volume', size: GALLON_ML.div(4) },
    gal: { dimension: 'volume', size: GALLON_ML },
    drops: { dimension: 'drops', size: new Exact(1) },
    each: { dimension: 'count', size: new Exact(1) },
  }),
);

const otherSpellings: ReadonlyMap<string, string> = new Map(
  Object.entries({
    gram: 'g',
    grams: 'g',
    kgs: 'kg',
    kilo: 'kg',
    kilos: 'kg',
    kilogram: 'kg',
    kilograms: 'kg',
    ounce: 'oz',
    ounces: 'oz',
    lbs: 'lb',
    pound: 'lb',
    pounds: 'lb',
    milliliter: 'ml',
    milliliters: 'ml',
    millilitre: 'ml',
    millilitres: 'ml',
    liter: 'l',
    litre: 'l',
    liters: 'l',
    litres: 'l',
    teaspoon: 'tsp',
    teaspoons: 'tsp',
    tablespoon: 'tbsp',
    tablespoons: 'tbsp',
    'fluid ounce': 'fl oz',
    'fluid ounces': 'fl oz',
    floz: 'fl oz',
    'fl. oz': 'fl oz',
    'fl. oz.': 'fl oz',
    drop: 'drops',
  }),
);

export const unitNames: readonly string[] = [...units.keys()];
/** Everything that is taken for a unit. */
export const unitSpellings: readonly string[] = [...unitNames, ...otherSpellings.keys()];

const benchUnits: Readonly<Record<StockUnit, BenchUnit>> = {
  g: 'g',
  kg: 'g',
  oz: 'g',
  lb: 'g',
  ml: 'ml',
  l: 'ml',
  'fl oz': 'ml',
  each: 'each',
};

/** What a material is measured out in that is kept in a stock unit: g for all weights, ml for all volumes. */
export const benchUnitOf = (unit: StockUnit): BenchUnit => benchUnits[unit];

/** Milligrams, microlitres and thousandths of a piece: finer than any scale or dropper. */
const BENCH_DECIMALS = 3;
/** What is kept in a larger unit has as fine a last digit: a millionth of a pound is half a milligram. */
const LARGE_DECIMALS = 6;

/** Decimals that the ledger keeps of a quantity in a unit: no coarser than a scale, and short enough to read. */
export function ledgerDecimals(unit: string): number {
  const size = findUnit(unit)?.size;
  return size?.gt(1) === true ? LARGE_DECIMALS : BENCH_DECIMALS;
}

/** The unit of that name in any case, or undefined. */
export function findUnit(name: string): Unit | undefined {
  const key = name.trim().replace(/\s+/gu, ' ').toLowerCase();
  return units.get(otherSpellings.get(key) ?? key);
}
