import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { expectSentence, fullWorkshop, refusalOf } from '../support/full-workshop.ts';
import { ranges, table, withCell, withRows, type Tables } from '../support/small-book.ts';

const call = await loadFunctions();

describe('tables at odds with themselves', () => {
  const colours = (...rows: readonly (readonly (string | number)[])[]): Tables =>
    withRows(fullWorkshop, 'Colours', ...rows);

  it.each([
    [
      'a colour made of itself',
      [['Ouro', 'Ouro', 1, 'parts']],
      'makes a circle of blends: Ouro → Ouro',
    ],
    [
      'a circle of blends',
      [
        ['Dawn', 'Dusk', 1, 'g'],
        ['Dusk', 'Night', 1, 'g'],
        ['Night', 'Dawn', 1, 'g'],
      ],
      'makes a circle of blends: Dawn → Dusk → Night → Dawn',
    ],
    [
      'parts mixed with grams',
      [
        ['Dawn', 'Slate', 1, 'parts'],
        ['Dawn', 'Foam', 2, 'g'],
      ],
      'Use parts in all of its lines or in none',
    ],
    [
      'one ingredient twice',
      [
        ['Dawn', 'Slate', 1, 'g'],
        ['Dawn', 'slate', 2, 'g'],
      ],
      'which Dawn has already',
    ],
    ['drops of a colour', [['Dawn', 'Slate', 3, 'drops']], 'a colour is weighed, not dropped'],
    ['a box in a melt', [['Dawn', 'Box', 3, 'g']], "can't be melted in"],
    ['a box in parts', [['Dawn', 'Box', 3, 'parts']], "can't be melted in"],
    [
      'a colour called like a material',
      [['Glycerin', 'Slate', 3, 'g']],
      'which is also a material',
    ],
  ])('%s', (_, rows, says) => {
    const { code, message } = refusalOf(call, colours(...rows));
    expect(code).toBe('#VALUE!');
    expect(message).toContain(says);
    expect(message.split('\n').length).toBeLessThanOrEqual(2);
  });

  it('names a long circle in few words', () => {
    const rows = Array.from({ length: 15 }, (_, at) => [
      `${'x'.repeat(200)}${at}`,
      `${'x'.repeat(200)}${(at + 1) % 15}`,
      1,
      'g',
    ]);
    expectSentence(refusalOf(call, colours(...rows)), 'Colours, row');
  });

  it('refuses blends of blends without end', () => {
    const rows = Array.from({ length: 5000 }, (_, at) => [
      `B${at + 1}`,
      at === 0 ? 'Slate' : `B${at}`,
      1,
      'g',
    ]);
    expectSentence(refusalOf(call, colours(...rows.reverse())), 'Colours, row');
  });

  it('answers at once for blends that share their colours many times over', () => {
    const rows = Array.from({ length: 15 }, (_, at) => {
      const [a, b] = at === 0 ? ['Slate', 'Foam'] : [`A${at - 1}`, `B${at - 1}`];
      return [
        [`A${at}`, a, 1, 'g'],
        [`A${at}`, b, 2, 'g'],
        [`B${at}`, a, 3, 'g'],
        [`B${at}`, b, 1, 'g'],
      ];
    }).flat();
    const book = call(
      'BOOK',
      ...ranges(
        withRows(withCell(colours(...rows), 'Materials', 3, 'Density g/ml', 2.8), 'Layers', [
          'Plain Bar',
          9,
          'pour',
          'A14',
          '',
          10,
          'ml',
        ]),
      ),
    );
    expect(call('BASEPERMOLD', 'Tiles', book, 1, 'A14')).toBeGreaterThan(24);
    expect(call('COSTPERBAR', 'Plain Bar', book, 5, '2024-03-01')).toBeGreaterThan(0);
  });

  it.each([
    ['LedgerLines', 'Quantity', 5, 'takes stock away: type it with a minus'],
    [
      'LedgerLines',
      'Lot',
      'W1',
      'is "W1", which is a lot of White base, not of Clear base. Name a lot of Clear base, or leave it blank if you don\'t know the lot.',
    ],
    [
      'Layers',
      'Item',
      'Blue mica',
      'Item is "Blue mica", which has the kind colourant and is not a colour in Colours or a base in Materials. Name a base, or a colour whose recipe takes it.',
    ],
    ['Molds', 'Fill g', '', 'Weigh one full fill'],
    ['Materials', 'Unit', 'each', 'is a base, which is weighed'],
    ['Designs', 'Bar mold', 'Tiles', 'which makes tiles. Name a mold that makes bars'],
    ['Designs', 'Design', 'Box', 'which is also a material'],
    ['Layers', 'Mold', '', 'Name the mold that shapes Slate'],
    ['Layers', 'Mold', 'Lighthouse', 'which makes embeds. Name a mold that makes tiles'],
    ['Layers', 'Per', 'g', 'is "g", but tiles is counted in each. Type each.'],
    ['Layers', 'Part', 'scent', 'but scent is counted in g, ml, drops, %. Type one of these.'],
    ['Settings', 'Value', 'Dollars', 'not an ISO 4217 code'],
    ['Sales', 'Fees', -0.2, 'is -0.2. Type 0 or more; to take a sale back'],
    ['Sales', 'Bars', 0, 'is blank or 0. Fill it in'],
    ['Sales', 'Bars', -1, 'is -1. Type more than 0; to take a sale back'],
  ])('%s, %s: %j', (name, header, cell, says) => {
    const { code, message } = refusalOf(call, withCell(fullWorkshop, name, 1, header, cell));
    expect(code).toBe('#VALUE!');
    expect(message).toContain(says);
  });

  it.each([
    [
      'Materials',
      ['Teal × Tiles', 'extra', 'g'],
      'Material is "Teal × Tiles", which is the name of spare pieces in stock',
    ],
    [
      'Materials',
      ['foam LEFTOVER', 'extra', 'g'],
      'Material is "foam LEFTOVER", which is the name of leftover soap in stock',
    ],
    [
      'Designs',
      ['Clear base leftover'],
      'Design is "Clear base leftover", which is the name of leftover soap in stock',
    ],
  ])('%s: a name that stock is kept under already, %j', (name, row, says) => {
    const at = fullWorkshop[name]?.length ?? 0;
    const { message } = refusalOf(call, withRows(fullWorkshop, name, row));
    expect(message).toBe(`${name}, row ${at}, ${says}. Give it another name.`);
  });

  it('refuses names of which a stock item’s could be read in two ways (contract §4)', () => {
    const twice = withRows(
      withRows(
        fullWorkshop,
        'Molds',
        ['C', 'tiles', 4, 20],
        ['Teal × C', 'tiles', 4, 20],
        ['Gull leftover', 'tiles', 4, 20],
      ),
      'Colours',
      ['Slate × Teal', 'White base', 1, 'g'],
      ['Slate × Gull', 'White base', 1, 'g'],
    );
    expect(refusalOf(call, twice).message.split('\n')).toEqual([
      'Molds, row 6, Mold is "Teal × C", so that "Slate × Teal × C" could be spare pieces of "Slate" from "Teal × C" or spare pieces of "Slate × Teal" from "C". Give one of them another name.',
      'Molds, row 7, Mold is "Gull leftover", so that "Slate × Gull leftover" could be leftover soap of "Slate × Gull" or spare pieces of "Slate" from "Gull leftover". Give one of them another name.',
    ]);
    // A sign in a name is no harm where only one reading makes sense.
    const once = withRows(fullWorkshop, 'Colours', ['Slate × Teal', 'White base', 1, 'g']);
    expect(call('BOOK', ...ranges(once))).toMatch(/^book /u);
  });

  it('does not blame what uses a row for that row’s own fault', () => {
    const { message } = refusalOf(call, withCell(fullWorkshop, 'Materials', 1, 'Pack size', 'big'));
    expect(message).toBe(
      'Materials, row 1, Pack size is "big", which is not a number. Type a plain number.',
    );
    const lot = refusalOf(call, withCell(fullWorkshop, 'Lots', 1, 'Material', 'Claer base'));
    expect(lot.message.split('\n')).toHaveLength(1);
  });
});

it('a settings table alone with wrong values says each', () => {
  const bad = table(
    'Setting | Value',
    ['Valuation', 'LIFO'],
    ['Service %', 100],
    ['History days', 1],
    ['Scale step g', 'fine'],
    ['Rest days', 'Sat; Someday'],
    ['Sales tax %', -1],
  );
  const lines = errorOf(() => call('BOOK', bad)).message.split('\n');
  expect(lines).toHaveLength(6);
  for (const line of lines) expect(line).toMatch(/^Settings, row \d, Value of /);
});
