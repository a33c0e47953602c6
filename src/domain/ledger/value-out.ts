import { type Exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import type { PouredMelt } from './consumption.ts';
import type { Taken } from './take-stock.ts';

/** Cost of one gram of each soap of a pour, by soap name: what went into its melt over what it weighed. */
export function soapCostsPerG(
  melts: readonly PouredMelt[],
  taken: readonly Taken[],
): Map<string, Exact> {
  const unitCosts = unitCostsOf(taken);
  const perG = new Map<string, Exact>();
  // Melts stand in pouring order, so a blend's colours are costed before the blend.
  for (const { melt, consumed } of melts) {
    const value = sum(
      consumed.map(({ item, soap, quantity, g }) =>
        item === undefined
          ? g.times(perG.get(soap?.name ?? '') ?? zero)
          : quantity.times(unitCosts.get(nameKey(item.name)) ?? zero),
      ),
    );
    const grams = sum(consumed.map(({ g }) => g));
    perG.set(melt.soap.name, grams.isZero() ? zero : value.div(grams));
  }
  return perG;
}

/** What a unit of each item cost in this pour, over all the lots it came from. */
function unitCostsOf(taken: readonly Taken[]): Map<string, Exact> {
  const totals = new Map<string, { quantity: Exact; value: Exact }>();
  for (const { item, quantity, value } of taken) {
    const key = nameKey(item.name);
    const before = totals.get(key) ?? { quantity: zero, value: zero };
    totals.set(key, { quantity: before.quantity.plus(quantity), value: before.value.plus(value) });
  }
  return new Map(
    [...totals].map(([key, { quantity, value }]) => [
      key,
      quantity.isZero() ? zero : value.div(quantity),
    ]),
  );
}
