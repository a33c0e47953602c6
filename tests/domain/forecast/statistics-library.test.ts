import fc from 'fast-check';
import { linearRegression, mean, sampleStandardDeviation, sumSimple } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { meanAbsoluteError, rootMeanSquaredError } from '../../../src/domain/forecast/accuracy.ts';
import { lineThrough } from '../../../src/domain/forecast/starts.ts';
import { dailyUse } from '../../../src/domain/reorder/daily-use.ts';
import { findMaterial, itemOfMaterial } from '../../../src/domain/book/find.ts';
import { bookOf, on, season, sound } from '../supplies/season-book.ts';

/** Bars of a month, or grams of a day. */
const figures = (least: number) =>
  fc.array(fc.integer({ min: 0, max: 2000 }), { minLength: least, maxLength: 60 });

/** Our statistics against simple-statistics, a general-purpose library of other hands. */
describe('statistics as a library of other hands has them', () => {
  it('the line that trends start from', () => {
    fc.assert(
      fc.property(figures(3), (values) => {
        const { intercept, slope } = lineThrough(values);
        const { m, b } = linearRegression(values.map((value, index) => [index + 1, value]));
        expect(slope).toBeCloseTo(m, 6);
        expect(intercept).toBeCloseTo(b, 6);
      }),
    );
  });

  it('the errors of a forecast', () => {
    fc.assert(
      fc.property(figures(1), (values) => {
        const errors = values.map((value) => value - 1000);
        expect(meanAbsoluteError(errors)).toBeCloseTo(mean(errors.map(Math.abs)), 8);
        const squares = errors.map((error) => error ** 2);
        expect(rootMeanSquaredError(errors)).toBeCloseTo(
          Math.sqrt(sumSimple(squares) / errors.length),
          8,
        );
      }),
    );
  });

  it('mean and standard deviation of daily use', () => {
    const asOf = on('2026-10-30');
    const item = (book: ReturnType<typeof bookOf>) =>
      itemOfMaterial(sound(findMaterial(book, 'Base')));
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 0, max: 900 }), { minLength: 90, maxLength: 90 }),
        (days) => {
          fc.pre(days.some((used) => used > 0));
          const moves = days.flatMap((used, day) =>
            used === 0 ? [] : [[`E${day}`, asOf - day, 'used', 'Base', -used, '', '', '']],
          );
          const book = bookOf(season({ plan: [], moves }));
          const use = sound(dailyUse(book, item(book), asOf));
          expect(use.mean.toNumber()).toBeCloseTo(mean(days), 8);
          expect(use.variance.sqrt().toNumber()).toBeCloseTo(sampleStandardDeviation(days), 8);
        },
      ),
      { numRuns: 25 },
    );
  });
});
