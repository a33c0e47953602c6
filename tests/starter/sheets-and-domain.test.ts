import { beforeAll, describe, expect, it } from 'vitest';
import type { Book } from '../../src/domain/book/book.ts';
import { isoDate } from '../../src/domain/kernel/day.ts';
import { exact } from '../../src/domain/kernel/exact.ts';
import { netWeight } from '../../src/domain/label/net-weight.ts';
import { openPlan } from '../../src/domain/schedule/plan-lines.ts';
import { cashByWeek } from '../../src/domain/supplies/cash-by-week.ts';
import { supplies } from '../../src/domain/supplies/supplies.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { demoDay } from '../../src/starter/demo/season.ts';
import { type Built, build, variants } from './built.ts';

/** What the sheets work out with the spreadsheet's own formulas, against the domain's answer. */
describe('native sheets of the demo', () => {
  let built: Built;
  let book: Book;
  beforeAll(() => {
    built = build(variants[0]?.[1] ?? neverMade);
    const recognised = recogniseTables(
      built.starter.tables.map(({ headers, rows }) => [headers, ...rows]),
    );
    const read = recognised.ok ? readBook(recognised.value) : recognised;
    if (!read.ok) throw new Error(read.failure.sentence);
    book = read.value;
  });

  const cellAt = (sheet: string, row: number, column: number) =>
    built.described.sheets
      .find(({ name }) => name === sheet)
      ?.cells?.filter((cell) => cell.row === row && cell.column === column);
  const shown = (sheet: string, row: number, column: number) =>
    cellAt(sheet, row, column)?.find(({ formula }) => formula)?.value;
  const typedIn = (sheet: string, row: number, column: number) =>
    cellAt(sheet, row, column)?.find(({ formula }) => !formula)?.value;

  it('leave each line of the plan the bars that the plan leaves it', () => {
    const plan = openPlan(book, demoDay);
    if (!plan.ok) throw new Error(plan.failure.sentence);
    const rows = Array.from({ length: 24 }, (_, index) => 17 + index);
    const onSheet = new Map(rows.map((row) => [shown('Season', row, 6), shown('Season', row, 5)]));
    expect(plan.value.open.length).toBeGreaterThan(5);
    for (const { line, barsToMake } of plan.value.open)
      expect(onSheet.get(line.planLine), line.planLine).toBe(barsToMake);
    expect(shown('Season', 6, 1)).toBe(
      plan.value.open.reduce((sum, { barsToMake }) => sum + barsToMake, 0),
    );
  });

  it('put the money of each order in the week that it must be placed in', () => {
    const plan = supplies(book, demoDay);
    if (!plan.ok) throw new Error(plan.failure.sentence);
    const weeks = cashByWeek(plan.value, demoDay);
    expect(weeks.length).toBeGreaterThan(1);
    const onSheet = new Map(
      Array.from({ length: 8 }, (_, index) => [
        shown('Shopping', 32 + index, 0),
        [1, 2].map((column) => Number(shown('Shopping', 32 + index, column))),
      ]),
    );
    for (const { monday, cost, late } of weeks) {
      const [money, overdue] = onSheet.get(isoDate(monday)) ?? [];
      expect(money).toBeCloseTo(Number(cost), 9);
      expect(overdue).toBeCloseTo(Number(late), 9);
    }
    // The demo has orders that are late, on the list as well.
    expect(Number(weeks[0]?.late)).toBeGreaterThan(0);
    expect(shown('Shopping', 8, 1)).toBe('☐ late');
  });

  it('state the net weight as the rule does', () => {
    const [design] = book.designs.values();
    const weight = netWeight(exact(Number(design?.netG)));
    expect(shown('Label', 8, 1)).toBe(weight.ok ? weight.value.statement : '');
  });

  it('split the cost of a bar by kind without a rest', () => {
    const kinds = Array.from({ length: 6 }, (_, index) => Number(shown('Costing', 27 + index, 1)));
    expect(kinds.every((kind) => kind > 0)).toBe(true);
    expect(kinds.reduce((a, b) => a + b, 0)).toBeCloseTo(Number(shown('Costing', 8, 2)), 9);
  });

  it('show what a fair leaves at each price and number of bars, from break-even on not below 0', () => {
    const fact = (down: number) => Number(shown('Fair prices', 3 + down, 8));
    const [fixed, cost, taxInside, fees, feeFixed] = [0, 1, 3, 4, 5].map(fact) as number[];
    for (let row = 13; row < 22; row += 1) {
      const [price = 0, left = 0, even = 0] = [0, 1, 2].map((column) =>
        Number(shown('Fair prices', row, column)),
      );
      const net = price / (1 + Number(taxInside) / 100);
      const kept = net - (price * Number(fees)) / 100 - Number(feeFixed) - Number(cost);
      expect(left).toBeCloseTo(kept, 9);
      expect(even * left).toBeGreaterThanOrEqual(Number(fixed));
      expect((even - 1) * left).toBeLessThan(Number(fixed));
      for (let step = 1; step <= 8; step += 1) {
        const profit = Number(shown('Fair prices', row, 3 + step));
        expect(profit).toBeCloseTo(10 * step * kept - Number(fixed), 9);
        expect(profit >= 0).toBe(10 * step >= even);
      }
    }
  });

  it('price a set so that it leaves its margin, and not a step more', () => {
    const set = (down: number) => Number(shown('Pricing', 28 + down, 3));
    const [cost, price, singles, saved] = [8, 9, 10, 11].map(set) as [
      number,
      number,
      number,
      number,
    ];
    const typed = (down: number) => Number(typedIn('Pricing', 28 + down, 3));
    const [packaging, wanted] = [typed(6), typed(7) / 100];
    const bars = [2, 3, 4].map((down) => Number(shown('Pricing', 28 + down, 3)));
    expect(cost).toBeCloseTo(bars.reduce((a, b) => a + b, 0) + packaging, 9);
    const from = (down: number) => Number(shown('Pricing', 3 + down, 7));
    const [feeFixed, taxInside, fees] = [3, 4, 5].map(from) as [number, number, number];
    const margin = (asked: number) => {
      const net = asked / (1 + taxInside / 100);
      return (net - (asked * fees) / 100 - feeFixed - cost) / net;
    };
    expect(margin(price)).toBeGreaterThanOrEqual(wanted);
    // Prices end in .50.
    expect(margin(price - 1)).toBeLessThan(wanted);
    expect(price % 1).toBe(0.5);
    expect(saved).toBeCloseTo(singles - price, 9);
  });

  it('recall each batch that the lot reached once, with bars of its own', () => {
    const rows = Array.from({ length: 30 }, (_, line) =>
      Array.from({ length: 8 }, (_, column) => shown('Recall', 10 + line, column)),
    ).filter(([item]) => item !== '');
    const batches = rows.filter(
      ([, batch, poured, , made]) => batch !== '' && poured !== '' && made !== '',
    );
    const trail = Array.from({ length: 120 }, (_, line) => shown('Recall', 43 + line, 1));
    expect(batches.length).toBeGreaterThan(2);
    expect(batches.map(([, batch]) => batch).sort()).toEqual(
      [...new Set(trail.filter((batch) => batch !== ''))].sort(),
    );
    const total = (column: number) => batches.reduce((sum, row) => sum + Number(row[column]), 0);
    expect([shown('Recall', 6, 1), shown('Recall', 6, 4)]).toEqual([total(4), total(5)]);
    // What was made is on the shelf, sold or gone; no batch has another's bars.
    for (const [, batch, , , made, onHand, sold, gone] of batches)
      expect(Number(onHand) + Number(sold) + Number(gone), String(batch)).toBe(made);
  });
});

const neverMade = (): never => {
  throw new Error('There is no demo variant');
};
