import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestToBring, bringing } from '../../../src/domain/sell/bring.ts';
import { CountDemand } from '../../../src/domain/sell/count-demand.ts';
import { demandFrom } from '../../../src/domain/sell/fair-demand.ts';

const poisson = (mean: number): CountDemand => new CountDemand(mean, mean);
const negativeBinomial = (size: number, mean: number): CountDemand =>
  new CountDemand(mean, mean + (mean * mean) / size);

describe('chances of a count', () => {
  // REFERENCES L2, N12.
  it.each([
    [1.25, [0.286505, 0.644636, 0.868468, 0.961731, 0.990876, 0.998162, 0.99968]],
    [1, [0.367879, 0.735759, 0.919699, 0.981012]],
  ])('Poisson %d', (mean, expected) => {
    expected.forEach((share, number) => {
      expect(poisson(mean).atMost(number)).toBeCloseTo(share, 6);
    });
  });

  it('Poisson 1.25 as its loss function has it (REFERENCES L2)', () => {
    // L(Q) is what is asked for beyond Q.
    [1.25, 0.5365, 0.18114, 0.04961, 0.01134, 0.00221, 0.00038].forEach((loss, there) => {
      expect(1.25 - poisson(1.25).expectedSold(there)).toBeCloseTo(loss, 5);
    });
  });

  // REFERENCES N8, N7.
  it.each([
    [6, 7, 0.7439797605],
    [6, 8, 0.847237494],
    [50, 56, 0.8221171437],
  ])('Poisson %d: at most %d', (mean, number, share) => {
    expect(poisson(mean).atMost(number)).toBeCloseTo(share, 9);
  });

  it('negative binomial of size 2, p 0.6 (REFERENCES N13)', () => {
    // Its mean is r·(1 − p) ÷ p.
    const demand = negativeBinomial(2, (2 * 0.4) / 0.6);
    [0.36, 0.648, 0.8208, 0.91296, 0.95904].forEach((share, number) => {
      expect(demand.atMost(number)).toBeCloseTo(share, 12);
    });
  });

  it('negative binomial of size 3, mean 6 (REFERENCES N14)', () => {
    const demand = new CountDemand(6, 18);
    for (const [number, share] of [
      [0, 0.037037037],
      [1, 0.1111111111],
      [6, 0.6228217243],
      [8, 0.7658893461],
      [9, 0.8188773542],
      [10, 0.8612677607],
      [12, 0.9206428754],
    ] as const)
      expect(demand.atMost(number)).toBeCloseTo(share, 9);
    expect([demand.enoughFor(0.8), demand.enoughFor(0.95)]).toEqual([9, 14]);
  });

  it('no mean is too large for them', () => {
    expect(poisson(5000).atMost(5000)).toBeCloseTo(0.5, 2);
  });
});

describe('what to bring', () => {
  // Costs as the references have them: h is lost with one too many, p with one too few.
  it.each([
    ['REFERENCES N7', 50, 0.18, 0.7, 56, 1.7972352118],
    ['REFERENCES N8', 6, 1, 4, 8, 3.5701069458],
    ['REFERENCES N9', 18, 200, 270, 19, 786.0884409351],
  ])('%s: Poisson %d', (_, mean, lost, earned, bring, cost) => {
    const stakes = { earned, lost };
    expect(bestToBring(poisson(mean), stakes)).toBe(bring);
    // Profit is that of knowing demand before, less the cost of not knowing it.
    const { expectedProfit } = bringing(poisson(mean), stakes, bring);
    expect(earned * mean - expectedProfit).toBeCloseTo(cost, 7);
  });

  it('REFERENCES N8, N9: other numbers cost what is printed', () => {
    const eight = bringing(poisson(6), { earned: 4, lost: 1 }, 5);
    expect(4 * 6 - eight.expectedProfit).toBeCloseTo(6.5902960246, 8);
    const nine = bringing(poisson(18), { earned: 270, lost: 200 }, 13);
    expect(270 * 18 - nine.expectedProfit).toBeCloseTo(1445.751062892, 6);
  });

  it('REFERENCES N5: price 7, cost 2.5, salvage 1.5, Poisson 50', () => {
    const stakes = { earned: 4.5, lost: 1 };
    const bring = bestToBring(poisson(50), stakes);
    expect(bring).toBe(56);
    expect(bringing(poisson(50), stakes, bring).expectedProfit).toBeCloseTo(214.5172799262, 7);
  });

  it.each([
    ['nothing is earned', 0, 3, 0],
    ['each sale loses', -1, 3, 0],
  ])('is none where %s', (_, earned, lost, bring) => {
    expect(bestToBring(poisson(20), { earned, lost })).toBe(bring);
  });

  it('is enough for nearly all where a bar left over loses nothing', () => {
    const bring = bestToBring(poisson(20), { earned: 2, lost: 0 });
    expect(poisson(20).atMost(bring)).toBeGreaterThanOrEqual(0.999);
    expect(poisson(20).atMost(bring - 1)).toBeLessThan(0.999);
  });

  it('is none where nothing is ever asked for', () => {
    const none = bringing(
      poisson(0),
      { earned: 2, lost: 1 },
      bestToBring(poisson(0), { earned: 2, lost: 1 }),
    );
    expect(none).toEqual({ bring: 0, sellsOutPercent: 100, expectedSold: 0, expectedProfit: 0 });
  });

  const money = fc.double({ min: 0.05, max: 30, noNaN: true });
  const means = fc.double({ min: 0.1, max: 60, noNaN: true });
  const spread = fc.double({ min: 0, max: 5, noNaN: true });

  it('earns more on average than any other number', () => {
    fc.assert(
      fc.property(means, spread, money, money, fc.nat(150), (mean, more, earned, lost, other) => {
        const demand = new CountDemand(mean, mean * more);
        const stakes = { earned, lost };
        const best = bringing(demand, stakes, bestToBring(demand, stakes));
        const another = bringing(demand, stakes, other);
        expect(best.expectedProfit).toBeGreaterThanOrEqual(another.expectedProfit - 1e-7);
      }),
      { numRuns: 60 },
    );
  });

  it('sells no more than is brought or asked for, and the chance to sell out falls with it', () => {
    fc.assert(
      fc.property(means, spread, fc.nat(120), (mean, more, bring) => {
        const demand = new CountDemand(mean, mean * more);
        const one = bringing(demand, { earned: 1, lost: 1 }, bring);
        const next = bringing(demand, { earned: 1, lost: 1 }, bring + 1);
        expect(one.expectedSold).toBeLessThanOrEqual(Math.min(bring, mean) + 1e-9);
        expect(next.expectedSold).toBeGreaterThanOrEqual(one.expectedSold);
        expect(next.sellsOutPercent).toBeLessThanOrEqual(one.sellsOutPercent);
      }),
      { numRuns: 60 },
    );
  });
});

describe('demand from what was sold', () => {
  it.each([
    [[4, 4, 4], 4, 4],
    [[2, 4, 9], 5, 13],
    [[7], 7, 7],
    [[0, 0], 0, 0],
  ])('%j: mean %d, variance %d', (sold, mean, variance) => {
    const demand = demandFrom(sold);
    expect([demand.mean, demand.variance]).toEqual([mean, variance]);
  });
});
