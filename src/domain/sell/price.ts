import { type Exact, hundred, one, zero } from '../kernel/exact.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';

export interface PriceQuestion {
  /** Full cost of what is sold, 0 or more. */
  readonly cost: Exact;
  /** Profit wanted, as a share of the price net of tax; below 100, and not between 0 and 1. */
  readonly marginPercent: Exact;
  /** Fees are charged on the price paid, tax included. */
  readonly feePercent: Exact;
  readonly feeFixed: Exact;
  readonly taxPercent: Exact;
  /** What the price ends in, whole cents from 0 to 0.99; undefined rounds up to the cent. */
  readonly ending: Exact | undefined;
}

/**
 * The price to ask, tax included, so that (net of tax − fees − cost) ÷ net of tax is the margin:
 * with fee share f and tax rate t, (cost + fixed fee)·(1 + t) ÷ (1 − margin − f·(1 + t)), rounded up
 * to the next price with the ending.
 */
export function priceFor(question: PriceQuestion): Result<Exact> {
  const trouble = troubleWith(question);
  if (trouble !== undefined) return wrong(trouble);
  const { cost, marginPercent, feePercent, feeFixed, taxPercent, ending } = question;
  const withTax = one.plus(taxPercent.div(hundred));
  const feeShare = feePercent.div(hundred).times(withTax);
  const kept = one.minus(marginPercent.div(hundred)).minus(feeShare);
  if (kept.lte(0)) {
    return wrong(
      `A margin of ${marginPercent.toString()} % with fees of ${feePercent.toString()} % leaves nothing to pay the cost from. Lower one of them.`,
    );
  }
  // One division at the very end, so that a price that comes out even is not nudged up a cent.
  const price = cost.plus(feeFixed).times(withTax).div(kept);
  return answer(roundUpToEnding(price, ending));
}

/** The next price at or above `price` that ends so: 7.96 with 0.95 is 8.95. */
function roundUpToEnding(price: Exact, ending: Exact | undefined): Exact {
  if (ending === undefined) return price.times(hundred).ceil().div(hundred);
  return price.minus(ending).ceil().plus(ending);
}

function troubleWith({
  cost,
  marginPercent,
  feePercent,
  feeFixed,
  taxPercent,
  ending,
}: PriceQuestion): string | undefined {
  if (cost.lt(zero)) return `cost is ${cost.toString()}. Give 0 or more.`;
  if (marginPercent.gte(hundred)) {
    return `margin is ${marginPercent.toString()} %. It is a share of the price, so it is below 100.`;
  }
  if (marginPercent.gt(zero) && marginPercent.lt(one)) {
    const meant = marginPercent.times(hundred).toString();
    return `margin is ${marginPercent.toString()} %. Give 0, or 1 or more: ${meant} if ${meant} % is meant.`;
  }
  const shares = Object.entries({ 'fee %': feePercent, 'tax %': taxPercent });
  const outside = shares.find(([, share]) => share.lt(zero) || share.gte(hundred));
  if (outside !== undefined)
    return `${outside[0]} is ${outside[1].toString()}. Give 0 or more, below 100.`;
  if (feeFixed.lt(zero)) return `fee fixed is ${feeFixed.toString()}. Give 0 or more.`;
  if (ending !== undefined && (ending.lt(zero) || ending.gte(one))) {
    return `ending is ${ending.toString()}. Give the part after the point, such as 0.95.`;
  }
  if (ending !== undefined && ending.decimalPlaces() > 2)
    return `ending is ${ending.toString()}, which no price in cents ends in. Give two digits after the point, such as 0.95.`;
  return undefined;
}

/** Whole units whose contribution (price − cost of each) covers the fixed cost. */
export function breakEven(fixedCost: Exact, price: Exact, costPerUnit: Exact): Result<Exact> {
  const named = Object.entries({ 'fixed cost': fixedCost, price, 'cost per unit': costPerUnit });
  const negative = named.find(([, amount]) => amount.lt(zero));
  if (negative !== undefined)
    return wrong(`${negative[0]} is ${negative[1].toString()}. Give 0 or more.`);
  const contribution = price.minus(costPerUnit);
  if (contribution.isZero()) {
    return {
      ok: false,
      failure: {
        kind: 'divides by nothing',
        sentence:
          'Price and cost are equal: each sale earns nothing towards the fixed cost. Raise the price or lower the cost.',
      },
    };
  }
  if (contribution.lt(zero)) {
    return wrong(
      `Each unit costs ${contribution.neg().toString()} more than its price, so no number of them breaks even. Raise the price or lower the cost.`,
    );
  }
  return answer(fixedCost.div(contribution).ceil());
}
