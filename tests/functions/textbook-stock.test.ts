import { describe, expect, it } from 'vitest';
import { loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();
const safety = (...args: readonly number[]): number => call('SAFETYSTOCK', ...args) as number;

/** z itself: the safety stock of one day's use of SD 1 over a lead time of one day. */
const z = (servicePercent: number): number => safety(servicePercent, 1, 1);

describe('normal quantiles', () => {
  // REFERENCES §2a. Ten digits. 80 to 97.5 %, 97 and 99 % seen in published tables to 2–4 digits and, at 95 % and 97.5 %,
  // in a statistics library's printed output to 15; the further digits, and 98 and 99.9 %, derived.
  it.each([
    [50, 0],
    [80, 0.8416212336],
    [90, 1.2815515655],
    [95, 1.644853627],
    [97, 1.8807936082],
    [97.5, 1.9599639845],
    [98, 2.0537489106],
    [99, 2.326347874],
    [99.9, 3.0902323062],
  ])('z of %d %% is %d', (service, quantile) => {
    expect(z(service)).toBeCloseTo(quantile, 9);
    // Less than 1 % is refused: contract §2.
    if (service <= 99) expect(z(100 - service)).toBeCloseTo(-quantile, 9);
  });
});

describe('safety stock and reorder point against textbooks', () => {
  // The books read z from a table of two decimals; where they print a result, theirs is met within
  // what that rounding of z moves it (the tolerance is shown), and the exact z to nine digits.
  it.each([
    // REFERENCES I1: Taylor, Introduction to Management Science, ch. 16, carpet store: z 1.65, R = 326.1 (result derived).
    {
      book: 'Taylor',
      args: [95, 5, 10],
      mean: 30,
      lead: 10,
      printed: 326.0888,
      zTable: 1.65,
      sigma: 15.8113883,
    },
    // REFERENCES I2: the same with a lead time of SD 3 (inputs from memory; formula z·√(Lσd² + d²σL²) as published).
    {
      book: 'Russell & Taylor',
      args: [95, 5, 10, 30, 3],
      mean: 30,
      lead: 10,
      printed: 450.7743,
      zTable: 1.65,
      sigma: 91.3783344,
    },
    // REFERENCES I3: Stevenson, Operations Management 14e, ch. 12, example 8: demand over the lead time 50, SD 5, risk 3 %.
    {
      book: 'Stevenson 8',
      args: [97, 5, 1],
      mean: 50,
      lead: 1,
      printed: 59.4,
      zTable: 1.88,
      sigma: 5,
    },
    // REFERENCES I4: Stevenson, example 9: 50 jars a week, SD 3, 2 weeks, risk 10 % (result derived; prints 105.43).
    {
      book: 'Stevenson 9',
      args: [90, 3, 2],
      mean: 50,
      lead: 2,
      printed: 105.4306,
      zTable: 1.28,
      sigma: 4.24264069,
    },
    // REFERENCES I5: Heizer & Render, Operations Management, ch. 12, p. 543: lead time alone varies; prints 153.6 and 513.6.
    {
      book: 'Heizer & Render',
      args: [90, 0, 6, 60, 2],
      mean: 60,
      lead: 6,
      printed: 513.6,
      zTable: 1.28,
      sigma: 120,
    },
  ])('$book', ({ args, mean, lead, printed, zTable, sigma }) => {
    const stock = safety(...args);
    expect(stock).toBeCloseTo(z(args[0] ?? 0) * sigma, 6);
    // With the book's own z in place of the exact one the printed figure appears.
    expect(mean * lead + stock + (zTable - z(args[0] ?? 0)) * sigma).toBeCloseTo(printed, 3);
    expect(Math.abs(mean * lead + stock - printed)).toBeLessThan(0.006 * sigma);
  });

  it('both vary, exact z (derived: 1.644853627 × √(4 × 20² + 100²) = 177.1561573)', () => {
    // REFERENCES I6.
    expect(safety(95, 20, 4, 100, 1)).toBeCloseTo(177.1561573, 7);
  });

  it('is nothing where nothing varies, or where an even chance is enough', () => {
    // REFERENCES I7.
    expect(safety(95, 0, 10, 30, 0)).toBe(0);
    expect(safety(50, 5, 10, 30, 3)).toBe(0);
  });
});

describe('economic order quantity against published examples', () => {
  it.each([
    // REFERENCES E1: F. W. Harris, How Many Parts to Make at Once, Factory 10(2), 1913: 1000 a month, 2 $, 0.10 $ at
    // 10 % a year; √(240·M·S/C) prints 2,190.
    ['Harris 1913', 12_000, 2, 0.01, 2190.8902],
    // REFERENCES E2: Heizer & Render form: D 10 000, S 30, H 15.
    ['Render', 10_000, 30, 15, 200],
    // REFERENCES E3: the same page's discount case: D 7500, S 30, 10 % of 50 and of 48.
    ['discount, at 50', 7500, 30, 5, 300],
    ['discount, at 48', 7500, 30, 4.8, 306.1862],
    // REFERENCES E4: a calculator's manual page: D 10 000, K 2, P 8 at 2 %: 500.00.
    ['calculator', 10_000, 2, 0.16, 500],
    // REFERENCES E5: a homework page: 20 000 a quarter, 180 an order, 6 a quarter (result derived).
    ['homework', 20_000, 180, 6, 1095.4451],
  ])('%s', (_, use, order, holding, size) => {
    expect(call('ORDERSIZE', use, order, holding)).toBeCloseTo(size, 4);
  });

  it('costs as much to order as to hold (identity)', () => {
    // REFERENCES E6.
    const size = call('ORDERSIZE', 10_000, 30, 15) as number;
    expect((10_000 / size) * 30).toBeCloseTo((size / 2) * 15, 9);
  });
});
