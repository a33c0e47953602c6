import { describe, expect, it } from 'vitest';
import { column, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, workshop } from '../support/small-book.ts';

/** Rules of thumb of the trade, all common practice; the tables are ours, the answers must agree. */
const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

/** A book with one more design of the given layers. */
function bookWith(design: string, ...layers: readonly (readonly (string | number)[])[]): unknown {
  return bookOf({
    ...workshop,
    Designs: [...(workshop['Designs'] ?? []), [design, '', '', '', '', '', '', '']],
    Layers: [...(workshop['Layers'] ?? []), ...layers.map((layer) => [design, ...layer])],
  });
}

const rowsOf = (sheet: unknown, colour: string): unknown[][] =>
  (sheet as unknown[][]).filter(([, name]) => name === colour);

describe('common practice of mosaic soap', () => {
  it('about 25 g fills one section of 36 tiles of 1 × 1 cm', () => {
    expect(call('BASEPERMOLD', 'Tiles', bookOf(workshop))).toBe(25);
    const one = bookWith('One', ['1', 'tiles', 'Slate', 'Tiles', 36, 'each']);
    expect(rowsOf(call('MELTSHEET', 'One', 1, one), 'Slate')[0]?.slice(2, 5)).toEqual([1, 25, 25]);
    // One tile more needs a second section, filled whole.
    const more = bookWith('More', ['1', 'tiles', 'Slate', 'Tiles', 37, 'each']);
    expect(rowsOf(call('MELTSHEET', 'More', 1, more), 'Slate')[0]?.slice(2, 5)).toEqual([
      2, 50, 50,
    ]);
  });

  it('40 g of a colour is one section of 25 g and 15 g for a blend', () => {
    const sheet = call('MELTSHEET', 'Tide Pool', 2, bookOf(workshop));
    expect(rowsOf(sheet, 'Slate')[0]?.slice(2, 5)).toEqual([1, 40, 40]);
  });

  it('a blend of 25 g is mixed from 15 g and 10 g', () => {
    const mist = rowsOf(call('MELTSHEET', 'Tide Pool', 2, bookOf(workshop)), 'Mist');
    expect(mist.map((row) => row.slice(5, 8))).toEqual([
      ['Slate', 15, 'g'],
      ['Foam', 10, 'g'],
    ]);
    expect(mist[0]?.[4]).toBe(25);
  });

  it('a cavity of 6 × 6 cm takes 36 tiles', () => {
    const pattern = Array.from({ length: 6 }, (_, y) =>
      Array.from(
        { length: 6 },
        (_cell, x) => ['Slate', 'Teal', 'Slate', 'Mist'][(x + 2 * y) % 4] ?? '',
      ),
    );
    const tiles = column(call('TILECOUNT', pattern), 'Tiles') as number[];
    expect(tiles).toEqual([18, 9, 9]);
    expect(tiles.reduce((sum, count) => sum + count, 0)).toBe(36);
  });

  it('of three sections poured for two bars one colour is used up and half of the other two is spare', () => {
    // Two bars of 36 tiles, 18 of one colour and 9 of each other: 36, 18 and 18 of 36 poured.
    const sheet = call('MELTSHEET', 'Tide Pool', 2, bookOf(workshop));
    const spare = (colour: string): unknown => rowsOf(sheet, colour)[0]?.[8];
    expect([spare('Slate'), spare('Teal'), spare('Mist')]).toEqual([0, 18, 18]);
  });

  it('a seal of 15 to 20 g and a fill of 40 g go into each bar', () => {
    for (const sealG of [15, 17.5, 20]) {
      const sealed = bookWith(
        'Sealed',
        ['1', 'pour', 'Clear base', '', sealG, 'g'],
        ['2', 'pour', 'Clear base', '', 40, 'g'],
      );
      const poured = rowsOf(call('MELTSHEET', 'Sealed', 12, sealed), 'Clear base');
      expect(poured[0]?.[3]).toBe(12 * (sealG + 40));
    }
  });

  it('paint is mixed with 1 part glycerin to 2 parts alcohol', () => {
    const needs = call('MATERIALS', 'Tide Pool', 7, bookOf(workshop)) as unknown[][];
    const amount = (name: string): number =>
      Number(needs.find(([material]) => material === name)?.[1]);
    expect(amount('Alcohol')).toBe(2 * amount('Glycerin'));
    expect(amount('Glycerin')).toBe(3.5);
  });
});
