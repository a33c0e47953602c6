import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { divideUp, Exact, exact, sum } from '../../src/domain/kernel/exact.ts';
import { Tally } from '../../src/domain/kernel/tally.ts';
import { splitAmount, splitUnits } from '../../src/domain/money/split.ts';

/**
 * Numbers as cells hold them: typed decimals, results of binary sums, and anything within limits. Not
 * nearer to 0 than a billionth: beside 1e12 that is as far apart as 40 digits can hold.
 */
const cellNumber = fc.oneof(
  fc
    .tuple(fc.integer(), fc.integer({ min: 0, max: 8 }))
    .map(([whole, decimals]) => whole / 10 ** decimals),
  fc.double({ min: -1e12, max: 1e12, noNaN: true }).filter((n) => Math.abs(n) >= 1e-9),
  fc
    .tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.constantFrom(0.1, 0.3))
    .map(([a, b]) => a + b),
  fc.constantFrom(
    0,
    -0,
    Number('9007199254.740991'),
    5000000000.123456,
    999999999.999999,
    0.1 + 0.2,
    1e-9,
  ),
);

describe('the running sum', () => {
  it('equals the exact sum of the decimals that the cells show', () => {
    fc.assert(
      fc.property(fc.array(cellNumber, { maxLength: 40 }), (numbers) => {
        const tally = new Tally();
        for (const number of numbers) tally.add(number);
        expect(tally.total().toString()).toBe(sum(numbers.map(exact)).toString());
      }),
      { numRuns: 2000 },
    );
  });
});

describe('short ways to exact numbers', () => {
  it('reads a whole number as the digits that its cell shows', () => {
    fc.assert(
      fc.property(fc.maxSafeInteger(), (whole) => {
        expect(exact(whole).toString()).toBe(new Exact(whole.toPrecision(15)).toString());
      }),
    );
    expect(Object.is(exact(-0).toNumber(), 0)).toBe(true);
  });

  it('divides up as division and rounding up do', () => {
    const divisor = cellNumber.map(Math.abs).filter((n) => n >= 1e-6);
    fc.assert(
      fc.property(cellNumber, divisor, (number, by) => {
        const [value, step] = [exact(number), exact(by)];
        expect(divideUp(value, step).toNumber() + 0).toBe(value.div(step).ceil().toNumber() + 0);
      }),
      { numRuns: 2000 },
    );
  });
});

describe('splitting by the largest remainder', () => {
  const shares = fc.array(
    fc.integer({ min: 0, max: 1_000_000 }).map((n) => exact(n / 1000)),
    { minLength: 1, maxLength: 12 },
  );

  it('never loses or makes a unit, and stays within one of each share', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 10_000_000 }), shares, (total, weights) => {
        const parts = splitUnits(exact(total), weights);
        expect(sum(parts).toString()).toBe(String(total));
        const weight = sum(weights);
        parts.forEach((part, at) => {
          expect(part.isInteger() && part.gte(0)).toBe(true);
          if (weight.isZero()) return;
          const quota = exact(total)
            .times(weights[at] ?? 0)
            .div(weight);
          expect(part.minus(quota).abs().lt(1)).toBe(true);
        });
      }),
    );
  });

  it.each([0, 2, 3])('splits money of %d decimals into whole smallest units', (decimals) => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), shares, (units, weights) => {
        const total = new Exact(units).div(new Exact(10).pow(decimals));
        const parts = splitAmount(total, weights, decimals);
        expect(sum(parts).toString()).toBe(total.toString());
        for (const part of parts) expect(part.decimalPlaces()).toBeLessThanOrEqual(decimals);
      }),
    );
  });
});
