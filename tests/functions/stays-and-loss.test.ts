import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { readTables } from '../support/ledger-of.ts';
import { ranges, table, type Tables } from '../support/small-book.ts';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

/** 95 g of base poured, 2 g of oil and 5 ml of alcohol (4 g) on it: 97 g once dry, 101 g as poured. */
const bar = (stays: Cell, netG = 97): Tables => ({
  Settings: table('Setting | Value', ['Scale step g', 0]),
  Materials: table(
    'Material | Kind | Unit | Density g/ml | Max % | INCI | Stays %',
    ['Base', 'base', 'g', '', '', 'Sodium Stearate', ''],
    ['Oil', 'fragrance', 'g', '', 2, 'Parfum', ''],
    ['Spirit', 'extra', 'ml', 0.8, '', 'Alcohol', stays],
  ),
  Lots: table(
    'Lot | Material | Received | Quantity | Paid',
    ['L1', 'Base', '2024-01-05', 1000, 10],
    ['L2', 'Oil', '2024-01-05', 100, 20],
    ['L3', 'Spirit', '2024-01-05', 500, 5],
  ),
  Colours: table('Colour | Ingredient | Amount | Measure'),
  Designs: table('Design | Net g', ['Bar', netG]),
  Layers: table(
    'Design | Layer | Part | Item | Per bar | Per',
    ['Bar', '1', 'pour', 'Base', 95, 'g'],
    ['Bar', '2', 'scent', 'Oil', 2, 'g'],
    ['Bar', '3', 'paint', 'Spirit', 5, 'ml'],
  ),
});

const check = (book: unknown, name: string): Cell[] | undefined =>
  (call('CHECKS', 'Bar', book) as Cell[][]).find(([said]) => String(said).includes(name));

describe('Stays %', () => {
  it.each([
    ['', 'Sodium Stearate, Alcohol, Parfum', 101],
    [100, 'Sodium Stearate, Alcohol, Parfum', 101],
    [50, 'Sodium Stearate, Alcohol, Parfum', 99],
    [0, 'Sodium Stearate, Parfum', 97],
  ])('of %j leaves on the label %s', (stays, label, weight) => {
    const book = bookOf(bar(stays));
    expect(call('INGREDIENTS', 'Bar', book)).toBe(label);
    // 2 g of oil in what the finished bar weighs.
    expect(check(book, 'Fragrance load')?.[1]).toBeCloseTo(200 / weight, 9);
  });

  it('tells a bar short that only its alcohol made heavy enough', () => {
    // Poured it weighs 101 g, dry 97: it can't be sold as 100 g.
    const short = (stays: Cell): Cell | undefined => check(bookOf(bar(stays, 100)), 'weight')?.[3];
    expect(short('')).toBe('ok');
    expect(short(0)).not.toBe('ok');
  });

  it('holds limits against the finished bar, so 2 % of a drying bar is over 2 % of a dry one', () => {
    expect(check(bookOf(bar('')), 'Fragrance load')?.[3]).toBe('ok');
    expect(check(bookOf(bar(0)), 'Fragrance load')?.[3]).toBe('over');
  });

  it('is bought, used and costed in full', () => {
    for (const id of ['MATERIALS', 'MELTSHEET', 'TAKEOUT'])
      expect(call(id, 'Bar', 3, bookOf(bar(0))), id).toEqual(call(id, 'Bar', 3, bookOf(bar(''))));
    expect(call('COSTLINES', 'Bar', bookOf(bar(0)), 3, '2024-03-01')).toEqual(
      call('COSTLINES', 'Bar', bookOf(bar('')), 3, '2024-03-01'),
    );
  });

  it('lets an INCI stay blank of what leaves the label', () => {
    const tables = bar(0);
    const bare = {
      ...tables,
      Materials: (tables['Materials'] ?? []).map((r) => r.map((c) => (c === 'Alcohol' ? '' : c))),
    };
    expect(call('INGREDIENTS', 'Bar', bookOf(bare))).toBe('Sodium Stearate, Parfum');
  });

  it.each([
    [101, 'Stays %'],
    [-1, 'Stays %'],
    ['none', 'Stays %'],
  ])('%j is refused by its column', (stays, says) => {
    expect(errorOf(() => bookOf(bar(stays))).message).toContain(says);
  });

  it('law: the weights of a label never rise as less stays, and cost never moves', () => {
    const full = call('COSTPERBAR', 'Bar', bookOf(bar('')), 5, '2024-03-01');
    const oilIn = (stays: number) => Number(check(bookOf(bar(stays)), 'Fragrance load')?.[1]);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), fc.integer({ min: 1, max: 100 }), (a, b) => {
        const [less, more] = a < b ? [a, b] : [b, a];
        expect(oilIn(less)).toBeGreaterThanOrEqual(oilIn(more));
        expect(call('COSTPERBAR', 'Bar', bookOf(bar(less)), 5, '2024-03-01')).toBe(full);
      }),
      { numRuns: 25 },
    );
  });
});

/** A design of tiles alone, from sections of 36 that take 25 g (common practice figures). */
const tiles = (loss: Cell): Tables => ({
  Settings: table('Setting | Value', ['Scale step g', 0]),
  Materials: table('Material | Kind | Unit', ['Base', 'base', 'g']),
  Molds: table(
    'Mold | Makes | Cavities | Fill g | Loss %',
    ['Tray', 'tiles', 36, 25, loss],
    ['Six', 'bars', 6, '', loss],
  ),
  Designs: table('Design', ['Bar']),
  Layers: table('Design | Layer | Part | Item | Mold | Per bar | Per', [
    ...['Bar', '1', 'tiles', 'Base', 'Tray', 36, 'each'],
  ]),
});
const fillsOf = (loss: Cell, bars: number): unknown[] => {
  const sheet = call('MELTSHEET', 'Bar', bars, bookOf(tiles(loss)));
  return [column(sheet, 'Fills')[0], column(sheet, 'Melt g')[0], column(sheet, 'Spare tiles')[0]];
};

describe('Loss %', () => {
  it.each([
    ['', 10, [10, 250, 0]],
    [0, 10, [10, 250, 0]],
    // 360 ÷ 0.9 = 400, and 400 ÷ 36 is 11 whole fills and a little more.
    [10, 10, [12, 300, 72]],
    // 324 ÷ 0.9 ÷ 36 is 10 to the last digit, and no eleventh.
    [10, 9, [10, 250, 36]],
    // A third of a percent has no last digit.
    [33.3333333333333, 2, [3, 75, 36]],
    [50, 1, [2, 50, 36]],
  ] as const)('of %j shapes for %d bars %j', (loss, bars, fills) => {
    expect(fillsOf(loss, bars)).toEqual(fills);
  });

  it.each([
    [100, 'Loss %'],
    [-5, 'Loss %'],
    ['a few', 'Loss %'],
  ])('%j is refused by its column', (loss, says) => {
    expect(errorOf(() => bookOf(tiles(loss))).message).toContain(says);
  });

  it('of a mold of bars is no yield, which is said', () => {
    const said = (loss: Cell) =>
      readTables(tiles(loss)).assumptions.map(({ sentence }) => sentence);
    expect(said('')).toEqual([]);
    expect(said(5)).toEqual([
      'Loss % of Six is not used, since it makes bars: bars that fail are told by Yield % in Designs.',
    ]);
  });

  it('law: what does not break of the fills is enough, and of one fill fewer is not', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 990 }),
        fc.integer({ min: 1, max: 200 }),
        (tenths, bars) => {
          const [fills] = fillsOf(tenths / 10, bars);
          const whole = (count: number): number => count * 36 * (1000 - tenths);
          expect(whole(Number(fills))).toBeGreaterThanOrEqual(bars * 36 * 1000);
          expect(whole(Number(fills) - 1)).toBeLessThan(bars * 36 * 1000);
        },
      ),
      { numRuns: 60 },
    );
  });
});
