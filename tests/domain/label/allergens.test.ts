import { describe, expect, it } from 'vitest';
import { allergens } from '../../../src/domain/label/allergens.ts';
import { findAllergen } from '../../../src/domain/label/find-allergen.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import { annexIII, inTwoEntries } from './annex-iii.ts';
import { isCas } from './cas.ts';

describe('the allergen list', () => {
  it('checks CAS numbers by their check digit', () => {
    expect(isCas('78-70-6')).toBe(true);
    expect(isCas('78-70-5')).toBe(false);
    // Mangled in the public list that REFERENCES §7b warns of.
    expect(isCas('2237083')).toBe(false);
  });

  it.each(allergens.flatMap(({ name, cas }) => cas.map((number) => [name, number])))(
    '%s: %s has a right check digit',
    (_, number) => {
      expect(isCas(number ?? '')).toBe(true);
    },
  );

  it('names each substance and each CAS number once', () => {
    const names = allergens.map(({ name }) => nameKey(name));
    expect(new Set(names).size).toBe(names.length);
    const numbers = allergens.flatMap(({ cas }) => cas);
    expect(new Set(numbers).size).toBe(numbers.length);
  });

  it('has 24 of the first 26, and flags the two since prohibited; 57 entries more', () => {
    // A public table of the amended Annex III by entry number: 24 still named, 12 old entries that
    // became ones to name (46, 109, 122 …), 45 new (327 to 371). Announcements say "80", as they
    // count 56 added.
    const allowed = allergens.filter(({ prohibited }) => prohibited === undefined);
    const prohibited = allergens.filter((allergen) => allergen.prohibited !== undefined);
    expect(prohibited.map(({ name }) => name)).toEqual([
      'Butylphenyl Methylpropional',
      'Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde',
    ]);
    expect(allowed).toHaveLength(24 + 12 + 45);
  });

  // REFERENCES §7b, the 26 classic ones with the CAS numbers seen in two lists.
  it.each([
    ['Amyl Cinnamal', '122-40-7'],
    ['Amylcinnamyl Alcohol', '101-85-9'],
    ['Anise Alcohol', '105-13-5'],
    ['Benzyl Alcohol', '100-51-6'],
    ['Benzyl Benzoate', '120-51-4'],
    ['Benzyl Cinnamate', '103-41-3'],
    ['Benzyl Salicylate', '118-58-1'],
    ['Butylphenyl Methylpropional', '80-54-6'],
    ['Cinnamal', '104-55-2'],
    ['Cinnamyl Alcohol', '104-54-1'],
    ['Citral', '5392-40-5'],
    ['Citronellol', '106-22-9'],
    ['Coumarin', '91-64-5'],
    ['Eugenol', '97-53-0'],
    ['Farnesol', '4602-84-0'],
    ['Geraniol', '106-24-1'],
    ['Hexyl Cinnamal', '101-86-0'],
    ['Hydroxycitronellal', '107-75-5'],
    ['Hydroxyisohexyl 3-Cyclohexene Carboxaldehyde', '31906-04-4'],
    ['Isoeugenol', '97-54-1'],
    ['Alpha-Isomethyl Ionone', '127-51-5'],
    ['Limonene', '138-86-3'],
    ['Linalool', '78-70-6'],
    ['Methyl 2-Octynoate', '111-12-6'],
    ['Evernia Prunastri Extract', '90028-68-5'],
    ['Evernia Furfuracea Extract', '90028-67-4'],
    // Added by 2023/1545; CAS from the same section.
    ['Acetyl Cedrene', '32388-55-9'],
    ['Rose Ketones', '57378-68-4'],
    ['Pinene', '127-91-3'],
    ['Lavandula Oil/Extract', '84776-65-8'],
    ['Citrus Aurantium Peel Oil', '97766-30-8'],
    ['Pogostemon Cablin Oil', '8014-09-3'],
    ['Turpentine', '8052-14-0'],
    ['Vanillin', '121-33-5'],
  ])('has %s (%s)', (name, cas) => {
    expect(findAllergen(cas)?.name).toBe(name);
    expect(findAllergen(name)?.name).toBe(name);
  });

  it.each(Object.entries(annexIII))('names entry %s of Annex III once, by any number', (_, cas) => {
    const numbers = cas.split(' ').filter((number) => !inTwoEntries.includes(number));
    expect(new Set(numbers.map((number) => findAllergen(number)?.name)).size).toBe(1);
    expect(findAllergen(numbers[0] ?? '')).toBeDefined();
  });

  it('names each entry of Annex III apart from the others, and has no number beyond them', () => {
    const firsts = Object.values(annexIII).map((cas) => cas.split(' ')[0] ?? '');
    expect(new Set(firsts.map((number) => findAllergen(number)?.name)).size).toBe(firsts.length);
    const known = new Set(
      Object.entries(annexIII).flatMap(([entry, cas]) =>
        Number(entry) < 327 ? [] : cas.split(' '),
      ),
    );
    const names = new Set([...known].map((number) => findAllergen(number)?.name));
    const beyond = allergens
      .filter(({ name }) => names.has(name))
      .flatMap(({ cas }) => cas)
      .filter((number) => !known.has(number));
    expect(beyond).toEqual([]);
  });

  it('takes a number of both orange oils for the one that is sold as such', () => {
    // 8028-48-6 is "orange, sweet, ext." in common use, and 72968-50-4 bitter orange flower's first.
    expect(findAllergen('8028-48-6')?.name).toBe('Citrus Aurantium Peel Oil');
    expect(findAllergen('72968-50-4')?.name).toBe('Citrus Aurantium Flower Oil');
  });

  it.each([
    ['  LINALOOL ', 'Linalool'],
    ['d-Limonene', 'Limonene'],
    ['Lavandula Angustifolia (Lavender) Oil', 'Lavandula Oil/Extract'],
    ['Citrus Aurantium Bergamia Peel Oil', 'Citrus Aurantium Bergamia Peel Oil'],
    ['Citrus Aurantium Dulcis Peel Oil', 'Citrus Aurantium Peel Oil'],
    ['Rosa Damascena Flower Oil', 'Rose Flower Oil/Extract'],
    ['Rosalina Oil', undefined],
    ['Linalol', undefined],
    ['Aqua', undefined],
  ])('finds %s as %s', (typed, name) => {
    expect(findAllergen(typed)?.name).toBe(name);
  });
});
