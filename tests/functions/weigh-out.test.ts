import { describe, expect, it } from 'vitest';
import { column, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, withCell, withSetting, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));
const book = (): unknown => bookOf(workshop);
const amounts = (sheet: unknown): number[] => column(sheet, 'Amount').map(Number);

describe('WEIGHOUT', () => {
  it('gives whole steps of the scale and whole drops, the base taking up what they leave', () => {
    // By hand, 2 bars (see MELTSHEET's own test): 40 g Slate are 38.8 + 1.2, of which the scale gives
    // 1.2 (below ten steps) and the base 38.8 rounded up; 25 g Teal take 5 drops, 0.24 g, and 25 g base.
    expect(call('WEIGHOUT', 'Tide Pool', 2, book())).toEqual([
      [...header, 'Mind'],
      [1, 'Slate', 1, 40, 40, 'Clear base', 39, 'g', 0, 0, ''],
      [1, 'Slate', 1, 40, 40, 'Blue mica', 1.2, 'g', 0, 0, 'on a finer scale'],
      [2, 'Foam', 0, 10, 10, 'White base', 10, 'g', 0, 0, ''],
      [3, 'Mist', 1, 25, 25, 'Slate', 15, 'g', 18, 0, ''],
      [3, 'Mist', 1, 25, 25, 'Foam', 10, 'g', 18, 0, ''],
      [4, 'Teal', 1, 25, 25, 'Clear base', 25, 'g', 18, 0, ''],
      [4, 'Teal', 1, 25, 25, 'Green drops', 5, 'drops', 18, 0, ''],
      [5, 'White base', 1, 30, 30, 'White base', 30, 'g', 4, 0, ''],
      [6, 'Clear base', 0, 115, 115, 'Clear base', 115, 'g', 0, 0, ''],
    ]);
  });

  it('never says 0 drops: it says what to do about less than half of one', () => {
    // 25 g of Teal of 99.04 + 1.8 × 0.048 g take 0.45 drops.
    const weak = bookOf(withCell(workshop, 'Colours', 4, 'Amount', 1.8));
    const sheet = call('WEIGHOUT', 'Tide Pool', 2, weak) as unknown[][];
    const drops = sheet.find((row) => row.includes('Green drops'));
    expect(drops?.slice(5)).toEqual([
      'Green drops',
      '',
      '',
      18,
      0,
      'less than half a drop: leave it out, or melt more',
    ]);
    const taken = call('TAKEOUT', 'Tide Pool', 2, weak) as unknown[][];
    expect(taken.find(([name]) => name === 'Green drops')?.[1]).toBe(0);
  });

  it('is no more than the scale’s steps away from MELTSHEET, which stays exact', () => {
    const bars = 7;
    const exactly = amounts(call('MELTSHEET', 'Tide Pool', bars, book()));
    const byHand = amounts(call('WEIGHOUT', 'Tide Pool', bars, book()));
    expect(byHand).toHaveLength(exactly.length);
    for (const [at, amount] of byHand.entries())
      expect(Math.abs(amount - (exactly[at] ?? 0))).toBeLessThanOrEqual(1);
  });

  it('rounds by the scale step that is set', () => {
    const coarse = bookOf(withSetting(workshop, 'Scale step g', 5));
    const sheet = call('WEIGHOUT', 'Tide Pool', 2, coarse) as unknown[][];
    const base = sheet.filter((row) => row[5] === 'Clear base').map((row) => row[6]);
    expect(base.every((g) => Number(g) < 50 || Number(g) % 5 === 0)).toBe(true);
    expect(base).toContain(115);
  });
});

describe('TAKEOUT', () => {
  it('takes what WEIGHOUT weighs and what goes on the bars', () => {
    const rows = (id: string) => (call(id, 'Tide Pool', 2, book()) as unknown[][]).slice(1);
    const weighed = rows('WEIGHOUT')
      .filter((row) => row[5] === 'Clear base')
      .reduce((sum, row) => sum + Number(row[6]), 0);
    expect(weighed).toBe(39 + 25 + 115);
    const taken = rows('TAKEOUT');
    expect(taken.find(([name]) => name === 'Clear base')?.[1]).toBe(weighed);
    // 2 % of 115 g are 2.3 g: 2.706 ml by 0.85 g/ml, of which a hand measures 2.7.
    expect(taken.find(([name]) => name === 'Orange oil')?.[1]).toBe(2.7);
    expect(rows('MATERIALS').find(([name]) => name === 'Orange oil')?.[1]).toBe(2.705882352941);
  });
});

const header = [
  'Step',
  'Colour',
  'Fills',
  'Needed g',
  'Melt g',
  'Ingredient',
  'Amount',
  'Unit',
  'Spare tiles',
  'Leftover g',
];
