import { describe, expect, it } from 'vitest';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import {
  ranges,
  type Tables,
  withCell,
  withRows,
  withSetting,
  workshop,
} from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));
const book = (): unknown => bookOf(workshop);

describe('TILECOUNT', () => {
  const pattern = [
    ['Slate', 'Teal', ''],
    [' teal ', 'Foam', 'Teal'],
    ['Foam', '', 'Amber'],
  ];

  it('counts each colour, most first, then by name', () => {
    expect(call('TILECOUNT', pattern)).toEqual([
      ['Colour', 'Tiles'],
      ['Teal', 3],
      ['Foam', 2],
      ['Amber', 1],
      ['Slate', 1],
    ]);
  });

  it.each([
    ['TEAL', 3],
    ['Amber', 1],
    ['Grey', 0],
  ])('counts %s alone as one number', (colour, tiles) => {
    expect(call('TILECOUNT', pattern, colour)).toBe(tiles);
  });

  it('counts one cell, and nothing in an empty pattern', () => {
    expect(call('TILECOUNT', 'Teal')).toEqual([
      ['Colour', 'Tiles'],
      ['Teal', 1],
    ]);
    expect(call('TILECOUNT', [['', '']])).toEqual([['Colour', 'Tiles']]);
  });

  it('names the place of a cell gone wrong', () => {
    const { message } = errorOf(() => call('TILECOUNT', [['Teal'], [{ code: '#REF!' }]]));
    expect(message).toMatch(/in row 2, column 1\. Mend that cell\.$/);
  });

  it('keeps what looks like a formula as text', () => {
    const name = '=HYPERLINK("http://x","y")';
    expect(call('TILECOUNT', [[name]])).toEqual([
      ['Colour', 'Tiles'],
      [name, 1],
    ]);
  });
});

const header = [
  'Step',
  'Colour',
  'Fills',
  'Needed g',
  'Melt g',
  'Ingredient',
  'Amount',
  'Unit',
  'Spare tiles',
  'Leftover g',
];

describe('MELTSHEET', () => {
  it('lists every ingredient of every melt in pouring order, parents before their blends', () => {
    // 2 bars: 36 Slate tiles, 18 Teal, 18 Mist: one fill of 25 g each; Mist takes 15 g Slate, 10 g Foam.
    expect(call('MELTSHEET', 'Tide Pool', 2, book())).toEqual([
      header,
      [1, 'Slate', 1, 40, 40, 'Clear base', 38.8, 'g', 0, 0],
      [1, 'Slate', 1, 40, 40, 'Blue mica', 1.2, 'g', 0, 0],
      [2, 'Foam', 0, 10, 10, 'White base', 10, 'g', 0, 0],
      [3, 'Mist', 1, 25, 25, 'Slate', 15, 'g', 18, 0],
      [3, 'Mist', 1, 25, 25, 'Foam', 10, 'g', 18, 0],
      [4, 'Teal', 1, 25, 25, 'Clear base', 24.76, 'g', 18, 0],
      [4, 'Teal', 1, 25, 25, 'Green drops', 5, 'drops', 18, 0],
      [5, 'White base', 1, 30, 30, 'White base', 30, 'g', 4, 0],
      [6, 'Clear base', 0, 115, 115, 'Clear base', 115, 'g', 0, 0],
    ]);
  });

  it('starts more bars where some are lost, and takes the scrape back as leftover', () => {
    // 2 good of 4 started at 50 %: 200 g poured; 36 tiles, one fill of 25 g and 5 g scraped off.
    expect(call('MELTSHEET', 'Half Yield', 2, book())).toEqual([
      header,
      [1, 'Clear base', 0, 200, 200, 'Clear base', 200, 'g', 0, 0],
      [2, 'Slate', 1, 30, 30, 'Clear base', 29.1, 'g', 0, 5],
      [2, 'Slate', 1, 30, 30, 'Blue mica', 0.9, 'g', 0, 5],
    ]);
  });

  it.each([
    // Mist's 25 g becomes 30, 28 or stays 25, of which Slate is 15 parts in 25; Slate's own tiles take 25 g.
    [10, 50, 7],
    [7, 42, 0.2],
    [1, 40, 0],
    [0, 40, 0],
  ])('rounds a melt up to the scale step of %j g', (step, melt, leftover) => {
    const stepped = bookOf(withSetting(workshop, 'Scale step g', step));
    const sheet = call('MELTSHEET', 'Tide Pool', 2, stepped);
    expect(column(sheet, 'Melt g')[0]).toBe(melt);
    expect(column(sheet, 'Leftover g')[0]).toBe(leftover);
  });

  it('does not let thirds tip a parent over the next step', () => {
    // 40 g of a blend of 3 g + 3 g takes 20 g of each; 3 blends of 50 g, each a third Slate, take 50 g.
    const thirds = ['A', 'B', 'C'];
    const blended = bookOf({
      ...workshop,
      Colours: [
        ...(workshop['Colours'] ?? []),
        ['Dusk', 'Slate', 3, 'g'],
        ['Dusk', 'Foam', 3, 'g'],
        ...thirds.flatMap((name) => [
          [name, 'Slate', 1, 'parts'],
          [name, 'Foam', 2, 'parts'],
        ]),
      ],
      Designs: [
        ...(workshop['Designs'] ?? []),
        ['Halves', '', '', '', '', '', '', ''],
        ['Thirds', '', '', '', '', '', '', ''],
      ],
      Layers: [
        ...(workshop['Layers'] ?? []),
        ['Halves', '1', 'pour', 'Dusk', '', 40, 'g'],
        ...thirds.map((name) => ['Thirds', name, 'pour', name, '', 50, 'g']),
      ],
    });
    const melts = (design: string): unknown => {
      const sheet = call('MELTSHEET', design, 1, blended);
      const colours = column(sheet, 'Colour');
      return Object.fromEntries(colours.map((colour, at) => [colour, column(sheet, 'Melt g')[at]]));
    };
    expect(melts('Halves')).toEqual({ Slate: 20, Foam: 20, Dusk: 40 });
    expect(melts('Thirds')).toEqual({ Slate: 50, Foam: 100, A: 50, B: 50, C: 50 });
  });

  it('melts leftover soap first and lays spare tiles first when asked to', () => {
    const stocked = bookOf(
      withRows(
        workshop,
        'LedgerLines',
        ['E1', '2024-03-01', 'left over', 'Slate leftover', 12, 'B0', 0.2, 'B0', '', ''],
        ['E2', '2024-03-01', 'spare', 'Teal × Tiles', 20, 'B0', 0.3, 'B0', '', ''],
      ),
    );
    const plain = call('MELTSHEET', 'Tide Pool', 2, stocked);
    expect(plain).toEqual(call('MELTSHEET', 'Tide Pool', 2, book()));
    const thrifty = call('MELTSHEET', 'Tide Pool', 2, bookOf(stockedTables()), true) as unknown[][];
    const slate = thrifty.filter(([, colour]) => colour === 'Slate');
    // 12 g from the cup, 28 g fresh; no Teal needs to be melted at all.
    expect(slate.map((row) => row.slice(5, 8))).toEqual([
      ['Slate leftover', 12, 'g'],
      ['Clear base', 27.16, 'g'],
      ['Blue mica', 0.84, 'g'],
    ]);
    expect(column(thrifty, 'Colour')).not.toContain('Teal');
  });

  function stockedTables(): Tables {
    return withRows(
      workshop,
      'LedgerLines',
      ['E1', '2024-03-01', 'left over', 'Slate leftover', 12, 'B0', 0.2, 'B0', '', ''],
      ['E2', '2024-03-01', 'spare', 'Teal × Tiles', 20, 'B0', 0.3, 'B0', '', ''],
    );
  }

  it.each([
    ['less than no bars', ['Tide Pool', -1], /Bars is -1/],
    ['half a bar', ['Tide Pool', 1.5], /Bars is 1.5/],
    ['a slip of the finger', ['Tide Pool', 1e9], /at most/],
    ['text for bars', ['Tide Pool', 'a dozen'], /"a dozen", which is not a number/],
    ['an unknown design', ['Tied Pool', 2], /Did you mean "Tide Pool"\?/],
    [
      'a design far from any',
      ['Zebra crossing', 2],
      /^"Zebra crossing" is not a design in Designs\.$/,
    ],
  ])('refuses %s', (_, [design, bars], sentence) => {
    const { code, message } = errorOf(() => call('MELTSHEET', design, bars, book()));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(sentence);
  });

  it.each(['perhaps', 2])('refuses %j for use leftovers', (use) => {
    expect(errorOf(() => call('MELTSHEET', 'Tide Pool', 2, book(), use)).message).toMatch(
      /TRUE or FALSE/,
    );
  });
});

describe('MATERIALS', () => {
  it('lists what a batch takes, what is on hand and what is short', () => {
    const needs = call('MATERIALS', 'Tide Pool', 2, book()) as unknown[][];
    // Scent: 2 % of 57.5 g poured is 1.15 g, by 0.85 g/ml, for two bars.
    const scentMl = ((0.02 * 57.5) / 0.85) * 2;
    expect(needs).toEqual([
      ['Material', 'Amount', 'Unit', 'On hand', 'Short'],
      ['Clear base', 178.56, 'g', 5000, 0],
      ['White base', 40, 'g', 2000, 0],
      ['Blue mica', 1.2, 'g', 100, 0],
      ['Green drops', 0.2, 'ml', 100, 0],
      ['Orange oil', expect.closeTo(scentMl, 12), 'ml', 200, 0],
      ['Alcohol', 2, 'ml', 500, 0],
      ['Glycerin', 1, 'ml', 500, 0],
      ['Box', 2, 'each', 50, 0],
    ]);
  });

  it('says how much is short', () => {
    const boxes = (call('MATERIALS', 'Tide Pool', 60, book()) as unknown[][]).at(-1);
    expect(boxes).toEqual(['Box', 60, 'each', 50, 10]);
  });

  it('needs less where leftovers and spares are used', () => {
    const spare = bookOf(
      withRows(workshop, 'LedgerLines', [
        'E1',
        '2024-03-01',
        'spare',
        'Teal × Tiles',
        18,
        '',
        0,
        '',
        '',
        '',
      ]),
    );
    const names = column(call('MATERIALS', 'Tide Pool', 2, spare, true), 'Material');
    expect(names).not.toContain('Green drops');
    expect(column(call('MATERIALS', 'Tide Pool', 2, spare, false), 'Material')).toContain(
      'Green drops',
    );
  });
});

describe('CANMAKE', () => {
  it('answers the most bars that stock allows', () => {
    // 50 boxes; all else would do for more.
    expect(call('CANMAKE', 'Tide Pool', book())).toBe(50);
    // 2000 g of white base at 50 g a bar.
    expect(call('CANMAKE', 'Plain Bar', book())).toBe(40);
    // 2 bars are started for a good one: 100 g of clear base, and tiles by whole fills of 30 g Slate
    // for every 2 good bars: 43 bars take 4300 + 22 × 29.1 = 4940.2 g of 5000, 44 take 5040.2.
    expect(call('CANMAKE', 'Half Yield', book())).toBe(43);
  });

  it.each([524_288, 3_000_000, 12_345_678_901])(
    'answers %d bars where stock allows them',
    (bars) => {
      const plenty = withCell(workshop, 'Lots', 3, 'Quantity', bars * 50 + 49);
      expect(call('CANMAKE', 'Plain Bar', bookOf(plenty))).toBe(bars);
    },
  );

  it('answers 0 where nothing is left', () => {
    const empty = bookOf(
      withRows(workshop, 'LedgerLines', [
        'E1',
        '2024-03-01',
        'wasted',
        'Box',
        -50,
        '',
        '',
        '',
        '',
        '',
      ]),
    );
    expect(call('CANMAKE', 'Tide Pool', empty)).toBe(0);
  });

  it('refuses a design without layers, and says what to do', () => {
    const bare = bookOf(withRows(workshop, 'Designs', ['Bare', '', '', '', '', '', '', '']));
    const { code, message } = errorOf(() => call('CANMAKE', 'Bare', bare));
    expect(code).toBe('#VALUE!');
    expect(message).toMatch(/Bare has no lines in Layers/);
  });
});
