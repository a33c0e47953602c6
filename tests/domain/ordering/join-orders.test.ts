import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  costOfOrders,
  joinOrders,
  type Lack,
  type PlacedOrder,
  type Wanted,
} from '../../../src/domain/ordering/join-orders.ts';
import type { Carriage } from '../../../src/domain/ordering/one-order.ts';
import { costOfPacks, type PackPrices } from '../../../src/domain/ordering/pack-prices.ts';

const pricesOf = (one: number, step = 2, later = one, least = 1): PackPrices => ({
  least,
  steps: [step],
  at: (packs) => (packs >= step ? later : one),
});

const lack = (orderBy: number, quantity: number, notBefore = -Infinity): Lack => ({
  quantity,
  orderBy,
  notBefore,
});
const shown = (orders: readonly PlacedOrder[]) =>
  orders.map(({ day, of, packs, carriage }) => ({ day, of, packs, carriage }));

describe('joinOrders', () => {
  const two: Wanted[] = [
    { prices: pricesOf(10), packSize: 1, lacks: [lack(3, 2), lack(9, 1)] },
    { prices: pricesOf(20), packSize: 1, lacks: [lack(5, 1)] },
  ];

  it('orders each on its last day where bringing costs nothing', () => {
    expect(shown(joinOrders(two, { carriage: 0, freeFrom: Infinity }))).toEqual([
      { day: 3, of: [0], packs: [2], carriage: 0 },
      { day: 5, of: [1], packs: [1], carriage: 0 },
      { day: 9, of: [0], packs: [1], carriage: 0 },
    ]);
  });

  it('orders all together where it costs something', () => {
    expect(shown(joinOrders(two, { carriage: 6, freeFrom: Infinity }))).toEqual([
      { day: 3, of: [0, 1], packs: [3, 1], carriage: 6 },
    ]);
  });

  it('orders later what reaches free carriage by itself', () => {
    expect(shown(joinOrders(two, { carriage: 6, freeFrom: 20 }))).toEqual([
      { day: 3, of: [0], packs: [2], carriage: 0 },
      { day: 5, of: [0, 1], packs: [1, 1], carriage: 0 },
    ]);
  });

  it('takes one price for all where the larger order is cheaper', () => {
    const one: Wanted = {
      prices: pricesOf(10, 4, 8),
      packSize: 1,
      lacks: [lack(3, 2), lack(9, 2)],
    };
    expect(shown(joinOrders([one], { carriage: 0, freeFrom: Infinity }))).toEqual([
      { day: 3, of: [0], packs: [4], carriage: 0 },
    ]);
  });

  it('never orders what would not keep until its day', () => {
    const one: Wanted = {
      prices: pricesOf(10, 4, 8),
      packSize: 1,
      lacks: [lack(3, 2), lack(40, 2, 30)],
    };
    expect(shown(joinOrders([one], { carriage: 5, freeFrom: Infinity }))).toEqual([
      { day: 3, of: [0], packs: [2], carriage: 5 },
      { day: 40, of: [0], packs: [2], carriage: 5 },
    ]);
  });

  it('lets what a pack holds beyond go to the next need', () => {
    const one: Wanted = { prices: pricesOf(10), packSize: 10, lacks: [lack(3, 6), lack(9, 4)] };
    expect(shown(joinOrders([one], { carriage: 0, freeFrom: Infinity }))).toEqual([
      { day: 3, of: [0], packs: [1], carriage: 0 },
    ]);
  });

  it('orders nothing where nothing is missing', () => {
    expect(joinOrders([], { carriage: 5, freeFrom: Infinity })).toEqual([]);
  });

  const prices = fc
    .record({
      one: fc.integer({ min: 3, max: 12 }),
      step: fc.integer({ min: 2, max: 4 }),
      off: fc.integer({ min: 0, max: 2 }),
      least: fc.integer({ min: 1, max: 2 }),
    })
    .map(({ one, step, off, least }) => pricesOf(one, step, one - off, least));
  const terms: fc.Arbitrary<Carriage> = fc.record({
    carriage: fc.integer({ min: 0, max: 10 }),
    freeFrom: fc.oneof(fc.integer({ min: 5, max: 60 }), fc.constant(Infinity)),
  });
  const wantedWith = (keeps: fc.Arbitrary<number>): fc.Arbitrary<Wanted[]> =>
    fc.array(
      fc.record({
        prices,
        packSize: fc.constant(2),
        lacks: fc
          .array(
            fc.record({
              orderBy: fc.integer({ min: 1, max: 3 }),
              quantity: fc.integer({ min: 1, max: 3 }),
              keeps,
            }),
            { minLength: 1, maxLength: 2 },
          )
          .map((lacks) =>
            lacks
              .map(({ orderBy, quantity, keeps: days }) => lack(orderBy, quantity, orderBy - days))
              .sort((a, b) => a.orderBy - b.orderBy),
          ),
      }),
      { minLength: 1, maxLength: 2 },
    );

  /** Whether every lack is met by orders of its days, the oldest first. */
  function isMet({ lacks, packSize }: Wanted, packsOn: ReadonlyMap<number, number>): boolean {
    const left = new Map([...packsOn].map(([day, packs]) => [day, packs * packSize]));
    return lacks.every(({ orderBy, notBefore, quantity }) => {
      let missing = quantity;
      for (const day of [...left.keys()].sort((a, b) => a - b)) {
        if (day > orderBy || day < notBefore) continue;
        const taken = Math.min(missing, left.get(day) ?? 0);
        left.set(day, (left.get(day) ?? 0) - taken);
        missing -= taken;
      }
      return missing === 0;
    });
  }
  const packsOf = (orders: readonly PlacedOrder[], at: number): Map<number, number> =>
    new Map(
      orders.flatMap(({ day, of, packs }) =>
        of.includes(at) ? [[day, packs[of.indexOf(at)] ?? 0] as const] : [],
      ),
    );

  /** The cheapest of all plans with up to three packs of each on each day, by trying every one. */
  function leastOfAll(wanted: readonly Wanted[], { carriage, freeFrom }: Carriage): number {
    const days = [1, 2, 3];
    const cells = wanted.flatMap((_, at) => days.map((day) => ({ at, day })));
    const packs: number[] = [];
    let best = Infinity;
    const tryFrom = (cell: number): void => {
      if (cell < cells.length) {
        for (let number = 0; number <= 4; number += 1) {
          packs[cell] = number;
          tryFrom(cell + 1);
        }
        return;
      }
      let cost = 0;
      for (const day of days) {
        let goods = 0;
        let isOrder = false;
        for (const [index, each] of cells.entries()) {
          const number = packs[index] ?? 0;
          if (each.day !== day || number === 0) continue;
          const { prices: of } = wanted[each.at] as Wanted;
          if (number < of.least) return;
          isOrder = true;
          goods += costOfPacks(of, number);
        }
        if (isOrder) cost += goods + (goods >= freeFrom ? 0 : carriage);
      }
      if (cost >= best) return;
      const met = wanted.every((each, at) =>
        isMet(each, new Map(days.map((day, index) => [day, packs[at * days.length + index] ?? 0]))),
      );
      if (met) best = cost;
    };
    tryFrom(0);
    return best;
  }

  it('costs as little as the best of all plans where everything keeps', { timeout: 60_000 }, () => {
    fc.assert(
      fc.property(wantedWith(fc.constant(99)), terms, (wanted, cost) => {
        expect(costOfOrders(joinOrders(wanted, cost))).toBeLessThanOrEqual(
          leastOfAll(wanted, cost),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('meets every need in time, with what still keeps, and never costs more than each alone', () => {
    fc.assert(
      fc.property(wantedWith(fc.integer({ min: 0, max: 2 })), terms, (wanted, cost) => {
        const orders = joinOrders(wanted, cost);
        wanted.forEach((each, at) => {
          expect(isMet(each, packsOf(orders, at))).toBe(true);
        });
        const alone = wanted.reduce((sum, each) => sum + costOfOrders(joinOrders([each], cost)), 0);
        expect(costOfOrders(orders)).toBeLessThanOrEqual(alone);
      }),
    );
  });
});
