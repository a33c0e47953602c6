import { describe, expect, it } from 'vitest';
import { findItem } from '../../../src/domain/book/find.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { stockValue } from '../../../src/domain/stock/valuation.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { findingSentence } from '../../../src/workbook/read/findings.ts';
import { readBook, recogniseTables } from '../../../src/workbook/read/read-book.ts';
import { readTables, sure } from '../../support/ledger-of.ts';
import {
  ranges,
  table,
  type Tables,
  withCell,
  withRows,
  workshop,
} from '../../support/small-book.ts';

const selling: Tables = {
  ...workshop,
  Lots: table(
    'Lot | Material | Received | Quantity | Paid | Freight | Best before | Supplier | Paid by',
    ['C1', 'Clear base', '2024-01-05', 2000, 15, 1, '', '', 'Ada'],
    ['B1', 'Box', '2024-01-05', 50, 20, '', '', '', 'Ben'],
  ),
  LedgerLines: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
    ['M1', '2024-02-01', 'made', 'Tide Pool', 10, 'T1', 30, '', '', ''],
    ['M2', '2024-02-01', 'made', 'Tide Pool seconds', 2, 'T1', 3, '', '', ''],
    ['M3', '2024-02-02', 'sent', 'Tide Pool', -4, 'T1', -12, '', '', ''],
    ['M4', '2024-02-02', 'sent', 'Tide Pool @ Net Loft', 4, 'T1', 12, '', '', ''],
  ),
  Sales: table(
    'Sale | Sold on | Design | Bars | Price each | Fair | Fees | Place | Tender | Taken by',
    ['S1', '2024-02-03', 'Tide Pool', 1, 9, '', '', 'Net Loft', 'card', 'Ada'],
    ['S2', '2024-02-03', 'tide pool SECONDS', 1, 5, '', '', '', 'cash', 'Ben'],
  ),
  Places: table(
    'Place | Sells as | Commission % | Fee % | Fee fixed | Postage each | Least bars | Tax %',
    ['Net Loft', 'on consignment', 30, '', '', '', 6, ''],
    ['Post', 'Own shop', '', 2.9, 0.3, 1.2, '', 5],
  ),
  Sets: table('Set | Item | Per set | Price', ['Pair', 'Tide Pool', 2, 17], ['Pair', 'Box', 1, '']),
  Partners: table('Partner | Share %', ['Ada', 60], ['Ben', 40]),
};

/** What a reading says is to be mended. */
function sentences(tables: Tables): string[] {
  const read = readBook(sure(recogniseTables(ranges(tables))));
  return read.ok ? [] : read.findings.map(findingSentence);
}

const without = (name: string): Tables =>
  Object.fromEntries(Object.entries(selling).filter(([key]) => key !== name));

describe('what is sold where, together and by whom', () => {
  const book = readTables(selling);

  it('is read by name', () => {
    expect([...book.places.values()].map(({ name, sellsAs }) => [name, sellsAs])).toEqual([
      ['Net Loft', 'on consignment'],
      ['Post', 'own shop'],
    ]);
    expect(
      book.sales.map(({ design, isSecond, place, takenBy }) => [
        design.name,
        isSecond,
        place?.name,
        takenBy,
      ]),
    ).toEqual([
      ['Tide Pool', false, 'Net Loft', 'Ada'],
      ['Tide Pool', true, undefined, 'Ben'],
    ]);
    const [pair] = book.sets.values();
    expect(pair?.price?.toNumber()).toBe(17);
    expect(pair?.lines.map(({ item, perSet }) => [item.name, perSet.toNumber()])).toEqual([
      ['Tide Pool', 2],
      ['Box', 1],
    ]);
    expect(book.lots.map(({ paidBy }) => paidBy)).toEqual(['Ada', 'Ben']);
  });

  it.each([
    ['Tide Pool', 6, 18],
    ['Tide Pool seconds', 2, 3],
    ['tide  pool @ NET LOFT', 4, 12],
  ])('%s is a shelf of its own', (name, quantity, value) => {
    const item = sure(findItem(book, name));
    expect(onHand(book, item, 45_400).toNumber()).toBe(quantity);
    expect(sure(stockValue(book, item, 45_400)).toNumber()).toBe(value);
  });

  it('seconds without a Value are worth nothing, and other bars are not known', () => {
    const blank = readTables(
      withCell(withCell(selling, 'LedgerLines', 2, 'Value', ''), 'LedgerLines', 1, 'Value', ''),
    );
    expect(
      sure(stockValue(blank, sure(findItem(blank, 'Tide Pool seconds')), 45_400)).toNumber(),
    ).toBe(0);
    const bars = stockValue(blank, sure(findItem(blank, 'Tide Pool')), 45_400);
    expect(bars.ok ? '' : bars.failure.sentence).toMatch(
      /^Entry M1 in LedgerLines put Tide Pool in stock/u,
    );
  });

  it('a book without these tables is what it was', () => {
    const plain = readTables(workshop);
    expect([plain.places.size, plain.sets.size, plain.partners.size]).toEqual([0, 0, 0]);
    const asked = readTables({
      ...workshop,
      Places: table('Place | Sells as'),
      Partners: table('Partner | Share %'),
    });
    expect(asked.handle).toBe(plain.handle);
  });

  it('names of who paid and took are free where no partners are listed', () => {
    expect(readTables(without('Partners')).lots[0]?.paidBy).toBe('Ada');
  });
});

const wrongCells: readonly (readonly [
  table: string,
  row: number,
  header: string,
  cell: Cell,
  sentence: string,
])[] = [
  [
    'Places',
    1,
    'Sells as',
    'shop',
    'Places, row 1, Sells as is "shop". Did you mean "own shop"? Use one of: own stall, own shop, reseller, on consignment.',
  ],
  ['Places', 1, 'Commission %', 101, 'Places, row 1, Commission % is 101. Type at most 100.'],
  [
    'Places',
    2,
    'Fee %',
    'some',
    'Places, row 2, Fee % is "some", which is not a number. Type a plain number.',
  ],
  [
    'Places',
    2,
    'Place',
    'net loft',
    'Places, row 2, Place "net loft" stands in row 1 already. Each may stand once.',
  ],
  [
    'Partners',
    1,
    'Share %',
    0.6,
    'Partners, row 1, Share % is 0.6. Type 1 or more: 60 if 60 % is meant.',
  ],
  [
    'Partners',
    2,
    'Share %',
    30,
    'Partners, row 2, Share % is 30, and the shares of all partners add up to 90. Type 40, or mend the others, so that all are 100.',
  ],
  [
    'Partners',
    1,
    'Share %',
    100,
    'Partners, row 2, Share % is 40, and the shares of all partners add up to 140. Mend them so that all are 100.',
  ],
  [
    'Lots',
    1,
    'Paid by',
    'Adda',
    'Lots, row 1, Paid by is "Adda", which is not a partner in Partners. Did you mean "Ada"?',
  ],
  [
    'Sales',
    1,
    'Taken by',
    'Bena',
    'Sales, row 1, Taken by is "Bena", which is not a partner in Partners. Did you mean "Ben"?',
  ],
  [
    'Sales',
    1,
    'Place',
    'Net Lofts',
    'Sales, row 1, Place is "Net Lofts", which is not a place in Places. Did you mean "Net Loft"?',
  ],
  [
    'Sets',
    1,
    'Item',
    'Orange oil',
    'Sets, row 1, Item is "Orange oil", which is neither a design nor packaging. Name one of these.',
  ],
  ['Sets', 1, 'Per set', 1.5, 'Sets, row 1, Per set is 1.5. Type a whole number.'],
  [
    'Sets',
    2,
    'Price',
    3,
    'Sets, row 2, Price is 3, but row 1 has the price of "Pair". Clear one of them.',
  ],
  [
    'Sets',
    1,
    'Item',
    'Box',
    'Sets, row 2, Item is "Box", which stands in row 1 of "Pair" already. Put both on one line.',
  ],
  [
    'LedgerLines',
    3,
    'Material',
    'Clear base',
    'LedgerLines, row 3, Reason is "sent", but only bars are sent between the shelf and a place, not "Clear base". Use "counted", or name a design or "design @ place".',
  ],
  [
    'LedgerLines',
    4,
    'Material',
    'Tide Pool @ Net Lotf',
    `LedgerLines, row 4, Material is "Tide Pool @ Net Lotf", which is not a stock item: not in Materials or Designs, nor a colour's "leftover", "colour × mold", a design's "seconds" or "design @ place". Did you mean "Tide Pool @ Net Loft"?`,
  ],
];

describe('a cell that can’t be right is named', () => {
  it.each(wrongCells)('%s, row %i, %s %j', (name, row, header, cell, sentence) => {
    expect(sentences(withCell(selling, name, row, header, cell))).toContain(sentence);
  });

  it('a set of nothing but its box', () => {
    const boxes = { ...selling, Sets: table('Set | Item | Per set | Price', ['Air', 'Box', 1, 4]) };
    expect(sentences(boxes)).toEqual([
      'Sets, row 1, Item is "Box", and no line of "Air" names a design. Add the bars that are in it.',
    ]);
  });
});

describe('a name can be read in one way only', () => {
  it('no material or design bears the name of seconds or of bars at a place', () => {
    const named = withRows(
      withRows(selling, 'Designs', ['Tide Pool seconds', '', '', '', '', '', '', '']),
      'Materials',
      ['Tide Pool @ Net Loft', 'packaging', 'each', '', '', '', '', '', '', '', '', ''],
    );
    expect(sentences(named)).toEqual(
      expect.arrayContaining([
        'Materials, row 9, Material is "Tide Pool @ Net Loft", which is the name of bars at a place in stock. Give it another name.',
        'Designs, row 4, Design is "Tide Pool seconds", which is the name of seconds in stock. Give it another name.',
      ]),
    );
  });

  it('nor do two designs at two places', () => {
    const both = withRows(
      withRows(selling, 'Designs', ['Tide Pool @ Net Loft', '', '', '', '', '', '', '']),
      'Places',
      ['Net Loft @ Sea', 'reseller', '', '', '', '', '', ''],
      ['Sea', 'reseller', '', '', '', '', '', ''],
    );
    expect(sentences(both)).toContain(
      'Places, row 3, Place is "Net Loft @ Sea", so that "Tide Pool @ Net Loft @ Sea" could be bars of "Tide Pool" at "Net Loft @ Sea" or bars of "Tide Pool @ Net Loft" at "Sea". Give one of them another name.',
    );
  });
});
