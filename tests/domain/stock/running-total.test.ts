import fc from 'fast-check';
import { expect, it } from 'vitest';
import { exact, sum } from '../../../src/domain/kernel/exact.ts';
import { exactOf, minus, plus, sumOfSquares, Tally } from '../../../src/domain/kernel/tally.ts';
import { RunningTotal } from '../../../src/domain/stock/running-total.ts';

/** What counts in millionths, what does not, and what is too large for it. */
const quantity = fc.oneof(
  fc.integer({ min: -4000, max: 4000 }).map((tenths) => tenths / 10),
  fc.constantFrom(0.1 + 0.2, 1e-7, -1 / 3, 1e11, -1e12, 123_456_789.123456),
);
const change = fc.record({ days: fc.nat(3), quantity });

const countOf = (number: number) => {
  const tally = new Tally();
  tally.add(number);
  return tally.count;
};

it('answers for any day the exact sum of all that was added by then, and of each day between', () => {
  fc.assert(
    fc.property(fc.array(change, { maxLength: 40 }), fc.nat(60), fc.nat(60), (changes, a, b) => {
      const total = new RunningTotal(changes.length);
      let day = 0;
      const added = changes.map((line) => {
        day += line.days;
        total.add(day, line.quantity);
        return { day, quantity: exact(line.quantity) };
      });
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      const until = added.filter((line) => line.day <= to);
      const expected = until.length === 0 ? undefined : sum(until.map((line) => line.quantity));
      const answered = total.at(to);
      expect(answered === undefined ? undefined : exactOf(answered).toString()).toBe(
        expected?.toString(),
      );
      const days = [...new Set(until.map((line) => line.day))].filter((each) => each > from);
      const byDay = days.map((each) =>
        sum(until.filter((line) => line.day === each).map((line) => line.quantity)).toString(),
      );
      expect(total.between(from, to).map((count) => exactOf(count).toString())).toEqual(byDay);
    }),
    { numRuns: 1000 },
  );
});

it('adds, takes away and squares counts as exact decimals do', () => {
  fc.assert(
    fc.property(quantity, quantity, (a, b) => {
      const [countA, countB] = [countOf(a), countOf(b)];
      expect(exactOf(plus(countA, countB)).toString()).toBe(exact(a).plus(exact(b)).toString());
      expect(exactOf(minus(countA, countB)).toString()).toBe(exact(a).minus(exact(b)).toString());
      expect(sumOfSquares([countA, countB]).toString()).toBe(
        exact(a).pow(2).plus(exact(b).pow(2)).toString(),
      );
    }),
    { numRuns: 1000 },
  );
});
