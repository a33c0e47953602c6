import { describe, expect, it } from 'vitest';
import type { Column } from '../../src/workbook/column.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { tables as specs } from '../../src/workbook/schema.ts';
import { errorOf, loadOnce } from '../support/worksheet-functions.ts';
import { fullWorkshop } from '../support/full-workshop.ts';
import { ranges, type Tables, withCell, withRows, workshop } from '../support/small-book.ts';

const call = await loadOnce();
const bookOf = (tables: Tables): unknown => call('BOOK', ...ranges(tables));

/** The tables as a host hands them over that has something else for every blank cell. */
const withBlanks = (tables: Tables, blank: Cell | null): Tables =>
  Object.fromEntries(
    Object.entries(tables).map(([name, [headers = [], ...rows]]) => [
      name,
      [headers, ...rows.map((row) => row.map((cell) => (cell === '' ? (blank as Cell) : cell)))],
    ]),
  );

const used = [
  ['E1', '2024-02-28', 'used', 'Clear base', -5, 'C1', '', '', '', ''],
  ['E2', '2024-02-29', 'used', 'Clear base', -7, 'C1', -0.056, '', '', ''],
];

/** Columns in which a 0 is blank, in tables that hold one. */
const zeroIsBlank = Object.values(specs).flatMap(({ name, columns }) =>
  Object.values<Column<unknown>>(columns)
    .filter(({ header, zero }) => zero !== 'meant' && fullWorkshop[name]?.[0]?.includes(header))
    .map(({ header }): [string, string] => [name, header]),
);

describe('tables handed over with null or 0 for their blank cells', () => {
  it.each([null, 0])('%s: the same handle as with ""', (blank) => {
    expect(bookOf(withBlanks(workshop, blank))).toBe(bookOf(workshop));
  });

  it.each(zeroIsBlank)('%s, %s: a 0 is a blank', (name, header) => {
    const say = (cell: Cell): unknown => {
      try {
        // A blank row shows that the other zeros of the table are none.
        return bookOf(withRows(withCell(fullWorkshop, name, 1, header, cell), name, ['']));
      } catch (error) {
        return (error as Error).message;
      }
    };
    expect(say(0)).toBe(say(''));
  });

  it('finds no difference after an edit either, with the book from before in memory', () => {
    const first = withRows(workshop, 'LedgerLines', ...used);
    const edited = withCell(first, 'LedgerLines', 1, 'Note', 'spilt');
    const book = bookOf(edited);
    expect(bookOf(withBlanks(first, null))).toBe(bookOf(first));
    expect(bookOf(withBlanks(edited, 0))).toBe(book);
    expect(bookOf(withBlanks(edited, null))).toBe(book);
  });
});

describe('a column in which a 0 means something of its own', () => {
  // Clear base: 6 days from ordering to having it.
  const withLead = (cell: Cell): Tables =>
    withCell(
      withCell(withRows(workshop, 'LedgerLines', ...used), 'Materials', 1, 'Lead days SD', ''),
      'Materials',
      1,
      'Lead days',
      cell,
    );

  it('keeps its 0 where blank cells beside it show that the host tells them apart', () => {
    for (const blank of ['', null]) {
      const book = bookOf(withBlanks(withLead(0), blank));
      expect(call('REORDERPOINT', 'Clear base', book, '2024-03-01')).toBe(0);
    }
    const open = errorOf(() =>
      call('REORDERPOINT', 'Clear base', bookOf(withLead('')), '2024-03-01'),
    );
    expect(open.code).toBe('#N/A');
    expect(open.message).toContain('Lead days');
  });

  it('is asked to be filled in, not taken for nothing, where the host hands blanks over as 0', () => {
    const book = bookOf(withBlanks(withLead(''), 0));
    const { code, message } = errorOf(() => call('REORDERPOINT', 'Clear base', book, '2024-03-01'));
    expect(code).toBe('#N/A');
    expect(message).toContain('Lead days');
    const unpaid = withCell(workshop, 'Lots', 1, 'Paid', '');
    expect(errorOf(() => bookOf(withBlanks(unpaid, 0))).message).toBe(
      errorOf(() => bookOf(unpaid)).message,
    );
  });

  it('keeps its 0 in a table without a blank, whatever else is 0 there that may be', () => {
    const free: Tables = {
      ...workshop,
      Lots: [
        ['Lot', 'Material', 'Received', 'Quantity', 'Paid', 'Freight'],
        ['C1', 'Clear base', '2024-01-05', 2000, 0, 0],
      ],
    };
    expect(call('STOCKVALUE', 'Clear base', bookOf(free), '2024-03-01')).toBe(0);
  });
});

describe('a setting in which a 0 means something else than its default', () => {
  const withSetting = (setting: string, value: Cell): Tables => ({
    ...workshop,
    Settings: [
      ...(workshop['Settings'] ?? []).filter(([name]) => name !== setting),
      [setting, value, ''],
    ],
  });

  it.each([
    ['Scale step g', 1],
    ['Buffer days', 3],
  ])('%s is asked for where the host hands blanks over as 0', (setting, standard) => {
    for (const cell of ['', 0]) {
      const { message } = errorOf(() => bookOf(withBlanks(withSetting(setting, cell), 0)));
      expect(message).toContain(`Value of ${setting} is 0 or blank`);
      expect(message).toContain(`Type ${standard}, as where it is blank`);
      expect(message).toContain('or none for 0');
    }
    expect(bookOf(withBlanks(withSetting(setting, 'none'), 0))).toMatch(/^book /);
  });

  it('takes none for 0 in every host', () => {
    const melted = (cell: Cell): unknown =>
      call('MELTSHEET', 'Tide Pool', 7, bookOf(withSetting('Scale step g', cell)));
    expect(melted('None')).toEqual(melted(0));
    expect(melted('none')).not.toEqual(melted(25));
  });
});

describe('an argument of 0', () => {
  const book = bookOf(fullWorkshop);
  const wanted: readonly (readonly [string, (zero: unknown) => readonly unknown[]])[] = [
    [
      'TILECOUNT',
      (zero) => [
        [
          ['Teal', zero],
          [zero, 'Teal'],
        ],
        zero,
      ],
    ],
    ['MELTSHEET', (zero) => ['Tide Pool', zero, book, zero]],
    ['MATERIALS', (zero) => ['Tide Pool', zero, book, zero]],
    ['COSTPERBAR', (zero) => ['Tide Pool', book, zero, zero]],
    ['COSTLINES', (zero) => ['Tide Pool', book, zero, zero]],
    ['ONHAND', (zero) => ['Clear base', book, zero]],
    ['STOCKVALUE', (zero) => ['Clear base', book, zero]],
    ['UNITCOST', (zero) => ['Clear base', book, zero]],
    ['STOCKLIST', (zero) => [book, zero]],
    ['SUPPLIES', (zero) => [book, zero, zero]],
    ['CALENDAR', (zero) => [book, zero]],
    ['PLANNOTES', (zero) => [book, zero, zero]],
    ['CASHBYWEEK', (zero) => [book, zero, zero]],
    ['FORECAST', (zero) => [[[3], [5], [4]], 2, zero]],
    ['AMOUNT', (zero) => [1, 'oz', 'g', zero, zero]],
    ['BASEPERMOLD', (zero) => ['Tiles', book, 1, zero]],
  ];

  it.each(wanted)('of %s is a blank where no 0 can be meant', (id, given) => {
    const asked = (zero: unknown): unknown => {
      try {
        return call(id, ...given(zero));
      } catch (error) {
        return (error as Error).message;
      }
    };
    expect(asked(0)).toEqual(asked(''));
    if (id !== 'TILECOUNT') expect(asked([[0]])).toEqual(asked(''));
  });

  it.each([
    ['ONHAND', [0, book]],
    ['ONHAND', ['Clear base', 0]],
    ['AMOUNT', [1, 0, 'g']],
    ['TRACE', [0, book]],
    ['FORECAST', [[[3], [5]], 0]],
    ['SAFETYSTOCK', [0, 5, 10]],
  ])('%s of %j: what is left open is named', (id, given) => {
    expect(errorOf(() => call(id, ...given)).message).toMatch(/ is blank/);
  });
});
