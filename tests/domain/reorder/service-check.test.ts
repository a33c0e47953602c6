import { describe, expect, it } from 'vitest';
import type { Material } from '../../../src/domain/book/book.ts';
import { findMaterial } from '../../../src/domain/book/find.ts';
import { dice } from '../../../src/domain/kernel/dice.ts';
import { serviceCheck } from '../../../src/domain/reorder/service-check.ts';
import { simulateStock, type WatchedStock } from '../../../src/domain/reorder/simulate-stock.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { demoTables } from '../../../src/starter/demo/demo-tables.ts';
import { playYear, typicalYear } from '../../../src/domain/reorder/year-shown.ts';
import { stockOuts } from '../../../src/domain/reorder/stock-year.ts';
import { bookOf, on, refusal, season, sound } from '../supplies/season-book.ts';

const share = (stock: WatchedStock, years = 2000): number => {
  const { waits, covered } = simulateStock(stock, stock.point + stock.lot, 365 * years, dice(5));
  return covered / waits;
};
const plain = { leadDays: 5, sdLeadDays: 0, lot: 100 } as const;

describe('simulated stock', () => {
  it('even use: the mean of the lead time is just enough, less is never enough', () => {
    // 10 a day for 5 days are 50.
    expect(share({ ...plain, uses: [10], point: 50 }, 10)).toBe(1);
    expect(share({ ...plain, uses: [10], point: 49 }, 10)).toBe(0);
  });

  it('lumps of 100 on one day in ten: the binomial chance', () => {
    const uses = [100, ...new Array<number>(9).fill(0)];
    // Stock goes by hundreds, so an order is placed at 100 left; at most one lump in 5 days:
    // 0.9⁵ + 5 × 0.1 × 0.9⁴ = 0.91854.
    expect(share({ ...plain, uses, point: 100 })).toBeCloseTo(0.91854, 2);
    // At most two: + 10 × 0.01 × 0.9³ = 0.99144.
    expect(share({ ...plain, uses, point: 200 })).toBeCloseTo(0.99144, 2);
  });

  it('goes down by use and up by what comes', () => {
    const { path } = simulateStock({ ...plain, uses: [10], point: 50 }, 150, 12, dice(1));
    // From 150: an order at 50 on the tenth day comes five days later, after that day's use.
    expect(path).toEqual([140, 130, 120, 110, 100, 90, 80, 70, 60, 50, 40, 30]);
    const later = simulateStock({ ...plain, uses: [10], point: 50 }, 150, 16, dice(1)).path;
    expect(later.slice(12)).toEqual([20, 10, 0, 90]);
  });

  it('a lead time that varies takes more stock', () => {
    const uses = [8, 10, 12];
    const sure = share({ ...plain, uses, point: 55 }, 200);
    expect(share({ ...plain, uses, sdLeadDays: 2, point: 55 }, 200)).toBeLessThan(sure);
  });
});

/** Base used in lumps of 100 g on every tenth day of 90. */
const lumpy = (rows: readonly (readonly Cell[])[]) =>
  bookOf(
    season({
      plan: [],
      lots: [['L1', 'Base', '2026-01-01', 100_000, 1, '']],
      moves: rows,
    }),
  );
const asOf = on('2026-10-30');
const used = (quantityOf: (day: number) => number): Cell[][] =>
  Array.from({ length: 90 }, (_, day) => day)
    .filter((day) => quantityOf(day) > 0)
    .map((day) => [`E${day}`, asOf - day, 'used', 'Base', -quantityOf(day), '', '', '']);

describe('the year shown', () => {
  const lumps = { ...plain, uses: [100, ...new Array<number>(9).fill(0)], point: 100 };

  it('is one whose waits went as on the whole', () => {
    // 0.91854 as above; a year has some 36 waits, so one more or less is 2.8 of 100.
    const year = playYear(lumps, typicalYear(lumps, 91.854));
    expect(Math.abs((year.covered / year.waits) * 100 - 91.854)).toBeLessThan(1.4);
  });

  it('shows every wait that stock did not last', () => {
    for (let number = 1; number <= 25; number += 1) {
      const { waits, covered, path } = playYear(lumps, number);
      // Each such wait has a day of its own on which something was missing, or shares it with another.
      expect(stockOuts(path).length > 0).toBe(covered < waits || (path.at(-1) ?? 0) < 0);
    }
  });

  it('has the same days of use for every point', () => {
    const bottomless = (point: number) => ({ ...lumps, point: point * 1e6, lot: 1e9 });
    const [low, high] = [playYear(bottomless(1), 3).path, playYear(bottomless(2), 3).path];
    expect(low.map((stock, day) => (high[day] ?? 0) - stock)).toEqual(low.map(() => 1e6));
  });
});

describe('the check of a reorder point', () => {
  const material = (book: ReturnType<typeof lumpy>): Material => sound(findMaterial(book, 'Base'));

  it('lumpy use: the usual formula misses, and the point from own use holds', () => {
    const book = lumpy(used((day) => (day % 10 === 0 ? 100 : 0)));
    const found = sound(serviceCheck(book, material(book), asOf));
    // Mean 10, SD √((9 × 90² + 81 × 10²) ÷ 89) = 30.17: 50 + 1.645 × √5 × 30.17 = 160.97.
    expect(found.usual.point).toBeCloseTo(160.97, 1);
    // The order is placed anywhere between 60.97 and 160.97 g, as far as the lump took it. From 100 g
    // up it covers one lump, below none: 0.6097 × 0.91854 + 0.3903 × 0.59049 = 0.7905.
    expect(Math.abs(found.usual.servicePercent - 79.05)).toBeLessThan(3);
    expect(found.own.servicePercent).toBeGreaterThanOrEqual(94.5);
    expect(found.own.point).toBeGreaterThan(found.usual.point);
    expect(found.trust).toBe('own');
    expect(found.sentence).toMatch(
      /^With 161 g, the reorder point of the usual formula, Base lasted in \d\d of 100 simulated waits for an order; 95 were asked for\. It is used in lumps, on 9 of 90 days, which the formula does not foresee\. Trust \d+ g, which lasted in 9\d of 100\.$/,
    );
  });

  it('even use: what a day takes below the point counts, and the answer is always the same', () => {
    const book = lumpy(used((day) => 40 + (day % 3)));
    const found = sound(serviceCheck(book, material(book), asOf));
    // Ordered at the end of a day, so stock has fallen under the point by half a day's use.
    expect(found.own.point).toBeGreaterThan(200);
    expect(found.usual.year).toHaveLength(365);
    expect(found.sentence).toMatch(/Trust/);
    expect(found.sentence).not.toMatch(/lumps/);
    expect(sound(serviceCheck(book, material(book), asOf))).toEqual(found);
  });

  it('nothing used lately: a sentence', () => {
    const book = lumpy([['E1', '2026-01-02', 'used', 'Base', -5, '', '', '']]);
    expect(refusal(serviceCheck(book, material(book), asOf))).toEqual({
      kind: 'not yet',
      sentence:
        'Base was not used in the last 90 days, so there is nothing to try a reorder point on.',
    });
  });

  it('the demo’s bases: own use keeps the service asked for within chance', () => {
    const ranges = Object.fromEntries(
      demoTables().map(({ name, headers, rows }) => [name, [headers, ...rows]]),
    );
    const book = bookOf(ranges);
    for (const name of ['Clear base', 'White base']) {
      const found = sound(serviceCheck(book, sound(findMaterial(book, name)), on('2026-11-25')));
      expect(found.own.servicePercent).toBeGreaterThan(found.askedPercent - 1.5);
    }
  });
});
