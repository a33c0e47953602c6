import { describe, expect, it } from 'vitest';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { splitAmount, splitUnits } from '../../../src/domain/money/split.ts';

const exacts = (values: readonly number[]): Exact[] => values.map((value) => new Exact(value));
const split = (total: number, shares: readonly number[]): number[] =>
  splitUnits(new Exact(total), exacts(shares)).map(Number);

describe('splitting by the largest remainder', () => {
  it.each([
    // REFERENCES R7: Hamilton's method on the census of 1790, 60 seats for 15 states (electowiki).
    {
      what: 'seats of 1790',
      total: 60,
      shares: [
        630_560, 475_327, 432_879, 353_523, 331_589, 278_514, 236_841, 206_236, 179_570, 141_822,
        85_533, 70_835, 68_705, 68_446, 55_540,
      ],
      parts: [11, 8, 7, 6, 6, 5, 4, 3, 3, 2, 1, 1, 1, 1, 1],
    },
    // REFERENCES R8, R9: electowiki, "Largest remainder method", 25 seats, and the Alabama paradox with 26.
    {
      what: '25 seats',
      total: 25,
      shares: [1500, 1500, 900, 500, 500, 200],
      parts: [7, 7, 4, 3, 3, 1],
    },
    {
      what: '26 seats',
      total: 26,
      shares: [1500, 1500, 900, 500, 500, 200],
      parts: [8, 8, 5, 2, 2, 1],
    },
    // REFERENCES R10: archipel-des-libertes.fr, Hare quota.
    { what: '4 seats', total: 4, shares: [500, 300, 110, 20], parts: [2, 1, 1, 0] },
    // REFERENCES R11, derived: cents, with ties to the earlier share.
    { what: 'ten in thirds', total: 1000, shares: [1, 1, 1], parts: [334, 333, 333] },
    { what: '10.01 by 5:3:2', total: 1001, shares: [5, 3, 2], parts: [501, 300, 200] },
    { what: 'one in thirds', total: 100, shares: [1, 1, 1], parts: [34, 33, 33] },
    { what: 'nothing to go by', total: 5, shares: [0, 0], parts: [3, 2] },
    { what: 'nothing for a share of nothing', total: 7, shares: [0, 1, 2], parts: [0, 2, 5] },
    { what: 'a loss', total: -100, shares: [1, 1, 1], parts: [-33, -33, -34] },
  ])('$what', ({ total, shares, parts }) => {
    expect(split(total, shares)).toEqual(parts);
  });

  it('splits nothing among nobody', () => {
    expect(split(5, [])).toEqual([]);
  });

  it.each([
    [2, '10.00', ['3.34', '3.33', '3.33']],
    [0, '10', ['4', '3', '3']],
    [3, '10.000', ['3.334', '3.333', '3.333']],
  ])('keeps to %d decimals', (decimals, total, parts) => {
    const found = splitAmount(new Exact(total), exacts([1, 1, 1]), decimals);
    expect(found.map((part) => part.toFixed(decimals))).toEqual(parts);
  });
});
