import { describe, expect, it } from 'vitest';
import type { Material } from '../../../src/domain/book/book.ts';
import { recogniseTables, readBook } from '../../../src/workbook/read/read-book.ts';
import { readTables } from '../../support/ledger-of.ts';
import { type Range, ranges, table, type Tables } from '../../support/small-book.ts';

const Materials = table(
  'Material | Kind | Unit | Pack size | Pack price | Lead days | Supplier',
  ['Clear base', 'base', 'g', 4000, 30, '', 'Made-up Base'],
  ['Label', 'packaging', 'each', 100, 9, 2, 'made-up  base '],
  ['Twine', 'packaging', 'each', 50, 4, '', 'Nobody'],
);
const suppliers = (...rows: Range): Range =>
  table('Supplier | Carriage | Free from | Lead days', ...rows);
const breaks = (...rows: Range): Range => table('Material | From packs | Pack price', ...rows);

const material = (tables: Tables, name: string): Material => {
  const found = readTables(tables).materials.get(name);
  if (found === undefined) throw new Error(`There is no ${name}.`);
  return found;
};

const findingsOf = (tables: Tables): string[] => {
  const recognised = recogniseTables(ranges(tables));
  const read = recognised.ok ? readBook(recognised.value) : recognised;
  return read.ok
    ? []
    : read.findings.map(
        ({ table: name, row, column, says }) => `${name} ${row ?? ''} ${column ?? ''}: ${says}`,
      );
};

describe('Suppliers and PriceBreaks', () => {
  const all = {
    Materials,
    Suppliers: suppliers(['Made-up Base', 9.5, 140, 7]),
    PriceBreaks: breaks(['clear base', 6, 26], ['Clear base', 3, 28.5]),
  };

  it('give a material its supplier’s terms, and its Lead days where its own are blank', () => {
    const base = material(all, 'clear base');
    expect([base.terms?.carriage.toNumber(), base.terms?.freeFrom?.toNumber()]).toEqual([9.5, 140]);
    expect(base.leadDays?.toNumber()).toBe(7);
    const label = material(all, 'label');
    expect([label.terms?.supplier, label.leadDays?.toNumber()]).toEqual(['Made-up Base', 2]);
    const twine = material(all, 'twine');
    expect([twine.terms, twine.leadDays]).toEqual([undefined, undefined]);
  });

  it('give its prices by ascending packs', () => {
    expect(
      material(all, 'clear base').priceBreaks.map(({ fromPacks, packPrice }) => [
        fromPacks,
        packPrice.toNumber(),
      ]),
    ).toEqual([
      [3, 28.5],
      [6, 26],
    ]);
    expect(material(all, 'label').priceBreaks).toEqual([]);
  });

  it('may be left out: nothing of a material changes', () => {
    const base = material({ Materials }, 'clear base');
    expect([base.terms, base.leadDays, base.priceBreaks]).toEqual([undefined, undefined, []]);
  });

  it('say where a supplier may be one of Suppliers, written otherwise', () => {
    const { assumptions } = readTables({
      Materials,
      Suppliers: suppliers(['Made-up Bases', 3, '', '']),
    });
    expect(assumptions.map(({ sentence }) => sentence)).toEqual([
      'Clear base is bought from "Made-up Base", which is not in Suppliers: if "Made-up Bases" is meant, write both alike.',
      'Label is bought from "made-up base", which is not in Suppliers: if "Made-up Bases" is meant, write both alike.',
    ]);
  });

  it('take a blank Carriage for none, and a blank Free from for never', () => {
    const { terms } = material(
      { Materials, Suppliers: suppliers(['Made-up Base', '', '', '']) },
      'clear base',
    );
    expect([terms?.carriage.toNumber(), terms?.freeFrom]).toEqual([0, undefined]);
  });

  const badRows: readonly [string, Partial<Record<'Suppliers' | 'PriceBreaks', Range>>, RegExp][] =
    [
      [
        'a supplier without a name',
        { Suppliers: suppliers(['', 3, '', '']) },
        /Suppliers 1 Supplier: is blank/,
      ],
      [
        'carriage below nothing',
        { Suppliers: suppliers(['Nobody', -1, '', '']) },
        /Suppliers 1 Carriage: is -1/,
      ],
      [
        'carriage as a text',
        { Suppliers: suppliers(['Nobody', 'six', '', '']) },
        /Suppliers 1 Carriage: is "six"/,
      ],
      [
        'free from below nothing',
        { Suppliers: suppliers(['Nobody', 3, -5, '']) },
        /Suppliers 1 Free from: is -5/,
      ],
      [
        'lead days of decades',
        { Suppliers: suppliers(['Nobody', 3, '', 9999]) },
        /Suppliers 1 Lead days: is 9999/,
      ],
      [
        'lead days with their unit',
        { Suppliers: suppliers(['Nobody', 3, '', '2 weeks']) },
        /Suppliers 1 Lead days: .*14/,
      ],
      [
        'a supplier twice',
        { Suppliers: suppliers(['Nobody', 3, '', ''], ['NOBODY', 4, '', '']) },
        /Suppliers 2 Supplier: "NOBODY" stands in row 1 already/,
      ],
      [
        'a material that is none',
        { PriceBreaks: breaks(['Clear bse', 2, 3]) },
        /PriceBreaks 1 Material: .*"Clear base"/,
      ],
      [
        'half a pack',
        { PriceBreaks: breaks(['Label', 2.5, 3]) },
        /PriceBreaks 1 From packs: is 2.5/,
      ],
      [
        'no packs',
        { PriceBreaks: breaks(['Label', 0, 3]) },
        /PriceBreaks 1 From packs: is blank or 0/,
      ],
      ['no price', { PriceBreaks: breaks(['Label', 2, '']) }, /PriceBreaks 1 Pack price: is blank/],
      [
        'two prices for as many packs',
        { PriceBreaks: breaks(['Label', 2, 3], ['label', 2, 4]) },
        /PriceBreaks 2 From packs: is 2, which row 1 says of "label" already/,
      ],
    ];
  it.each(badRows)('refuse %s', (_, tables, says) => {
    const found = findingsOf({ Materials, ...tables });
    expect(
      found.some((finding) => says.test(finding)),
      found.join('\n'),
    ).toBe(true);
  });
});

describe('Leftover worth %', () => {
  it.each([
    [undefined, 80],
    [0, 0],
    [100, 100],
    [62.5, 62.5],
  ])('%s is read as %d', (cell, percent) => {
    const rows = cell === undefined ? [] : [['Leftover worth %', cell]];
    const { settings } = readTables({ Settings: table('Setting | Value', ...rows) });
    expect(settings.leftoverWorthPercent.toNumber()).toBe(percent);
  });

  it.each([-1, 100.5, 'most'])('%s is refused', (cell) => {
    expect(
      findingsOf({ Settings: table('Setting | Value', ['Leftover worth %', cell]) }),
    ).toHaveLength(1);
  });

  it('names a share that may be meant as percent', () => {
    const { assumptions } = readTables({
      Settings: table('Setting | Value', ['Leftover worth %', 0.8]),
    });
    expect(assumptions.map(({ sentence }) => sentence)).toEqual([
      'Leftover worth % is 0.8, less than 1 %: write 80 if 80 % is meant.',
    ]);
  });
});
