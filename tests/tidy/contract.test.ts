import { describe, expect, it } from 'vitest';
import { functions } from '../../functions/index.ts';
import { tables } from '../../src/workbook/schema.ts';
import { built } from '../build/built.ts';

/** Tables and columns as ../shared/CONTRACT.md, section 2, lists them; * marks what a table is known by. */
const CONTRACT_TABLES = `
Settings: Setting*, Value*, Note
Materials: Material*, Kind*, Unit*, Density g/ml, Drops per ml, Pack size, Pack price, Lead days, Lead days SD, Service %, Least packs, Max %, INCI, Allergens, Supplier
Lots: Lot*, Material*, Received*, Quantity*, Paid*, Freight, Best before, Supplier
Moves: Entry*, When*, Reason*, Material*, Quantity*, Lot, Value, Batch, By, Note
Molds: Mold*, Makes*, Cavities*, Fill g*, Scrape g, Sections, Price, Life fills, Set minutes
Colours: Colour*, Ingredient*, Amount*, Measure*
Designs: Design*, Bar mold, Labour minutes, Setup minutes, Yield %, Price, Net g, Hands-off hours
Layers: Design*, Layer*, Part*, Item*, Mold, Per bar*, Per*
Batches: Batch*, Poured*, Design*, Bars*, Good, Seconds, Minutes, Material cost, Cost per bar, Ready on, State, By, Note
Plan: Plan line*, Design*, Bars*, Ready by*, Fair
Fairs: Fair*, Opens*, Stall fee, Travel, Other cost, Hours
Sales: Sale*, Sold on*, Design*, Bars*, Price each*, Fair, Fees`;

/** The words that a column may hold, as the contract lists them. */
const CONTRACT_WORDS = {
  kind: ['base', 'colourant', 'fragrance', 'packaging', 'extra'],
  unit: ['g', 'ml', 'each'],
  reason: ['used', 'left over', 'spare', 'made', 'sold', 'wasted', 'counted', 'reversed'],
  makes: ['tiles', 'embeds', 'bars'],
  measure: ['g', 'ml', 'drops', 'parts'],
  part: ['tiles', 'embed', 'pour', 'scent', 'paint', 'pack'],
  per: ['each', 'g', 'ml', 'drops', '%'],
};

/** The functions that every version has; their arguments are held to the contract in tests/build. */
const FIRST_FUNCTIONS = [
  'BOOK',
  'BASEPERMOLD',
  'TILECOUNT',
  'MELTSHEET',
  'MATERIALS',
  'CANMAKE',
  'ONHAND',
  'STOCKVALUE',
  'UNITCOST',
  'STOCKLIST',
  'REORDERPOINT',
  'SAFETYSTOCK',
  'ORDERSIZE',
  'COSTPERBAR',
  'COSTLINES',
  'AMOUNT',
];

describe('the tables', () => {
  it('have the contract’s columns, in its order', () => {
    const ours = Object.values(tables).map(
      ({ name, columns }) =>
        `${name}: ${Object.values(columns)
          .map(({ header, required }) => `${header}${required ? '*' : ''}`)
          .join(', ')}`,
    );
    const wanted = CONTRACT_TABLES.trim().split('\n');
    expect(ours.sort()).toEqual(wanted.sort());
  });

  it('hold the contract’s words', () => {
    const columns = Object.values(tables).flatMap((table) => Object.entries(table.columns));
    for (const [key, words] of Object.entries(CONTRACT_WORDS)) {
      const found = columns.find(([name, column]) => name === key && 'choices' in column)?.[1];
      expect(
        [...((found as { choices?: readonly string[] } | undefined)?.choices ?? [])].sort(),
        key,
      ).toEqual([...words].sort());
    }
  });
});

describe('the functions', () => {
  const metadata = JSON.parse(built('dist/functions.json')) as {
    readonly functions: readonly {
      readonly id: string;
      readonly parameters: readonly { readonly description?: string }[];
    }[];
  };

  it.each(FIRST_FUNCTIONS)('%s is offered, and tells the host what each argument is', (id) => {
    expect(functions[id]).toBeTypeOf('function');
    const told = metadata.functions.find((entry) => entry.id === id);
    expect(told?.parameters.length).toBeGreaterThan(0);
    for (const { description = '' } of told?.parameters ?? [])
      expect(description.length).toBeGreaterThan(8);
  });
});
