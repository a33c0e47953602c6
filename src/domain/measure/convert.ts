import { type Exact, exact, one } from '../kernel/exact.ts';
import { didYouMean, quoted } from '../kernel/names.ts';
import { answer, type Result, andThen, wrong } from '../kernel/result.ts';
import {
  benchUnitOf,
  type Dimension,
  findUnit,
  type StockUnit,
  unitNames,
  unitSpellings,
} from './units.ts';

/** What a bridge between weight, volume and drops needs to know of one material. */
export interface Liquid {
  readonly name: string;
  readonly unit: StockUnit;
  /** g/ml as typed in Materials. */
  readonly densityGPerMl: Exact | undefined;
  readonly dropsPerMl: Exact | undefined;
}

/** 20 drops to the ml: a pharmacy convention (USP <1101>), good to about 10 % for water and worse for oils. */
const USUAL_DROPS_PER_ML: Exact = exact(20);

/** Density and drops of a liquid, and whether the density had to be assumed. */
export interface Bridge {
  readonly densityGPerMl: Exact;
  readonly dropsPerMl: Exact;
  readonly densityAssumed: boolean;
}

/**
 * The bridge of a liquid. A blank density is taken as 1 g/ml only where the material is stocked in
 * a volume or counted in drops; otherwise undefined.
 */
export function bridgeOf(liquid: Liquid, inDrops: boolean): Bridge | undefined {
  const dropsPerMl = liquid.dropsPerMl ?? USUAL_DROPS_PER_ML;
  if (liquid.densityGPerMl !== undefined) {
    return { densityGPerMl: liquid.densityGPerMl, dropsPerMl, densityAssumed: false };
  }
  const mayAssume = inDrops || benchUnitOf(liquid.unit) === 'ml';
  return mayAssume ? { densityGPerMl: one, dropsPerMl, densityAssumed: true } : undefined;
}

/**
 * Converts a quantity between units, through a liquid's density and drops where the two differ in
 * kind; of no liquid in particular, 20 drops are 1 ml. Fails with a sentence where a unit is unknown
 * or there is no way across.
 */
export function convert(quantity: Exact, from: string, to: string, liquid?: Liquid): Result<Exact> {
  const source = findUnit(from);
  if (source === undefined) return unknownUnit(from);
  const target = findUnit(to);
  if (target === undefined) return unknownUnit(to);
  const inOwnUnit = quantity.times(source.size);
  if (source.dimension === target.dimension) return answer(inOwnUnit.div(target.size));
  if (source.dimension === 'count' || target.dimension === 'count') {
    return wrong(
      `"each" is a count and can't be turned into ${target.dimension === 'count' ? from : to}.`,
    );
  }
  return andThen(across(inOwnUnit, source.dimension, target.dimension, liquid), (value) =>
    answer(value.div(target.size)),
  );
}

function across(
  quantity: Exact,
  from: Dimension,
  to: Dimension,
  liquid: Liquid | undefined,
): Result<Exact> {
  const usesDrops = from === 'drops' || to === 'drops';
  const usesMass = from === 'mass' || to === 'mass';
  const bridge = liquid && bridgeOf(liquid, usesDrops);
  if (bridge === undefined && usesMass) {
    return wrong(
      liquid === undefined
        ? `Going from weight to volume or drops depends on the material: add its name and the book to the formula.`
        : `Fill in Density g/ml for ${liquid.name} in Materials to go between weight and volume.`,
    );
  }
  const density = bridge?.densityGPerMl ?? one;
  const drops = liquid?.dropsPerMl ?? USUAL_DROPS_PER_ML;
  const ml =
    from === 'mass' ? quantity.div(density) : from === 'drops' ? quantity.div(drops) : quantity;
  return answer(to === 'mass' ? ml.times(density) : to === 'drops' ? ml.times(drops) : ml);
}

/** Of a word of a letter or two no other is suggested: µl is not ml but a thousandth of it. */
function unknownUnit(name: string): Result<never> {
  const near = name.trim().length > 2 ? didYouMean(name, unitSpellings) : '';
  return wrong(
    `${quoted(name)} is not a unit known here.${near} Use one of ${unitNames.join(', ')}.`,
  );
}
