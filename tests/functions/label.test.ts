import { describe, expect, it } from 'vitest';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import {
  ranges,
  table,
  type Tables,
  withCell,
  withSetting,
  workshop,
} from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

/** The small workshop with what a label asks of its materials filled in. Figures are invented. */
const labelled: Tables = {
  ...workshop,
  Materials: table(
    'Material | Kind | Unit | Density g/ml | Drops per ml | Max % | INCI | Allergens',
    ['Clear base', 'base', 'g', 1.05, '', '', 'Aqua 60; Glycerin 40', ''],
    ['White base', 'base', 'g', 1.04, '', '', 'Aqua 60; Glycerin 30; CI 77891 10', ''],
    ['Blue mica', 'colourant', 'g', '', '', 1, 'Mica 50; CI 77007 50', ''],
    ['Green drops', 'colourant', 'ml', 1.2, 25, 1, 'Glycerin 90; CI 77288 10', ''],
    ['Orange oil', 'fragrance', 'ml', 0.85, '', 1, 'Parfum', 'Limonene 90; Citral 0.5; Linalool 1'],
    ['Glycerin', 'extra', 'ml', 1.25, '', '', 'Glycerin', ''],
    ['Alcohol', 'extra', 'ml', 0.8, '', '', 'Alcohol Denat.', ''],
    ['Box', 'packaging', 'each', '', '', '', '', ''],
  ),
};

describe('INGREDIENTS', () => {
  it('writes the label: descending weight, then up to 1 %, allergens among them, colours last', () => {
    // The bar weighs 90.075 g: 25 tiles, 5 embed, 57.5 pours, 1.15 scent, 1.425 paint. Parfum 1.28 %,
    // limonene 90 % of it 1.15 %, alcohol 0.89 %, mica 0.27 %, linalool 0.0128 %; citral 0.0064 % is
    // under 0.01 %. CI 77891 is 0.75 g of white base, CI 77007 0.24 g, CI 77288 0.006 g.
    expect(call('INGREDIENTS', 'tide pool', bookOf(labelled))).toBe(
      'Aqua, Glycerin, Parfum, Limonene, Alcohol Denat., Mica, Linalool, CI 77891, CI 77007, CI 77288',
    );
  });

  it('names citral too where the bar stays on the skin', () => {
    const leaveOn = withSetting(labelled, 'Skin stay', 'leave-on');
    expect(call('INGREDIENTS', 'Tide Pool', bookOf(leaveOn))).toMatch(/Linalool, Citral, CI 77891/);
  });

  it('is #N/A naming the materials without an INCI', () => {
    const { code, message } = errorOf(() => call('INGREDIENTS', 'Tide Pool', bookOf(workshop)));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/Fill in INCI in Materials for Alcohol, Blue mica, Clear base/);
    const one = withCell(labelled, 'Materials', 5, 'INCI', '');
    expect(errorOf(() => call('INGREDIENTS', 'Tide Pool', bookOf(one))).message).toMatch(
      /for Orange oil:/,
    );
  });

  it.each([
    ['an unknown design', 'Tide Pol', '#VALUE!', /Did you mean "Tide Pool"\?/],
    ['no design', '', '#VALUE!', /design is blank/],
  ])('refuses %s', (_, design, code, sentence) => {
    const failure = errorOf(() => call('INGREDIENTS', design, bookOf(labelled)));
    expect(failure.code).toBe(code);
    expect(failure.message).toMatch(sentence);
  });

  it('asks for the book to be recalculated where it is not in memory', () => {
    expect(errorOf(() => call('INGREDIENTS', 'Tide Pool', 'book 0123456789abcdef')).code).toBe(
      '#N/A',
    );
  });

  it('keeps a formula in an INCI a plain text', () => {
    const hostile = withCell(labelled, 'Materials', 6, 'INCI', '=HYPERLINK("x")');
    expect(call('INGREDIENTS', 'Tide Pool', bookOf(hostile))).toContain('=HYPERLINK("x")');
  });
});

describe('CHECKS', () => {
  const spill = call('CHECKS', 'Tide Pool', bookOf(labelled)) as unknown[][];
  const rowOf = (beginning: string) =>
    spill.find(([check]) => String(check).startsWith(beginning)) ?? [];

  it('spills Check, Value, Limit, Result, Source, each result one of three words', () => {
    expect(spill[0]).toEqual(['Check', 'Value', 'Limit', 'Result', 'Source']);
    for (const result of column(spill, 'Result'))
      expect(['ok', 'over', 'unknown']).toContain(result);
    for (const source of column(spill, 'Source')) expect(source).not.toBe('');
  });

  it('holds the fragrance load against Max %', () => {
    const [, value, limit, result] = rowOf('Fragrance load');
    // 1.15 g of 90.075 g.
    expect(value).toBeCloseTo(1.276714, 6);
    expect([limit, result]).toEqual([1, 'over']);
  });

  it('holds the recipe’s weight against Net g: 90.075 g of 95 is more than 4.5 g short', () => {
    expect(rowOf('Bar weight').slice(1, 4)).toEqual([90.075, 95, 'over']);
    expect(rowOf('One bar short of Net g by, g (EU)').slice(1, 4)).toEqual([4.925, 4.5, 'over']);
  });

  it('calls expired lots on hand over: O1 and both of Clear base are past today', () => {
    expect(rowOf('Expired lot on hand: O1')[3]).toBe('over');
    expect(rowOf('Expired lot on hand: C1')[3]).toBe('over');
  });

  it('answers before a label can be written, everything unknown that is', () => {
    const bare = call('CHECKS', 'Plain Bar', bookOf(workshop)) as unknown[][];
    expect(bare.find(([check]) => check === 'INCI: White base')?.[3]).toBe('unknown');
    expect(bare.at(-1)?.[3]).toBe('unknown');
  });

  it('refuses an unknown design', () => {
    expect(errorOf(() => call('CHECKS', 'Tide Pol', bookOf(labelled))).code).toBe('#VALUE!');
  });
});
