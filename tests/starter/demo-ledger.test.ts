import { beforeAll, describe, expect, it } from 'vitest';
import type { Book, Item } from '../../src/domain/book/book.ts';
import { findDesign } from '../../src/domain/book/find.ts';
import { forecast } from '../../src/domain/forecast/forecast.ts';
import { healthCheck } from '../../src/domain/health/health-check.ts';
import { type Exact, exact, sum, zero } from '../../src/domain/kernel/exact.ts';
import { nameKey } from '../../src/domain/kernel/names.ts';
import type { TableData } from '../../src/workbook/port.ts';
import { readBook, recogniseTables } from '../../src/workbook/read/read-book.ts';
import { demoTables } from '../../src/starter/demo/demo-tables.ts';
import { demoDay, firstDay } from '../../src/starter/demo/season.ts';

describe("the demo's ledger", () => {
  let data: readonly TableData[];
  let book: Book;
  beforeAll(() => {
    data = demoTables();
    const recognised = recogniseTables(data.map(({ headers, rows }) => [headers, ...rows]));
    if (!recognised.ok) throw new Error(recognised.failure.sentence);
    const read = readBook(recognised.value);
    if (!read.ok) throw new Error(read.failure.sentence);
    book = read.value;
  });

  it('never takes the stock of an item below zero', () => {
    const changes = new Map<string, { day: number; quantity: Exact }[]>();
    const note = (name: string, day: number, quantity: number) => {
      const list = changes.get(nameKey(name)) ?? [];
      changes.set(nameKey(name), [...list, { day: Math.floor(day), quantity: exact(quantity) }]);
    };
    for (const lot of book.lots) note(lot.material.name, lot.received, lot.quantity);
    for (const move of book.ledger.moves) note(move.item.name, move.when, move.quantity);
    const below = [...changes].flatMap(([name, list]) => {
      const days = [...new Set(list.map(({ day }) => day))].sort((a, b) => a - b);
      return days
        .filter((day) => sum(list.flatMap((c) => (c.day <= day ? [c.quantity] : []))).lt(0))
        .map((day) => `${name} on ${String(day)}`);
    });
    expect(below).toEqual([]);
    expect(changes.size).toBeGreaterThan(30);
  });

  it('takes nothing from a lot that it does not hold, nor before it came', () => {
    for (const lot of book.lots) {
      const taken = book.ledger.moves.filter(
        (move) => isMaterial(move.item) && nameKey(move.lot) === nameKey(lot.lot),
      );
      const left = exact(lot.quantity).plus(sum(taken.map(({ quantity }) => exact(quantity))));
      expect(left.gte(0), lot.lot).toBe(true);
      expect(
        taken.every(({ when }) => when >= lot.received),
        lot.lot,
      ).toBe(true);
    }
  });

  it('puts back of every batch the value it took, to the cent', () => {
    const batches = [...book.batches.values()];
    expect(batches.length).toBeGreaterThan(30);
    for (const { batch, good } of batches) {
      const moves = book.ledger.moves.filter((move) => nameKey(move.batch) === nameKey(batch));
      const values = moves.map(({ value }) => exact(value ?? Number.NaN));
      expect(sum(values).toNumber(), batch).toBe(0);
      expect(values.every((value) => value.decimalPlaces() <= 2)).toBe(true);
      expect(sumOf(moves, 'made').toNumber()).toBe(good);
    }
  });

  it('sells each bar of Sales out of Ledger, and no more', () => {
    for (const name of book.designs.values()) {
      const design = findDesign(book, name.name);
      const inSales = sum(
        book.sales
          .filter((sale) => sale.design === (design.ok && design.value))
          .filter(({ soldOn }) => soldOn >= firstDay)
          .map(({ bars }) => exact(bars)),
      );
      const moves = book.ledger.moves.filter(
        ({ item }) => nameKey(item.name) === nameKey(name.name),
      );
      expect(sumOf(moves, 'sold').neg().toNumber(), name.name).toBe(inSales.toNumber());
      expect(inSales.gt(20), name.name).toBe(true);
    }
  });

  it('has every month of three years, the strongest of each in November and December', () => {
    const bars = new Map<string, number>();
    for (const sale of book.sales) {
      const month = new Date((sale.soldOn - 25569) * 86_400_000).toISOString().slice(0, 7);
      bars.set(month, (bars.get(month) ?? 0) + sale.bars);
    }
    // November 2023 to November 2026.
    expect([...bars.keys()].sort()).toHaveLength(37);
    const months = [...bars].sort(([a], [b]) => (a < b ? -1 : 1));
    // Years that begin with their November.
    const strongest = [0, 12, 24].flatMap((first) =>
      months
        .slice(first, first + 12)
        .sort((a, b) => b[1] - a[1])
        .slice(0, 2)
        .map(([month]) => month)
        .sort(),
    );
    expect(strongest).toEqual(['2023-11', '2023-12', '2024-11', '2024-12', '2025-11', '2025-12']);
  });

  it('stays between its first day and the day before its own today', () => {
    const days = [
      ...book.ledger.moves.map(({ when }) => when),
      ...book.lots.map(({ received }) => received),
      ...book.sales.filter(({ sale }) => !sale.startsWith('N-')).map(({ soldOn }) => soldOn),
    ];
    expect(Math.min(...days)).toBe(firstDay);
    expect(Math.max(...days)).toBeLessThan(demoDay);
  });

  it('has weekly sums of a notebook before it, which are no moves and no fair', () => {
    const older = book.sales.filter(({ sale }) => sale.startsWith('N-'));
    expect(older.every(({ soldOn, fair }) => soldOn < firstDay && fair === '')).toBe(true);
    expect(older.length).toBeGreaterThan(100);
    expect(healthCheck(book, demoDay, '')).toEqual([]);
  });

  it('has a season in its forecast: the coming December is far above January', () => {
    const ahead = [...book.designs.values()].map((design) => {
      const found = forecast(monthsOf(book, design.name), 3);
      if (!found.ok) throw new Error(found.failure.sentence);
      return found.value;
    });
    // From October on: November, December, January.
    for (const [, december = 0, january = 0] of ahead)
      expect(december).toBeGreaterThan(3 * january);
  });

  it('has used, left over, spare, made, sold, wasted and counted moves', () => {
    const reasons = new Set(book.ledger.moves.map(({ reason }) => reason));
    expect([...reasons].sort()).toEqual(
      ['counted', 'left over', 'made', 'sold', 'spare', 'used', 'wasted'].sort(),
    );
  });

  it('is the same when made again', () => {
    expect(demoTables()).toEqual(data);
  });
});

const isMaterial = (item: Item): boolean => item.kind === 'material';

const sumOf = (moves: Book['ledger']['moves'], reason: string): Exact =>
  moves
    .filter((move) => move.reason === reason)
    .reduce((total, move) => total.plus(exact(move.quantity)), zero);

/** Bars of a design sold in each month from November 2023 to October 2026. */
const monthsOf = (book: Book, design: string): number[] => {
  const months = new Array<number>(36).fill(0);
  for (const sale of book.sales) {
    if (sale.design.name !== design) continue;
    const day = new Date((sale.soldOn - 25569) * 86_400_000);
    const month = (day.getUTCFullYear() - 2023) * 12 + day.getUTCMonth() - 10;
    if (month < 36) months[month] = (months[month] ?? 0) + sale.bars;
  }
  return months;
};
