import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book, Design, Fair } from '../../../src/domain/book/book.ts';
import { barCost } from '../../../src/domain/cost/bar-cost.ts';
import { readDay } from '../../../src/domain/kernel/day.ts';
import { exact } from '../../../src/domain/kernel/exact.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { costBySize, evenAt, evenByPrice } from '../../../taskpane/costs/figures.ts';
import { costByBatch, priceAgainstBars, whereCostGoes } from '../../../taskpane/costs/pictures.ts';
import { takingsByFair } from '../../../taskpane/parts/takings-by-fair.ts';
import { niceTicks } from '../../../taskpane/pictures/scale.ts';
import { bookOf } from '../book-of.ts';
import { marketWorkshop } from '../market-workshop.ts';
import { rowsOf, smallWorkshop, withRows } from '../small-workshop.ts';

const today = readDay('2026-11-25') ?? 0;
const book = bookOf(marketWorkshop);
const designOf = (from: Book, name: string): Design => {
  const design = from.designs.get(nameKey(name));
  if (design === undefined) throw new Error(name);
  return design;
};
const fairOf = (name: string): Fair => {
  const fair = book.fairs.get(nameKey(name));
  if (fair === undefined) throw new Error(name);
  return fair;
};

describe('niceTicks', () => {
  it.each([
    [10, 5, [0, 2, 4, 6, 8, 10]],
    [23, 4, [0, 10, 20, 30]],
    [0.9, 4, [0, 0.5, 1]],
    [0, 4, [0, 1]],
  ])('up to %d in at most %i steps', (largest, most, ticks) => {
    expect(niceTicks(largest, most)).toEqual(ticks);
  });

  it('reaches over any largest, in few even steps', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1e9, noNaN: true }), (largest) => {
        const ticks = niceTicks(largest);
        expect(ticks.at(-1)).toBeGreaterThanOrEqual(largest * (1 - 1e-9));
        expect(ticks.length).toBeLessThanOrEqual(7);
      }),
    );
  });
});

describe('the cost of a bar', () => {
  it('by batch size is the full cost at each size', () => {
    const design = designOf(book, 'Harbour Light');
    const costs = costBySize(book, design, today);
    const twelve = barCost(book, design, 12, today);
    expect(costs.ok && costs.value).toHaveLength(36);
    expect(costs.ok && twelve.ok && costs.value[11]?.eq(twelve.value.perBar)).toBe(true);
  });

  it('is said once where no batch size makes a difference', () => {
    // Without work, molds and lost bars, 90 g of base at 0.01 are all of it.
    const flat = bookOf(
      [
        ['Settings', 'Currency|USD'],
        ['Designs', 'Harbour Light||||||', 'Plain Wave||||||'],
      ].reduce(
        (workshop, [name = '', ...lines]) => withRows(workshop, name, () => rowsOf(lines)),
        smallWorkshop,
      ),
    );
    const picture = costByBatch(flat, designOf(flat, 'Plain Wave'), today);
    expect(picture.ok && picture.value.says).toBe('A bar costs $0.90 in a batch of any size.');
  });

  it('is drawn with every line in the table, and says the largest', () => {
    const picture = whereCostGoes(book, designOf(book, 'Harbour Light'), today);
    const cost = barCost(book, designOf(book, 'Harbour Light'), 12, today);
    const lines = cost.ok ? cost.value.lines.filter(({ perBar }) => !perBar.isZero()) : [];
    expect(picture.ok && picture.value.rows).toHaveLength(lines.length);
    // By hand: labour at 12 an hour: 5 minutes are 1.00 a bar, by far the most.
    expect(picture.ok && picture.value.says).toMatch(/The largest part is Labour/u);
    expect(picture.ok && picture.value.rows[0]?.slice(0, 2)).toEqual(['Labour', '$1.00']);
  });

  it('names the cheapest batch', () => {
    const picture = costByBatch(book, designOf(book, 'Harbour Light'), today);
    const costs = costBySize(book, designOf(book, 'Harbour Light'), today);
    if (!picture.ok || !costs.ok) throw new Error('no picture');
    const least = Math.min(...costs.value.map(Number));
    const size = costs.value.findIndex((cost) => Number(cost) === least) + 1;
    expect(picture.value.says).toContain(`cheapest in a batch of ${String(size)}:`);
  });

  it('is a sentence where it is not known', () => {
    const noCost = bookOf(
      withRows(marketWorkshop, 'Molds', (rows) => rows.map((row) => row.with(6, ''))),
    );
    const picture = whereCostGoes(noCost, designOf(noCost, 'Harbour Light'), today);
    expect(!picture.ok && picture.failure.sentence).toMatch(/Fill in Life fills for /u);
  });
});

describe('bars to break even', () => {
  it('come from the price without tax, by hand', () => {
    // 4.40 with 10 % inside is 4.00; at a cost of 1.50 a bar leaves 2.50: 52 ÷ 2.50 = 20.8.
    const point = evenAt(book, exact(1.5), fairOf('Quay Fair'), exact(4.4));
    expect(point.bars?.toString()).toBe('21');
    expect(evenAt(book, exact(4), fairOf('Quay Fair'), exact(4.4)).bars).toBeUndefined();
  });

  it('never rise with the price', () => {
    const bars = evenByPrice(book, exact(1.5), fairOf('Quay Fair')).flatMap((point) =>
      point.bars === undefined ? [] : [point.bars.toNumber()],
    );
    expect(bars).toEqual([...bars].sort((a, b) => b - a));
    expect(bars.length).toBeGreaterThan(10);
  });

  it('are told at the design’s own price', () => {
    const picture = priceAgainstBars(
      book,
      designOf(book, 'Harbour Light'),
      fairOf('Quay Fair'),
      today,
    );
    expect(picture.ok && picture.value.says).toMatch(/^At \$7\.00 each, \d+ bars pay for stall/u);
  });
});

describe('takings by fair', () => {
  it('are a sentence before the first sale', () => {
    const picture = takingsByFair(book);
    expect(!picture.ok && picture.failure.sentence).toBe(
      'No fair has sales yet. Record them under Sell.',
    );
  });

  it('stand beside what each brought home', () => {
    const sold = bookOf(
      withRows(marketWorkshop, 'Sales', () =>
        rowsOf([
          'S-1.01|2026-11-21|Harbour Light|20|7.7|Quay Fair|0',
          'S-2.01|2027-04-03|Plain Wave|2|4.4|Spring Fair|0',
        ]),
      ),
    );
    const picture = takingsByFair(sold);
    // By hand: 154 − 14 tax − 62 bars − 52 = 26; 8.80 − 0.80 − 1.20 − 30 = −23.20.
    expect(picture.ok && picture.value.rows).toEqual([
      ['Quay Fair, 21 Nov 2026', '$154.00', 'profit $26.00'],
      ['Spring Fair, 3 Apr 2027', '$8.80', 'loss $23.20'],
    ]);
    expect(picture.ok && picture.value.says).toBe(
      'Quay Fair did best: profit $26.00, of $154.00 taken.',
    );
  });
});
