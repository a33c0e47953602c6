import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  findDesign,
  findItem,
  findMade,
  findMaterial,
  findMold,
  findSoap,
  itemOfMaterial,
  leftoverName,
  readingsOfMade,
  soapsWithSign,
  spareName,
} from '../../../src/domain/book/find.ts';
import { nameKey } from '../../../src/domain/kernel/names.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import { newWorkshop } from '../../support/arbitrary-book.ts';
import { itemsOf, readTables, sure } from '../../support/ledger-of.ts';
import { table, withRows, workshop } from '../../support/small-book.ts';

const book = readTables(workshop);
const sentence = (result: Result<unknown>): string => (result.ok ? '' : result.failure.sentence);

describe('a name', () => {
  it.each([
    ['in another case', findMaterial, ' CLEAR  base', 'Clear base'],
    ['of full width letters', findMaterial, 'Ｂox', 'Box'],
    ['of a mold', findMold, 'six BARS', 'Six bars'],
    ['of a design', findDesign, 'tide\u00a0pool', 'Tide Pool'],
    ['of a colour', findSoap, 'teal', 'Teal'],
    ['of a base, as soap', findSoap, 'white base', 'White base'],
  ])('%s finds the thing', (_, find, written, name) => {
    expect(sure<{ readonly name: string }>(find(book, written)).name).toBe(name);
  });

  it.each([
    [
      findMaterial,
      'Clear bse',
      '"Clear bse" is not a material in Materials. Did you mean "Clear base"?',
    ],
    [findMold, 'Tile', '"Tile" is not a mold in Molds. Did you mean "Tiles"?'],
    [findDesign, 'Sand', '"Sand" is not a design in Designs.'],
    [
      findSoap,
      'Tael',
      '"Tael" is not a colour in Colours or a base in Materials. Did you mean "Teal"?',
    ],
    [
      findSoap,
      'blue mica',
      '"Blue mica" has the kind colourant and is not a colour in Colours or a base',
    ],
    [findItem, 'Teal x Tiles', 'Did you mean "Teal × Tiles"?'],
    [findItem, 'Teal leftovers', 'Did you mean "Teal leftover"?'],
    [findItem, 'Teal × Six', '"Teal × Six" is not a stock item'],
    [findItem, '', '"" is not a stock item'],
  ])('that nothing has is refused, with the nearest: %#', (find, written, says) => {
    expect(sentence(find(book, written))).toContain(says);
  });

  it('of a base alone is a soap of one line, which is the base', () => {
    const { lines, recipeG, base } = sure(findSoap(book, 'Clear base'));
    expect(lines).toHaveLength(1);
    expect(recipeG.toString()).toBe('1');
    expect(base?.name).toBe('Clear base');
  });

  it('of a base stocked in ml takes its density to come from grams to stock', () => {
    const inMl = readTables(
      withRows(workshop, 'Materials', ['Liquid base', 'base', 'ml', 1.25, '', '', '', '']),
    );
    expect(sure(findSoap(inMl, 'Liquid base')).lines[0]?.stockPerG.toString()).toBe('0.8');
  });
});

describe('a stock item', () => {
  it.each([
    ['Glycerin', 'material', 'ml'],
    ['tide pool', 'bars', 'each'],
    ['Slate LEFTOVER', 'leftover', 'g'],
    ['clear base leftover', 'leftover', 'g'],
    ['teal × tiles', 'spare', 'each'],
    ['White base × Lighthouse', 'spare', 'each'],
  ])('%s is %s, in %s', (name, kind, unit) => {
    expect(sure(findItem(book, name))).toMatchObject({ kind, unit });
  });

  it('of a colour whose name holds the sign is found wherever the sign parts it', () => {
    const crossed = readTables(
      withRows(workshop, 'Colours', ['Sea × Sky', 'Clear base', 1, 'parts']),
    );
    const found = findMade(crossed, 'sea × sky × tiles');
    expect(found).toMatchObject({ kind: 'spare', name: 'Sea × Sky × Tiles' });
    expect(readingsOfMade(crossed, 'Sea × Sky × Tiles')).toHaveLength(1);
    expect(soapsWithSign(crossed).map(({ name }) => name)).toEqual(['Sea × Sky']);
    expect(soapsWithSign(book)).toEqual([]);
  });

  it('that can be read in two ways shows both', () => {
    const { materials, designs, places } = book;
    const both = readTables({
      ...workshop,
      Molds: table(
        'Mold | Makes | Cavities | Fill g | Scrape g',
        ...(workshop['Molds'] ?? []).slice(1).map((row) => row.slice(0, 5)),
        ['Sky × Tiles', 'tiles', 36, 25, 0],
      ),
    });
    const colours = new Map([
      ...both.colours,
      ['sea', { ...sure(findSoap(both, 'Teal')), name: 'Sea' }],
      ['sea × sky', { ...sure(findSoap(both, 'Teal')), name: 'Sea × Sky' }],
    ]);
    const catalogue = { materials, designs, molds: both.molds, colours, places };
    expect(readingsOfMade(catalogue, 'Sea × Sky × Tiles').map(({ kind }) => kind)).toEqual([
      'spare',
      'spare',
    ]);
  });

  it('of every book is found under its own name', () => {
    fc.assert(
      fc.property(newWorkshop, (tables) => {
        const drawn = readTables(tables);
        const soaps = [...drawn.colours.values()];
        const molds = [...drawn.molds.values()].filter(({ makes }) => makes !== 'bars');
        const names = [
          ...[...drawn.materials.values()].map((material) => itemOfMaterial(material).name),
          ...[...drawn.designs.values()].map(({ name }) => name),
          ...soaps.map(leftoverName),
          ...soaps.flatMap((soap) => molds.map((mold) => spareName(soap, mold))),
          ...itemsOf(drawn).map(({ name }) => name),
        ];
        for (const name of names)
          expect(nameKey(sure(findItem(drawn, name)).name)).toBe(nameKey(name));
      }),
      { numRuns: 30 },
    );
  });
});
