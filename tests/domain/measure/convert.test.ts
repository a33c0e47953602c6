import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Exact, exact } from '../../../src/domain/kernel/exact.ts';
import { bridgeOf, convert, type Liquid } from '../../../src/domain/measure/convert.ts';
import { findUnit, unitNames, unitSpellings } from '../../../src/domain/measure/units.ts';
import { sure } from '../../support/ledger-of.ts';

const oil: Liquid = {
  name: 'Orange oil',
  unit: 'ml',
  densityGPerMl: exact(0.84),
  dropsPerMl: exact(40),
};
const mica: Liquid = {
  name: 'Mica',
  unit: 'g',
  densityGPerMl: undefined,
  dropsPerMl: undefined,
};
const water: Liquid = { ...mica, name: 'Water', unit: 'ml' };

const amountIn = (quantity: number, from: string, to: string, liquid?: Liquid): string =>
  sure(convert(exact(quantity), from, to, liquid)).toString();
const refusalOf = (from: string, to: string, liquid?: Liquid): string => {
  const result = convert(exact(1), from, to, liquid);
  return result.ok ? `answers ${result.value.toString()}` : result.failure.sentence;
};

/** To every printed digit, unlike a cell's number: REFERENCES U1, U2, U5, U6, U7, U8. */
it.each([
  ['lb', 'g', '453.59237'],
  ['oz', 'g', '28.349523125'],
  ['gal', 'ml', '3785.411784'],
  ['qt', 'ml', '946.352946'],
  ['pt', 'ml', '473.176473'],
  ['cup', 'ml', '236.5882365'],
  ['fl oz', 'ml', '29.5735295625'],
  ['tbsp', 'ml', '14.78676478125'],
  ['tsp', 'ml', '4.92892159375'],
  ['kg', 'mg', '1000000'],
  ['l', 'ml', '1000'],
  ['each', 'each', '1'],
])('1 %s is just so many %s: %s', (from, to, size) => {
  expect(amountIn(1, from, to)).toBe(size);
});

describe('a unit', () => {
  it.each([
    [' Fluid  Ounces ', 'fl oz'],
    ['LBS', 'lb'],
    ['fl. oz.', 'fl oz'],
    ['Millilitre', 'ml'],
    ['drop', 'drops'],
    ['Each', 'each'],
  ])('%j is %s', (written, unit) => {
    expect(findUnit(written)).toBe(findUnit(unit));
    expect(findUnit(unit)).toBeDefined();
  });

  it('is found by every spelling that is offered, and by no other', () => {
    for (const spelling of unitSpellings) expect(findUnit(spelling), spelling).toBeDefined();
    expect(unitSpellings).toEqual(expect.arrayContaining([...unitNames]));
    for (const other of ['', 'grain', 'toString', 'µl', 'flo z'])
      expect(findUnit(other), other).toBeUndefined();
  });

  it.each([
    [
      'grms',
      'g',
      '"grms" is not a unit known here. Did you mean "grams"? Use one of mg, g, kg, oz',
    ],
    ['g', 'pond', '"pond" is not a unit known here. Did you mean "pound"? Use one of'],
    // Of a word of two letters no other is suggested.
    ['µl', 'ml', '"µl" is not a unit known here. Use one of'],
  ])('%s in %s: %s', (from, to, start) => {
    expect(refusalOf(from, to).startsWith(start), refusalOf(from, to)).toBe(true);
  });
});

describe('between weight, volume and drops', () => {
  it.each([
    ['ml to g', 10, 'ml', 'g', oil, '8.4'],
    ['g to ml', 8.4, 'g', 'ml', oil, '10'],
    ['drops to ml', 60, 'drops', 'ml', oil, '1.5'],
    ['drops to g', 40, 'drops', 'g', oil, '0.84'],
    ['kg to drops', 0.00084, 'kg', 'drops', oil, '40'],
    ['drops to tsp and back to ml', 1, 'tsp', 'drops', oil, '197.15686375'],
    // REFERENCES U11: 20 drops to the ml.
    ['drops of no liquid in particular', 30, 'drops', 'ml', undefined, '1.5'],
    ['drops of what has no density, taken as 1 g/ml', 30, 'drops', 'g', mica, '1.5'],
    ['ml of what is stocked in ml and has no density', 3, 'ml', 'g', water, '3'],
  ])('%s', (_, quantity, from, to, liquid, amount) => {
    expect(amountIn(quantity, from, to, liquid)).toBe(amount);
  });

  it.each([
    ['g', 'ml', undefined, 'Going from weight to volume or drops depends on the material: add'],
    ['drops', 'g', undefined, 'Going from weight to volume or drops depends on the material: add'],
    ['g', 'ml', mica, 'Fill in Density g/ml for Mica in Materials'],
    ['each', 'g', oil, '"each" is a count and can\'t be turned into g.'],
    ['drops', 'each', oil, '"each" is a count and can\'t be turned into drops.'],
  ])('%s to %s is no guess', (from, to, liquid, start) => {
    expect(refusalOf(from, to, liquid).startsWith(start), refusalOf(from, to, liquid)).toBe(true);
  });

  it.each([
    ['a density', oil, false, { density: '0.84', drops: '40', densityAssumed: false }],
    ['none, in ml', water, false, { density: '1', drops: '20', densityAssumed: true }],
    ['none, in drops', mica, true, { density: '1', drops: '20', densityAssumed: true }],
    ['none, in g', mica, false, undefined],
  ])('the bridge of a liquid with %s', (_, liquid, inDrops, wanted) => {
    const bridge = bridgeOf(liquid, inDrops);
    expect(
      bridge && {
        density: bridge.densityGPerMl.toString(),
        drops: bridge.dropsPerMl.toString(),
        densityAssumed: bridge.densityAssumed,
      },
    ).toEqual(wanted);
  });
});

describe('laws', () => {
  const unit = fc.constantFrom(...unitNames.filter((name) => name !== 'each'));
  const quantity = fc.integer({ min: 1, max: 1_000_000 }).map((n) => exact(n / 1000));
  const liquid = fc
    .record({
      densityGPerMl: fc.integer({ min: 500, max: 2000 }),
      dropsPerMl: fc.integer({ min: 10, max: 60 }),
    })
    .map((drawn): Liquid => ({
      name: 'Oil',
      unit: 'ml',
      densityGPerMl: exact(drawn.densityGPerMl / 1000),
      dropsPerMl: exact(drawn.dropsPerMl),
    }));
  const isNear = (a: Exact, b: Exact): boolean => a.minus(b).abs().lte(b.times('1e-30'));

  it('there and back is where it began', () => {
    fc.assert(
      fc.property(quantity, unit, unit, liquid, (amount, from, to, of) => {
        const there = sure(convert(amount, from, to, of));
        expect(isNear(sure(convert(there, to, from, of)), amount)).toBe(true);
      }),
    );
  });

  it('by way of a third unit is the same as straight', () => {
    fc.assert(
      fc.property(quantity, unit, unit, unit, liquid, (amount, from, by, to, of) => {
        const byWay = sure(convert(sure(convert(amount, from, by, of)), by, to, of));
        expect(isNear(byWay, sure(convert(amount, from, to, of)))).toBe(true);
      }),
    );
  });
});
