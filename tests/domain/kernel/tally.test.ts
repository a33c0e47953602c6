import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exact, sum } from '../../../src/domain/kernel/exact.ts';
import { exactOf, plus, sumOfSquares, Tally } from '../../../src/domain/kernel/tally.ts';

describe('the running sum, at its edges (the law is in tests/laws/numbers.test.ts)', () => {
  it.each([
    ['nothing', []],
    ['tenths', Array.from({ length: 10 }, () => 0.1)],
    [
      'a number of more than 15 digits',
      [Number('9007199254.740991'), Number('5000000000.1234567')],
    ],
    ['sums past what whole millionths hold', [9e9, 9e9, 9e9, 0.000001]],
    ['numbers of more than six decimals', [1e-7, 1e-7, 0.1234567]],
    ['opposites', [1e12, 0.3, -1e12]],
  ])('%s', (_, numbers) => {
    const tally = new Tally();
    for (const number of numbers) tally.add(number);
    expect(tally.total().toString()).toBe(sum(numbers.map(exact)).toString());
  });
});

/** What counts in millionths, what does not, and what is too large for it. */
const quantity = fc.oneof(
  fc.integer({ min: -4000, max: 4000 }).map((tenths) => tenths / 10),
  fc.constantFrom(0.1 + 0.2, 1e-7, -1 / 3, 1e11, -1e12, 123_456_789.123456),
);

const countOf = (number: number) => {
  const tally = new Tally();
  tally.add(number);
  return tally.count;
};

it('adds and squares counts as exact decimals do', () => {
  fc.assert(
    fc.property(quantity, quantity, (a, b) => {
      const [countA, countB] = [countOf(a), countOf(b)];
      expect(exactOf(plus(countA, countB)).toString()).toBe(exact(a).plus(exact(b)).toString());
      expect(sumOfSquares([countA, countB]).toString()).toBe(
        exact(a).pow(2).plus(exact(b).pow(2)).toString(),
      );
    }),
    { numRuns: 1000 },
  );
});
