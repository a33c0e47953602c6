import { expect, it } from 'vitest';
import { readTables } from '../../support/ledger-of.ts';
import { type Tables, withRows, workshop } from '../../support/small-book.ts';

it('keeps layers in one order, though two differ in their mold alone', () => {
  const rows = [
    ['Plain Bar', '5', 'tiles', 'Slate', 'Tiles', 4, 'each'],
    ['Plain Bar', '5', 'tiles', 'Slate', 'Scraped tiles', 4, 'each'],
  ];
  const molds = (tables: Tables): unknown =>
    readTables(tables)
      .designs.get('plain bar')
      ?.layers.map((layer) => ('mold' in layer ? layer.mold.name : layer.part));
  const one = molds(withRows(workshop, 'Layers', ...rows));
  expect(one).toEqual(['pour', 'Scraped tiles', 'Tiles']);
  expect(molds(withRows(workshop, 'Layers', ...rows.reverse()))).toEqual(one);
});

it('orders layers by number, then name', () => {
  const layers = ['10', '2', '1b', '1'].map((layer) => [
    'Plain Bar',
    layer,
    'pack',
    'Box',
    '',
    1,
    'each',
  ]);
  const book = readTables(withRows(workshop, 'Layers', ...layers));
  expect(book.designs.get('plain bar')?.layers.map(({ layer }) => layer)).toEqual([
    '1',
    '1',
    '1b',
    '2',
    '10',
  ]);
});
