import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compositionOf } from '../../../src/domain/label/composition.ts';
import { ingredientsText, labelNames } from '../../../src/domain/label/ingredients.ts';
import { type Tables, withRows, withSetting, workshop } from '../../support/small-book.ts';
import { barTables, bookOf, designOf, type Ingredient, refusal, sound } from './label-book.ts';

function textOf(tables: Tables): string {
  const book = bookOf(tables);
  return sound(ingredientsText(book, designOf(book)));
}

const refusalOf = (tables: Tables) => {
  const book = bookOf(tables);
  return refusal(ingredientsText(book, designOf(book)));
};

describe('compositionOf', () => {
  it('weighs one bar from its layers: tiles and embeds by the piece, pours, scent and paint, no box', () => {
    const book = bookOf(workshop);
    const { totalG, materials } = sound(compositionOf(book, designOf(book, 'Tide Pool')));
    const g = new Map(materials.map(({ material, g }) => [material.name, g.toNumber()]));
    // Tiles 36 × 25 ÷ 36 = 25 g; embed 30 ÷ 6 = 5 g; pours 57.5 g; scent 2 % of 57.5 = 1.15 g;
    // paint 0.5 ml × 1.25 + 1 ml × 0.8 = 1.425 g.
    expect(totalG.toNumber()).toBe(25 + 5 + 57.5 + 1.15 + 1.425);
    expect(g.get('Orange oil')).toBe(1.15);
    expect(g.get('Glycerin')).toBe(0.625);
    // Slate 12.5 g and, in 6.25 g of Mist, 15 parts of 25: 3.75 g more; 3 % of it is mica.
    expect(g.get('Blue mica')).toBeCloseTo(16.25 * 0.03, 12);
    // White base: the embed, and 10 parts of 25 of Mist.
    expect(g.get('White base')).toBe(5 + 2.5);
    expect(g.has('Box')).toBe(false);
  });
});

describe('ingredientsText', () => {
  it('orders as the rule’s own example does', () => {
    // REFERENCES §7a, order test by G1 and G2: base 94.2 %, fragrance 2.0, glycerin 3.0, preservative
    // 0.5, vitamin E 0.2, mica and CI 77891 0.1.
    const text = textOf(
      barTables([
        { name: 'Shimmer', g: 0.1, inci: 'Mica 40; CI 77891 60' },
        { name: 'Vitamin E', g: 0.2, inci: 'Tocopherol' },
        { name: 'Keeper', g: 0.5, inci: 'Phenoxyethanol' },
        { name: 'Scent', g: 2, inci: 'Parfum' },
        { name: 'Sweet', g: 3, inci: 'Glycerin' },
        { name: 'Base', g: 94.2, inci: 'Aqua 60; Sodium Stearate 40' },
      ]),
    );
    expect(text).toBe(
      'Aqua, Sodium Stearate, Glycerin, Parfum, Phenoxyethanol, Tocopherol, Mica, CI 77891',
    );
  });

  it('puts colour additives last even above 1 %, and knows them by CI and a number alone', () => {
    expect(
      textOf(
        barTables([
          { name: 'White', g: 60, inci: 'CI 77891' },
          { name: 'Rest', g: 40, inci: 'Citric Acid 1; Aqua 99' },
        ]),
      ),
    ).toBe('Aqua, Citric Acid, CI 77891');
  });

  it('merges duplicates before it sorts and before the 1 % test', () => {
    // Glycerin 0.6 % from each of two: 1.2 % together, so over 1 % (REFERENCES §7a: merge first).
    const book = bookOf(
      barTables([
        { name: 'Base', g: 98.6, inci: 'Aqua' },
        { name: 'A', g: 0.6, inci: 'Glycerin' },
        { name: 'B', g: 0.6, inci: ' GLYCERIN ' },
        { name: 'C', g: 0.2, inci: 'Sorbitol' },
      ]),
    );
    const names = sound(labelNames(book, designOf(book)));
    expect(names.map(({ name, group }) => [name, group])).toEqual([
      ['Aqua', 'over 1 %'],
      ['GLYCERIN', 'over 1 %'],
      ['Sorbitol', 'up to 1 %'],
    ]);
  });

  it('counts exactly 1 % among those in any order: 21 CFR 701.3(f)(2), "not exceeding 1 percent"', () => {
    const book = bookOf(
      barTables([
        { name: 'Base', g: 98, inci: 'Aqua' },
        { name: 'One', g: 1, inci: 'Sorbitol' },
        { name: 'Other', g: 1, inci: 'Glycerin' },
      ]),
    );
    const names = sound(labelNames(book, designOf(book)));
    expect(names.map(({ group }) => group)).toEqual(['over 1 %', 'up to 1 %', 'up to 1 %']);
    // EU Art. 19(1)(g) orders exactly 1 % (REFERENCES G22): equal weights may stand either way, ours by name.
    expect(names.map(({ name }) => name)).toEqual(['Aqua', 'Glycerin', 'Sorbitol']);
  });

  it('lets nothing be lost in thirds: exactly 1 % through a blend of three parts', () => {
    let tables = barTables([
      { name: 'Clear', kind: 'base', inci: 'Aqua' },
      { name: 'Dye', kind: 'colourant', inci: 'Sorbitol' },
    ]);
    tables = withRows(
      tables,
      'Colours',
      ['Deep', 'Clear', 97, 'parts'],
      ['Deep', 'Dye', 3, 'parts'],
      ['Pale', 'Deep', 1, 'parts'],
      ['Pale', 'Clear', 2, 'parts'],
    );
    tables = withRows(tables, 'Layers', ['Bar', '1', 'pour', 'Pale', '', 90, 'g']);
    const book = bookOf(tables);
    const names = sound(labelNames(book, designOf(book)));
    expect(names.at(-1)).toMatchObject({ name: 'Sorbitol', group: 'up to 1 %' });
    expect(names.at(-1)?.percent.toString()).toBe('1');
  });

  it('does not depend on the order of rows', () => {
    const parts: Ingredient[] = [
      { name: 'A', inci: 'Aqua 50; glycerin 30; CI 77891 20' },
      { name: 'B', inci: 'Glycerin 80; CI 77491 20', allergens: 'Linalool 1' },
      { name: 'C', inci: 'PARFUM', allergens: 'linalool 5; d-Limonene 3' },
    ];
    const first = textOf(barTables(parts.map((part) => ({ ...part, g: 7 }))));
    fc.assert(
      fc.property(fc.shuffledSubarray(parts, { minLength: 3 }), (shuffled) => {
        expect(textOf(barTables(shuffled.map((part) => ({ ...part, g: 7 }))))).toBe(first);
      }),
    );
  });

  it('descends by weight within each group, whatever the amounts', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 9999 }), { minLength: 1, maxLength: 8 }),
        (grams) => {
          const book = bookOf(
            barTables(
              grams.map((g, at) => ({
                name: `M${at}`,
                g: g / 10,
                inci: at % 3 === 2 ? `CI ${77_000 + at}` : `Name ${String.fromCharCode(65 + at)}`,
              })),
            ),
          );
          const total = grams.reduce((sum, g) => sum + g, 0);
          const expected = grams
            .map((g, at) => ({ g, at }))
            .sort((a, b) => rank(a, total) - rank(b, total) || b.g - a.g || a.at - b.at)
            .map(({ at }) =>
              at % 3 === 2 ? `CI ${77_000 + at}` : `Name ${String.fromCharCode(65 + at)}`,
            );
          expect(sound(ingredientsText(book, designOf(book)))).toBe(expected.join(', '));
        },
      ),
    );
  });
});

const rank = ({ g, at }: { g: number; at: number }, total: number): number =>
  at % 3 === 2 ? 2 : g * 100 > total ? 0 : 1;

describe('allergens on the label', () => {
  const scented = (share: number, allergens: string, skinStay?: string): Tables => {
    const tables = barTables([
      { name: 'Base', g: 100 - share, inci: 'Aqua' },
      { name: 'Scent', g: share, inci: 'Parfum', allergens, kind: 'fragrance' },
    ]);
    return skinStay === undefined ? tables : withSetting(tables, 'Skin stay', skinStay);
  };

  // Reg. (EC) 1223/2009, Annex III: named when above 0.01 % rinse-off, 0.001 % leave-on. The first two
  // rows are REFERENCES G25.
  it.each([
    ['0.6 % of 2 % is 0.012 %: named', 2, 'Linalool 0.6', undefined, 'Aqua, Parfum, Linalool'],
    ['0.5 % of 2 % is 0.0100 %: not named', 2, 'Linalool 0.5', undefined, 'Aqua, Parfum'],
    ['0.05 % of 2 % is 0.001 %: not named', 2, 'Linalool 0.05', 'leave-on', 'Aqua, Parfum'],
    ['0.06 % of 2 % left on: named', 2, 'Linalool 0.06', 'leave-on', 'Aqua, Parfum, Linalool'],
    ['one over 1 % stands at its weight', 5, 'Limonene 94', undefined, 'Aqua, Parfum, Limonene'],
    ['by the list’s name', 2, 'd-limonene 90', undefined, 'Aqua, Parfum, Limonene'],
    ['spellings add up', 2, 'Limonene 0.3; d-Limonene 0.3', undefined, 'Aqua, Parfum, Limonene'],
    ['a share not known is named', 2, 'Linalool', undefined, 'Aqua, Parfum, Linalool'],
    ['one not on the list is named', 2, 'Newfoundol 5', undefined, 'Aqua, Parfum, Newfoundol'],
    ['none', 2, 'none', undefined, 'Aqua, Parfum'],
  ])('%s', (_, share, allergens, skinStay, expected) => {
    expect(textOf(scented(share, allergens, skinStay))).toBe(expected);
  });

  it('adds up over materials, and names once what INCI and Allergens both state', () => {
    // 0.006 % from each scent is 0.012 % together.
    const two = barTables([
      { name: 'Base', g: 98, inci: 'Aqua' },
      { name: 'S1', g: 1, inci: 'Parfum', allergens: 'Linalool 0.6' },
      { name: 'S2', g: 1, inci: 'Parfum', allergens: 'Linalool 0.6' },
    ]);
    expect(textOf(two)).toBe('Aqua, Parfum, Linalool');
    const both = bookOf(
      barTables([
        { name: 'Base', g: 90, inci: 'Aqua' },
        { name: 'Oil', g: 10, inci: 'Limonene', allergens: 'Limonene 100' },
      ]),
    );
    const names = sound(labelNames(both, designOf(both)));
    expect(names.map(({ name, percent }) => [name, percent.toNumber()])).toEqual([
      ['Aqua', 90],
      ['Limonene', 10],
    ]);
  });

  it('stands before the colour additives', () => {
    const tables = barTables([
      { name: 'Base', g: 90, inci: 'Aqua 90; CI 77891 10' },
      { name: 'Oil', g: 10, inci: 'Parfum', allergens: 'Citral 3' },
    ]);
    expect(textOf(tables)).toBe('Aqua, Parfum, Citral, CI 77891');
  });
});

describe('a label that can’t be written yet', () => {
  it('names every material without an INCI', () => {
    const failure = refusalOf(
      barTables([
        { name: 'Base', g: 9 },
        { name: 'Dye', g: 1 },
      ]),
    );
    expect(failure.kind).toBe('not yet');
    expect(failure.sentence).toMatch(/Fill in INCI in Materials for Base, Dye/);
  });

  it('says so where a design has no layers, or only packaging', () => {
    expect(refusalOf(barTables([])).sentence).toMatch(/no lines in Layers/);
    const boxed = barTables([{ name: 'Box', kind: 'packaging', unit: 'each' }], {
      layers: [['Bar', '1', 'pack', 'Box', '', 1, 'each']],
    });
    expect(refusalOf(boxed).sentence).toMatch(/nothing to name/);
  });

  it('says so where a material in the bar is counted by the piece', () => {
    const charm = barTables([{ name: 'Charm', unit: 'each', inci: 'Tin' }], {
      layers: [['Bar', '1', 'paint', 'Charm', '', 1, 'each']],
    });
    expect(refusalOf(charm).sentence).toMatch(/Charm is counted by the piece/);
  });

  it('refuses two allergens run together, of which one would be on no label', () => {
    const oil = { name: 'Oil', g: 1, inci: 'Parfum', allergens: 'Eugenol 80,Linalool 0.3' };
    expect(refusalOf(barTables([oil])).sentence).toMatch(
      /Allergens of Oil in Materials runs entries together in "Eugenol 80,Linalool 0\.3"/,
    );
  });

  it('refuses percents over the whole', () => {
    const tables = barTables([{ name: 'Oil', g: 1, inci: 'Parfum', allergens: 'Linalool 120' }]);
    expect(refusalOf(tables).sentence).toMatch(
      /Allergens of Oil in Materials gives Linalool 120 %/,
    );
  });
});
