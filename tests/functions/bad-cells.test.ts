import { describe, expect, it } from 'vitest';
import { quoted } from '../../src/domain/kernel/names.ts';
import type { Column } from '../../src/workbook/column.ts';
import type { Cell } from '../../src/workbook/port.ts';
import { tables as specs } from '../../src/workbook/schema.ts';
import { errorOf, loadOnce } from '../support/worksheet-functions.ts';
import { expectSentence, fullWorkshop, refusalOf } from '../support/full-workshop.ts';
import { ranges, withCell, withRows, withoutColumn } from '../support/small-book.ts';

// Hundreds of tables, each refused: not worth asking three hosts about.
const call = await loadOnce();
const allSpecs: readonly {
  readonly name: string;
  readonly columns: Readonly<Record<string, Column<unknown>>>;
}[] = Object.values(specs);

function columnsWhere(wanted: (column: Column<unknown>) => boolean): [string, string][] {
  return allSpecs.flatMap(({ name, columns }) =>
    Object.values(columns)
      .filter(wanted)
      .filter(({ header }) => fullWorkshop[name]?.[0]?.includes(header))
      .map(({ header }): [string, string] => [name, header]),
  );
}

const isNumber = ({ format }: Column<unknown>): boolean =>
  ['number', 'whole', 'money', 'percent'].includes(format);

it('starts from tables in order', () => {
  expect(call('BOOK', ...ranges(fullWorkshop))).toMatch(/^book /);
});

describe('a table without a column that it is known by', () => {
  it.each(columnsWhere(({ required }) => required))('%s without %s', (name, header) => {
    const error = refusalOf(call, withoutColumn(fullWorkshop, name, header));
    // Designs has but one such column; what is left is known by its other headers.
    expectSentence(error, `${name} has no column "${header}"`);
  });
});

describe('text where a number belongs', () => {
  it.each(columnsWhere(isNumber))('%s, %s', (name, header) => {
    expectSentence(
      refusalOf(call, withCell(fullWorkshop, name, 1, header, 'a few')),
      `${name}, row 1, ${header} is "a few"`,
    );
    expectSentence(
      refusalOf(call, withCell(fullWorkshop, name, 1, header, '12')),
      `${name}, row 1, ${header} is "12", which is text: set the cell's format to Number and type it again.`,
    );
    expectSentence(
      refusalOf(call, withCell(fullWorkshop, name, 1, header, true)),
      `${name}, row 1, ${header} is "TRUE"`,
    );
  });
});

describe('a cell gone wrong that was blank, with the book from before still in memory', () => {
  const optional = columnsWhere(({ required, format }) => !required && format !== 'text');
  it.each(optional)('%s, %s', (name, header) => {
    const blank = withCell(fullWorkshop, name, 1, header, '');
    expect(call('BOOK', ...ranges(blank))).toMatch(/^book /);
    // An error of the sheet comes as an object.
    for (const cell of [{ error: '#REF!' } as unknown as Cell, 'a few']) {
      expectSentence(
        refusalOf(call, withCell(fullWorkshop, name, 1, header, cell)),
        `${name}, row 1, ${header} `,
      );
    }
  });
});

describe('an error of the sheet handed over as text', () => {
  const all = columnsWhere(() => true);
  it.each(all)('%s, %s', (name, header) => {
    for (const error of ['#N/A', '#DIV/0!', '#REF!', ' #name? ']) {
      const { message } = refusalOf(call, withCell(fullWorkshop, name, 1, header, error));
      expect(message).toContain(
        `${name}, row 1, ${header} holds the error ${error.trim().toUpperCase()}. Mend that cell`,
      );
    }
  });

  it('is never counted as a colour, nor taken for a name or a number', () => {
    expect(errorOf(() => call('TILECOUNT', [['Slate', '#N/A']])).message).toMatch(
      /pattern holds an error.* in row 1, column 2/,
    );
    const book = call('BOOK', ...ranges(fullWorkshop));
    expect(errorOf(() => call('ONHAND', '#REF!', book)).message).toBe(
      'item is the error #REF!. Mend the cell it comes from.',
    );
    expect(errorOf(() => call('PRICE', '#DIV/0!', 50)).message).toMatch(/^cost is the error #DIV/);
    expect(errorOf(() => call('ONHAND', 'Box', '#VALUE!'))).toMatchObject({
      code: '#N/A',
      message: 'The cell named Book holds the error #VALUE!: it says what to mend.',
    });
  });

  it('takes a name that only begins alike as it is', () => {
    const named = withCell(fullWorkshop, 'Lots', 9, 'Lot', '#12');
    expect(call('BOOK', ...ranges(named))).toMatch(/^book /);
  });
});

describe('numbers beyond all sense', () => {
  it.each(columnsWhere(isNumber))('%s, %s', (name, header) => {
    for (const number of [1e300, -1e300, 1e13, -1e13]) {
      expectSentence(
        refusalOf(call, withCell(fullWorkshop, name, 1, header, number)),
        `${name}, row 1, ${header} is ${number}`,
      );
    }
  });

  // Where less than nothing means something: what moved, what it was worth, what a batch came to, a sale taken back.
  const signed = new Set([
    'LedgerLines Quantity',
    'LedgerLines Value',
    'Batches Material cost',
    'Batches Cost per bar',
  ]);
  it.each(columnsWhere(isNumber).filter(([name, header]) => !signed.has(`${name} ${header}`)))(
    '%s, %s below nothing',
    (name, header) => {
      expectSentence(
        refusalOf(call, withCell(fullWorkshop, name, 1, header, -1)),
        `${name}, row 1, ${header} is -1`,
      );
    },
  );
});

describe('dates in wrong forms', () => {
  const forms = [
    '5/1/2024',
    '2024-13-01',
    '2024-02-30',
    '1 May 2024',
    'soon',
    '24-05-01',
    '0024-05-01',
    -3,
    1e9,
    true,
    '2024-05-01T25:00',
  ];
  it.each(columnsWhere(({ format }) => format === 'date'))('%s, %s', (name, header) => {
    for (const form of forms) {
      expectSentence(
        refusalOf(call, withCell(fullWorkshop, name, 1, header, form)),
        `${name}, row 1, ${header} is ${quoted(form)}, which is not a date`,
      );
    }
  });
});

describe('names that nothing bears', () => {
  it.each([
    ['Lots', 'Material', 'not a material in Materials'],
    ['LedgerLines', 'Material', 'not a stock item'],
    ['LedgerLines', 'Lot', 'not a lot in Lots'],
    ['Colours', 'Ingredient', 'not a material in Materials or a colour in Colours'],
    ['Designs', 'Bar mold', 'not a mold in Molds'],
    ['Layers', 'Design', 'not a design in Designs'],
    ['Layers', 'Item', 'not a colour in Colours or a base in Materials'],
    ['Layers', 'Mold', 'not a mold in Molds'],
    ['Batches', 'Design', 'not a design in Designs'],
    ['Plan', 'Design', 'not a design in Designs'],
    ['Plan', 'Fair', 'not a fair in Fairs'],
    ['Sales', 'Design', 'not a design in Designs'],
    ['Sales', 'Fair', 'not a fair in Fairs'],
  ])('%s, %s', (name, header, says) => {
    for (const odd of [
      'Nobody knows this',
      '=HYPERLINK("http://x","y")',
      'é'.repeat(200),
      '__proto__',
      '×',
      ' × ',
      ' leftover',
    ]) {
      const error = refusalOf(call, withCell(fullWorkshop, name, 1, header, odd));
      expectSentence(error, `${name}, row 1, ${header} is "`);
      expect(error.message).toContain(says);
    }
  });

  it.each([
    ['Materials', 'Kind', 'bsae', 'base'],
    ['Materials', 'Unit', 'gm', 'g'],
    ['LedgerLines', 'Reason', 'usde', 'used'],
    ['Molds', 'Makes', 'tlies', 'tiles'],
    ['Colours', 'Measure', 'dorps', 'drops'],
    ['Layers', 'Part', 'embde', 'embed'],
    ['Layers', 'Per', 'eahc', 'each'],
    ['Settings', 'Setting', 'Curency', 'Currency'],
  ])('%s, %s nearly right', (name, header, typed, meant) => {
    const error = refusalOf(call, withCell(fullWorkshop, name, 1, header, typed));
    expectSentence(error, `${name}, row 1, ${header} is "${typed}"`);
    expect(error.message).toContain(`Did you mean "${meant}"?`);
  });

  it('are looked for but twenty times, however many there are', () => {
    const rows = Array.from({ length: 20_000 }, (_, at) => [
      `N${at}`,
      `Nobody ${at}`,
      '2024-01-01',
      1,
      1,
      '',
      '',
      '',
    ]);
    expectSentence(
      refusalOf(call, withRows(fullWorkshop, 'Lots', ...rows)),
      'Lots, row 10, Material',
    );
  });
});

describe('what must stand once', () => {
  it.each([
    ['Settings', 'Setting'],
    ['Materials', 'Material'],
    ['Lots', 'Lot'],
    ['LedgerLines', 'Entry'],
    ['Molds', 'Mold'],
    ['Designs', 'Design'],
    ['Batches', 'Batch'],
    ['Plan', 'Plan line'],
    ['Fairs', 'Fair'],
    ['Sales', 'Sale'],
  ])('%s, %s', (name, header) => {
    const first = fullWorkshop[name]?.[1] ?? [];
    const twin = first.map((cell, at) => (at === 0 ? ` ${String(cell).toUpperCase()}` : cell));
    const at = fullWorkshop[name]?.length ?? 0;
    expectSentence(
      refusalOf(call, withRows(fullWorkshop, name, twin)),
      `${name}, row ${at}, ${header} "`,
    );
  });

  it('is told too where the second row has another fault', () => {
    const twin = ['c1', 'Clear base', 'soon', 1, 1, '', '', ''];
    const { message } = refusalOf(call, withRows(fullWorkshop, 'Lots', twin));
    expect(message).toContain('Received is "soon"');
    expect(message).toContain('Lot "c1" stands in row 1 already');
  });
});
