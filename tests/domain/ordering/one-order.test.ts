import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  type Carriage,
  cheapestOrder,
  costOfOrder,
} from '../../../src/domain/ordering/one-order.ts';
import {
  cheapestPacks,
  costOfPacks,
  type PackPrices,
} from '../../../src/domain/ordering/pack-prices.ts';

/** Prices from so many packs on; the first is that of a single one. */
const pricesOf = (
  steps: readonly (readonly [from: number, price: number])[],
  least = 1,
): PackPrices => ({
  least,
  steps: steps.map(([from]) => from).filter((from) => from > 1),
  at: (packs) => steps.findLast(([from]) => packs >= from)?.[1],
});
const flat = (price: number): PackPrices => pricesOf([[1, price]]);
const never: Carriage = { carriage: 0, freeFrom: Infinity };

describe('the price of a pack', () => {
  // All units: REFERENCES Q1, Q2, Q3 print these levels.
  const q1 = pricesOf([
    [1, 0.75],
    [400, 0.72],
    [800, 0.68],
  ]);
  const q2 = pricesOf([
    [1, 500],
    [200, 475],
    [500, 450],
  ]);
  const q3 = pricesOf([
    [1, 1490],
    [1200, 1220],
    [2400, 1100],
  ]);
  it.each([
    [q1, 399, 0.75],
    [q1, 400, 0.72],
    [q1, 799, 0.72],
    [q1, 800, 0.68],
    [q2, 199, 500],
    [q2, 200, 475],
    [q2, 500, 450],
    [q3, 1199, 1490],
    [q3, 2400, 1100],
  ])('holds for all packs of the order', (prices, packs, each) => {
    expect(costOfPacks(prices, packs)).toBeCloseTo(packs * each, 9);
  });

  // Just below a step the order that reaches it costs less: 396 × 0.75 = 297 against 400 × 0.72 = 288.
  it.each([
    [q1, 396, 400],
    [q1, 384, 384],
    [q1, 383, 383],
    [q2, 191, 200],
    [q2, 190, 190],
    [q3, 983, 1200],
    [q3, 982, 982],
  ])('is worth reaching only where it costs less in all', (prices, needed, packs) => {
    expect(cheapestPacks(prices, needed)).toBe(packs);
  });

  it('is asked for the least that is sold', () => {
    expect(cheapestPacks(pricesOf([[1, 4]], 5), 2)).toBe(5);
  });
});

describe('one order', () => {
  it('pays carriage below free carriage, and none from it on', () => {
    const terms = { carriage: 8, freeFrom: 100 };
    const order = (packs: number) => cheapestOrder([{ prices: flat(10), packs }], terms);
    expect(order(9)).toEqual({ packs: [9], goods: 90, carriage: 8 });
    expect(order(10)).toEqual({ packs: [10], goods: 100, carriage: 0 });
  });

  it('reaches free carriage only where that costs less than carriage', () => {
    // REFERENCES Q7 is the same choice between paying and reaching: here a pack of 7 more against 8, then of 9.
    expect(cheapestOrder([{ prices: flat(7), packs: 13 }], { carriage: 8, freeFrom: 98 })).toEqual({
      packs: [14],
      goods: 98,
      carriage: 0,
    });
    expect(
      cheapestOrder([{ prices: flat(9), packs: 10 }], { carriage: 8, freeFrom: 98 }).packs,
    ).toEqual([10]);
  });

  it('reaches it with what costs least more', () => {
    const needed = [
      { prices: flat(30), packs: 3 },
      { prices: flat(4), packs: 1 },
      { prices: flat(5), packs: 1 },
    ];
    // 99 of goods, 7 missing to 106: 4 + 4 is 8, 5 + 5 is 10, 4 + 5 is 9; carriage is 9.
    expect(cheapestOrder(needed, { carriage: 9, freeFrom: 106 }).packs).toEqual([3, 3, 1]);
  });

  it('without a price brings no order nearer to free carriage', () => {
    const unknown: PackPrices = { least: 1, steps: [], at: () => undefined };
    expect(cheapestOrder([{ prices: unknown, packs: 2 }], { carriage: 5, freeFrom: 1 })).toEqual({
      packs: [2],
      goods: 0,
      carriage: 5,
    });
  });

  const prices = fc
    .record({
      one: fc.integer({ min: 2, max: 30 }),
      step: fc.integer({ min: 2, max: 5 }),
      off: fc.integer({ min: 0, max: 6 }),
      least: fc.integer({ min: 1, max: 3 }),
    })
    .map(({ one, step, off, least }) =>
      pricesOf(
        [
          [1, one],
          [step, Math.max(1, one - off)],
        ],
        least,
      ),
    );
  const needed = fc.array(fc.record({ prices, packs: fc.integer({ min: 1, max: 5 }) }), {
    minLength: 1,
    maxLength: 3,
  });
  const terms = fc.record({
    carriage: fc.integer({ min: 0, max: 25 }),
    freeFrom: fc.oneof(fc.integer({ min: 1, max: 200 }), fc.constant(Infinity)),
  });

  it('costs as little as the best of all orders (by trying them)', () => {
    fc.assert(
      fc.property(needed, terms, (wanted, cost) => {
        const best = (at: number, goods: number): number => {
          const each = wanted[at];
          if (each === undefined) return goods + (goods >= cost.freeFrom ? 0 : cost.carriage);
          let least = Infinity;
          for (let packs = Math.max(each.packs, each.prices.least); packs <= 18; packs += 1)
            least = Math.min(least, best(at + 1, goods + costOfPacks(each.prices, packs)));
          return least;
        };
        const order = cheapestOrder(wanted, cost);
        expect(costOfOrder(order)).toBeLessThanOrEqual(best(0, 0));
        order.packs.forEach((packs, at) => {
          expect(packs).toBeGreaterThanOrEqual(wanted[at]?.packs ?? 0);
        });
      }),
      { numRuns: 150 },
    );
  });

  it('never costs more than its materials would alone', () => {
    fc.assert(
      fc.property(needed, terms, (wanted, cost) => {
        const alone = wanted.map((each) => costOfOrder(cheapestOrder([each], cost)));
        const together = costOfOrder(cheapestOrder(wanted, cost));
        expect(together).toBeLessThanOrEqual(alone.reduce((sum, each) => sum + each, 0));
      }),
    );
  });

  it('has no carriage where there is none', () => {
    expect(cheapestOrder([{ prices: flat(3), packs: 2 }], never)).toEqual({
      packs: [2],
      goods: 6,
      carriage: 0,
    });
  });
});
