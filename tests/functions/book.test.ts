import { describe, expect, it } from 'vitest';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { ranges, type Tables, table, withCell, withRows, workshop } from '../support/small-book.ts';

const call = await loadFunctions();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));
const handle = bookOf(workshop);

describe('BOOK', () => {
  it('answers a text that stands for the tables', () => {
    expect(handle).toMatch(/^book [0-9a-f]{16}$/);
    expect(bookOf(workshop)).toBe(handle);
  });

  it('takes the ranges as one list too, as Excel hands over a repeating argument', () => {
    expect(call('BOOK', ranges(workshop))).toBe(handle);
  });

  it('passes over arguments left out', () => {
    expect(call('BOOK', ...ranges(workshop), '', null, undefined)).toBe(handle);
  });

  const shapes: readonly [string, Tables][] = [
    ['tables in another order', Object.fromEntries(Object.entries(workshop).reverse())],
    ['columns in another order', mapRanges((range) => range.map((cells) => [...cells].reverse()))],
    ['rows in another order', mapRanges(([headers = [], ...rows]) => [headers, ...rows.reverse()])],
    [
      'an extra column',
      mapRanges((range) => range.map((cells, y) => [y === 0 ? 'Mine' : `note ${y}`, ...cells])),
    ],
    [
      'headers in capitals with spaces around them',
      mapRanges(([headers = [], ...rows]) => [
        headers.map((header) => ` ${String(header).toUpperCase()} `),
        ...rows,
      ]),
    ],
    [
      'blank rows between',
      mapRanges(([headers = [], ...rows]) => [
        headers,
        ...rows.flatMap((row) => [row, row.map(() => '')]),
      ]),
    ],
    [
      'a column of the maker’s own filled in on a row that is otherwise blank',
      mapRanges(([headers = [], ...rows]) => [
        [...headers, 'Mine'],
        ...rows.map((row) => [...row, '']),
        [...headers.map(() => ''), 'a sum'],
      ]),
    ],
  ];

  function mapRanges(change: (range: Tables[string]) => Tables[string]): Tables {
    return Object.fromEntries(
      Object.entries(workshop).map(([name, range]) => [name, change(range)]),
    );
  }

  it.each(shapes)('is the same book with %s', async (_, tables) => {
    // A fresh load, so that the tables are read and not remembered.
    const fresh = await loadFunctions();
    expect(fresh('BOOK', ...ranges(tables))).toBe(handle);
    expect(fresh('MELTSHEET', 'Tide Pool', 2, handle)).toEqual(
      call('MELTSHEET', 'Tide Pool', 2, bookOf(workshop)),
    );
  });

  it.each([
    ['a number', withCell(workshop, 'Lots', 1, 'Quantity', 2001)],
    ['a name', withCell(workshop, 'Layers', 13, 'Layer', '2b')],
    ['a row', withRows(workshop, 'Settings', ['Buffer days', 4, ''])],
    ['a number turned into text', withCell(workshop, 'Lots', 1, 'Lot', 1)],
  ])('is another book when %s changes', (_, tables) => {
    expect(bookOf(tables)).not.toBe(handle);
  });

  it('needs no table but those a question is about', () => {
    const few = call('BOOK', table('Mold | Makes | Cavities | Fill g', ['Tiles', 'tiles', 36, 25]));
    expect(call('BASEPERMOLD', 'Tiles', few)).toBe(25);
  });

  it('knows a table by its required headers though other columns are called like another table’s', () => {
    const lots = workshop['Lots']?.map((cells, y) =>
      y === 0
        ? [...cells, 'Entry', 'Batch', 'By', 'Note', 'Value']
        : [...cells, 'e', 'b', 'me', 'n', 1],
    );
    expect(bookOf({ ...workshop, Lots: lots ?? [] })).toBe(handle);
  });

  it('reads serial numbers as the dates they are', () => {
    // 45296 is 5 January 2024: 19,727 days after 1 Jan 1970, which is 25569.
    const serial = bookOf(withCell(workshop, 'Lots', 1, 'Received', 45_296));
    expect(call('ONHAND', 'Clear base', serial, '2024-01-04')).toBe(0);
    expect(call('ONHAND', 'Clear base', serial, 45_295)).toBe(0);
    expect(call('ONHAND', 'Clear base', serial, '2024-01-05')).toBe(2000);
    expect(call('ONHAND', 'Clear base', serial, 45_296)).toBe(2000);
  });

  const refusals: readonly [string, Tables, string][] = [
    [
      'text for a number',
      withCell(workshop, 'Materials', 3, 'Lead days', 'nine'),
      'Materials, row 3, Lead days is "nine", which is not a number. Type a plain number.',
    ],
    [
      'an unknown name with the nearest known one',
      withCell(workshop, 'Layers', 1, 'Item', 'Slaet'),
      'Layers, row 1, Item is "Slaet", which is not a colour in Colours or a base in Materials. Did you mean "Slate"?',
    ],
    [
      'a name that stands twice',
      withCell(workshop, 'Lots', 2, 'Lot', 'c1'),
      'Lots, row 2, Lot "c1" stands in row 1 already. Each may stand once.',
    ],
    [
      'a blank that must be filled in',
      withCell(workshop, 'Molds', 1, 'Cavities', ''),
      'Molds, row 1, Cavities is blank or 0. Fill it in.',
    ],
    [
      'a date in another form',
      withCell(workshop, 'Lots', 1, 'Received', '5/1/2024'),
      'Lots, row 1, Received is "5/1/2024", which is not a date. Type 2024-01-05 for 5 January 2024 or 2024-05-01 for 1 May 2024.',
    ],
  ];

  it.each(refusals)('refuses %s: table, row, column, value', (_, tables, sentence) => {
    const { code, message } = errorOf(() => bookOf(tables));
    expect(code).toBe('#VALUE!');
    expect(message).toBe(sentence);
  });

  it('tells all faults at once, two in one row with them', () => {
    const one = withCell(workshop, 'Lots', 1, 'Quantity', -5);
    const two = withCell(one, 'Lots', 1, 'Material', 'Clera base');
    const three = withCell(two, 'Designs', 1, 'Yield %', 120);
    const lines = errorOf(() => bookOf(three)).message.split('\n');
    expect(lines).toHaveLength(3);
    expect(lines).toContain('Lots, row 1, Quantity is -5. Type more than 0.');
    expect(lines).toContain(
      'Lots, row 1, Material is "Clera base", which is not a material in Materials. Did you mean "Clear base"?',
    );
    expect(lines).toContain('Designs, row 1, Yield % is 120. Type at most 100.');
  });

  it('asks what a share means that a cell shows as a percent', () => {
    const { message } = errorOf(() => bookOf(withCell(workshop, 'Designs', 1, 'Yield %', 0.57)));
    expect(message).toBe('Designs, row 1, Yield % is 0.57. Type 1 or more: 57 if 57 % is meant.');
  });

  it('shows twenty faults and counts the rest', () => {
    const rows = Array.from({ length: 50 }, (_, at) => [
      `X${at}`,
      'Clear base',
      'soon',
      1,
      1,
      '',
      '',
      '',
    ]);
    const lines = errorOf(() => bookOf(withRows(workshop, 'Lots', ...rows))).message.split('\n');
    expect(lines).toHaveLength(21);
    expect(lines.at(-1)).toBe('And 30 more.');
  });

  it.each([
    ['nothing', []],
    ['no range, as a host hands it over', [[[]]]],
    ['a blank cell', ['']],
    ['a range of one blank cell', [[['']]]],
    [
      'a range that is no table',
      [
        [
          ['a', 'b'],
          [1, 2],
        ],
      ],
    ],
    ['one table twice', [workshop['Molds'], workshop['Molds']]],
    ['a cell that holds an error', [[...(workshop['Molds'] ?? []), [{ code: '#REF!' }]]]],
  ])('refuses %s with a sentence', (_, args) => {
    const { code, message } = errorOf(() => call('BOOK', ...args));
    expect(code).toBe('#VALUE!');
    expect(message.length).toBeGreaterThan(30);
    expect(message).not.toMatch(/fault of its own/);
    if (args.flat(3).every((cell) => cell === ''))
      expect(message).toMatch(/^Give BOOK your tables, each with its headers: =POUR\.BOOK\(/);
  });
});

describe('the book argument', () => {
  it('answers #N/A with what to do for a handle that is not in memory', async () => {
    const fresh = await loadFunctions();
    const { code, message } = errorOf(() => fresh('ONHAND', 'Clear base', handle));
    expect(code).toBe('#N/A');
    expect(message).toMatch(/recalculate/i);
  });

  it('keeps the books used last and lets the oldest go', async () => {
    const fresh = await loadFunctions();
    const variants = Array.from({ length: 20 }, (_, at) =>
      withCell(workshop, 'Lots', 1, 'Paid', at),
    );
    const [first, ...others] = variants.map((tables) => fresh('BOOK', ...ranges(tables)));
    expect(errorOf(() => fresh('ONHAND', 'Clear base', first)).code).toBe('#N/A');
    expect(fresh('ONHAND', 'Clear base', others.at(-1))).toBe(5000);
    // The Book cell recalculated, it is there again.
    expect(fresh('BOOK', ...ranges(variants[0] ?? {}))).toBe(first);
    expect(fresh('ONHAND', 'Clear base', first)).toBe(5000);
  });

  it('keeps a book for each of several what-ifs', async () => {
    const fresh = await loadFunctions();
    const handles = Array.from({ length: 16 }, (_, at) =>
      fresh('BOOK', ...ranges(withCell(workshop, 'Lots', 1, 'Paid', at))),
    );
    for (const one of handles) expect(fresh('ONHAND', 'Clear base', one)).toBe(5000);
  });

  it('keeps few books where their ledgers are long', async () => {
    const fresh = await loadFunctions();
    const counts = Array.from({ length: 12_000 }, (_, at) => [
      `E${at}`,
      '2024-03-01',
      'counted',
      'Clear base',
      1,
    ]);
    const long = withRows(workshop, 'LedgerLines', ...counts);
    const handles = Array.from({ length: 6 }, (_, at) =>
      fresh('BOOK', ...ranges(withCell(long, 'Lots', 1, 'Paid', at))),
    );
    for (const gone of handles.slice(0, 2))
      expect(errorOf(() => fresh('ONHAND', 'Clear base', gone)).code).toBe('#N/A');
    for (const one of handles.slice(2)) expect(fresh('ONHAND', 'Clear base', one)).toBe(17_000);
  });

  it.each([
    ['Materials', '#N/A'],
    ['book 12', '#N/A'],
    [[['Materials']], '#N/A'],
    ['', '#VALUE!'],
    [12, '#VALUE!'],
    [true, '#VALUE!'],
  ])('%j is no book in memory: %s with a sentence', (argument, expected) => {
    const { code, message } = errorOf(() => call('ONHAND', 'Clear base', argument));
    expect(code).toBe(expected);
    expect(message).toMatch(/book/);
  });

  it('may come as a range of one cell, as may every argument', () => {
    const again = bookOf(workshop);
    expect(call('ONHAND', [['Clear base']], [[again]], [['2024-01-05']])).toBe(2000);
    expect(
      column(call('MELTSHEET', [['Tide Pool']], [[2]], [[again]], [['']]), 'Step'),
    ).toHaveLength(9);
  });

  it('is not taken from a range of cells', () => {
    expect(errorOf(() => call('ONHAND', [['Clear base'], ['White base']], handle)).code).toBe(
      '#VALUE!',
    );
  });
});
