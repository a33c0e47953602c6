import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readShares } from '../../../src/domain/label/shares.ts';
import { allergens } from '../../../src/domain/label/allergens.ts';
import { inciOf } from '../../../src/domain/label/inci.ts';
import { barTables, bookOf, materialOf, refusal, sound } from './label-book.ts';

const shares = (cell: string) =>
  sound(readShares(cell)).map(({ name, percent }) => [name, percent?.toNumber()]);

describe('readShares', () => {
  it.each([
    // The contract's own examples (§2).
    [
      'Aqua 40; Glycerin 30',
      [
        ['Aqua', 40],
        ['Glycerin', 30],
      ],
    ],
    [
      'Eugenol 80; Linalool 0.3',
      [
        ['Eugenol', 80],
        ['Linalool', 0.3],
      ],
    ],
    ['Glycerin', [['Glycerin', undefined]]],
    [
      'Limonene 90, Linalool 0,4',
      [
        ['Limonene', 90],
        ['Linalool', 0.4],
      ],
    ],
    [
      'Aqua, Glycerin, CI 77891, Mica',
      [
        ['Aqua', undefined],
        ['Glycerin', undefined],
        ['CI 77891', undefined],
        ['Mica', undefined],
      ],
    ],
    ['1,2-Hexanediol 5', [['1,2-Hexanediol', 5]]],
    ['1, 2-Hexanediol 5', [['1, 2-Hexanediol', 5]]],
    ['CI 77891', [['CI 77891', undefined]]],
    [
      'CI 77891 28; Mica 72',
      [
        ['CI 77891', 28],
        ['Mica', 72],
      ],
    ],
    ['CI77891 1', [['CI77891', 1]]],
    ['Polysorbate 20', [['Polysorbate 20', undefined]]],
    ['Polysorbate 20 5', [['Polysorbate 20', 5]]],
    ['FD&C Red No. 40', [['FD&C Red No. 40', undefined]]],
    ['Ceteareth-20 2', [['Ceteareth-20', 2]]],
    ['1,2-Hexanediol 2,5 %', [['1,2-Hexanediol', 2.5]]],
    [' Linalool   3% ;; ', [['Linalool', 3]]],
    [
      'Aqua 60\nGlycerin 40',
      [
        ['Aqua', 60],
        ['Glycerin', 40],
      ],
    ],
    ['', []],
  ])('reads %j', (cell, expected) => {
    expect(shares(cell)).toEqual(expected);
  });

  it.each([
    'Eugenol 80,Linalool 0.3',
    'Eugenol 80%,Linalool 0.3%',
    'Eugenol 80, 3-Propylidenephthalide 0.2',
    'Eugenol 80 / Linalool 0.3',
    'Eugenol 80/Linalool 0.3',
    'Eugenol 80 Linalool 0.3',
    'Eugenol 80 3-Propylidenephthalide 0.2',
    'Eugenol 0,8 % Linalool 0,3 %',
    'Eugenol 80 - Linalool 0.3',
    'Eugenol 80. Linalool 0.3',
    'Eugenol 80 | Linalool',
    'Citral 1; Eugenol 80 + Linalool 0.3',
    'CI 77891 28,Mica 72',
    'CI 77891,Mica',
    'Polysorbate 20 5 Aqua 95',
  ])('refuses entries run together: %j', (cell) => {
    expect(refusal(readShares(cell)).sentence).toMatch(
      /^runs entries together in ".*": part them with ";"/u,
    );
  });

  it.each(['0.5', '50 %', '-1', 'Eugenol 80; 0.5', '12-3', '%'])(
    'refuses an entry without a name: %j',
    (cell) => {
      expect(refusal(readShares(cell)).sentence).toMatch(
        /^holds ".*" without a name: type it like/u,
      );
    },
  );

  it.each(['Linalool -1', 'Linalool - 1', 'Linalool –0.5 %', 'Linalool <0.1', 'Linalool .5'])(
    'refuses a percent that can’t be read: %j',
    (cell) => {
      expect(refusal(readShares(cell)).sentence).toMatch(
        /^holds ".*", whose percent can't be read: type it like/u,
      );
    },
  );

  it('takes a CAS number for a name', () => {
    expect(shares('78-70-6 0.5; 97-53-0')).toEqual([
      ['78-70-6', 0.5],
      ['97-53-0', undefined],
    ]);
  });

  // Names of substances and oils with digits in them: of the dated list, and as INCI and dyes have them.
  const digits = [
    ...allergens.flatMap(({ name, also }) => [name, ...also]),
    'PEG-7 Glyceryl Cocoate',
    'PEG 7 Glyceryl Cocoate',
    'Bis-PEG/PPG-14/14 Dimethicone',
    'PEG/PPG 14/14 Dimethicone',
    'Polysorbate 20',
    'Polyglyceryl 3 Diisostearate',
    'Polyquaternium 7',
    'Trideceth 9 PG-Amodimethicone',
    'Quaternium 15',
    'Quaternium-15',
    'C12-15 Alkyl Benzoate',
    'Sodium C14-16 Olefin Sulfonate',
    '3-Propylidenephthalide',
    'Methyl 2-Octynoate',
    'Propane 1,3-diol',
    '1,2-Hexanediol',
    '2,4-Dihydroxy-3-Methylbenzaldehyde',
    'N,N-Dimethylacetamide',
    'CI 77891',
    'CI 77891 (Titanium Dioxide)',
    'CI 77891 Titanium Dioxide',
    'FD&C Red No. 40 Lake',
    'Acid Blue 9 Aluminum Lake',
  ];
  it.each(digits)('keeps %j whole, with a percent and among others', (name) => {
    expect(shares(`${name} 0.5`)).toEqual([[name, 0.5]]);
    expect(shares(`Aqua 40; ${name} 0.5; Linalool 0.3`)[1]).toEqual([name, 0.5]);
  });

  it.each(['Quaternium 15', 'PEG 40'])('takes no percent from %j', (name) => {
    expect(shares(name)).toEqual([[name, undefined]]);
  });

  it('refuses a part that is more than the whole', () => {
    expect(refusal(readShares('Aqua 140')).sentence).toMatch(/Aqua 140 %, more than the whole/);
  });
});

describe('inciOf', () => {
  const inci = (cell: string) => {
    const book = bookOf(barTables([{ name: 'Base', inci: cell, g: 1 }]));
    return inciOf(materialOf(book, 'Base'));
  };

  it('takes one name for the whole material', () => {
    expect(sound(inci('Glycerin')).parts[0]?.percent.toNumber()).toBe(100);
  });

  it('keeps percents that fall short of 100, and says how much is named', () => {
    const { parts, namedPercent } = sound(inci('Aqua 40; Glycerin 30'));
    expect(parts.map(({ percent }) => percent.toNumber())).toEqual([40, 30]);
    expect(namedPercent.toNumber()).toBe(70);
  });

  it('leaves out what stands at 0 %', () => {
    expect(sound(inci('Aqua 100; Parfum 0')).parts.map(({ name }) => name)).toEqual(['Aqua']);
  });

  it('answers any text with shares of 0 to 100 % or with a sentence', () => {
    const text = fc.oneof(
      fc.string({ unit: 'binary', maxLength: 60 }),
      fc.stringMatching(/^[A-C0-9 ;,.%-]{0,40}$/u),
      fc.nat(500).map((digits) => `Aqua ${'9'.repeat(digits)}`),
    );
    fc.assert(
      fc.property(text, (cell) => {
        const result = readShares(cell);
        if (result.ok) {
          for (const { name, percent } of result.value) {
            expect(name).not.toBe('');
            expect(percent === undefined || (percent.gte(0) && percent.lte(100))).toBe(true);
          }
        } else {
          expect(result.failure.sentence).toMatch(
            /more than the whole material|type it like|part them with ";"/,
          );
        }
      }),
    );
  });

  it.each([
    ['', 'not yet', /Fill in INCI for Base/],
    ['Aqua; Glycerin', 'not yet', /no percent for Aqua, Glycerin/],
    ['Aqua 70; Glycerin', 'not yet', /no percent for Glycerin/],
    ['Aqua 70; Glycerin 40', 'wrong', /adds up to 110 %/],
    ['Aqua 170', 'wrong', /Aqua 170 %/],
    ['Aqua 0', 'not yet', /names nothing above 0 %/],
  ])('refuses %j', (cell, kind, sentence) => {
    const failure = refusal(inci(cell));
    expect(failure.kind).toBe(kind);
    expect(failure.sentence).toMatch(sentence);
  });
});
