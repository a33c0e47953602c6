import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cell } from '../../src/workbook/port.ts';
import { ranges, table, withRows, withSetting, workshop } from '../support/small-book.ts';
import { column, errorOf, loadFunctions } from '../support/worksheet-functions.ts';

const call = await loadFunctions();
const sheets = ['MELTSHEET', 'WEIGHOUT', 'MATERIALS', 'TAKEOUT'] as const;

/** Two bars of 18 tiles of one colour each, from sections of 36 that take 25 g (common practice figures). */
const halves = {
  Settings: table('Setting | Value', ['Scale step g', 1]),
  Materials: table('Material | Kind | Unit', ['Base', 'base', 'g'], ['Box', 'packaging', 'each']),
  Lots: table('Lot | Material | Received | Quantity | Paid', ['L1', 'Base', '2024-01-05', 30, 10]),
  Molds: table('Mold | Makes | Cavities | Fill g', ['Tray', 'tiles', 36, 25]),
  Designs: table('Design', ['Cove'], ['Reef']),
  Layers: table(
    'Design | Layer | Part | Item | Mold | Per bar | Per',
    ['Cove', '1', 'tiles', 'Base', 'Tray', 18, 'each'],
    ['Cove', '2', 'pack', 'Box', '', 1, 'each'],
    ['Reef', '1', 'tiles', 'Base', 'Tray', 18, 'each'],
  ),
};
const book = (): unknown => call('BOOK', ...ranges(halves));
const down = (...cells: readonly Cell[]): Cell[][] => cells.map((cell) => [cell]);

describe('designs of one sitting', () => {
  it('share a section: 18 tiles and 18 are one fill of 25 g', () => {
    const sheet = call('MELTSHEET', down('Cove', 'Reef'), down(1, 1), book());
    expect(sheet).toEqual([
      [...((call('MELTSHEET', 'Cove', 1, book()) as Cell[][])[0] ?? [])],
      [1, 'Base', 1, 25, 25, 'Base', 25, 'g', 0, 0],
    ]);
    // One by one each would fill a section of its own, half of it spare.
    expect(column(call('MELTSHEET', 'Cove', 1, book()), 'Spare tiles')).toEqual([18]);
    expect(call('MATERIALS', down('Cove', 'Reef'), down(1, 1), book())).toEqual([
      ['Material', 'Amount', 'Unit', 'On hand', 'Short'],
      ['Base', 25, 'g', 30, 0],
      ['Box', 1, 'each', 0, 1],
    ]);
  });

  it.each(sheets)('%s of ranges of one cell answers as of the cells', (id) => {
    expect(call(id, [['Cove']], [[3]], book())).toEqual(call(id, 'Cove', 3, book()));
    // A blank number of bars stands for 12, alone.
    expect(call(id, [['Cove']], [['']], book())).toEqual(call(id, 'Cove', 12, book()));
  });

  it.each(sheets)('%s passes over blank rows, and adds up a design that stands twice', (id) => {
    const sparse = [down('', 'Cove', 'Reef', '', 'cove'), down('', 2, 3, 0, 5)];
    const plain = [down('Cove', 'Reef'), down(7, 3)];
    expect(call(id, ...sparse, book())).toEqual(call(id, ...plain, book()));
  });

  it('lays leftovers and spares of the shelf where that is asked', () => {
    const stocked = withRows(
      { ...halves, LedgerLines: table('Entry | When | Reason | Material | Quantity | Value') },
      'LedgerLines',
      ['E1', '2024-02-01', 'spare', 'Base × Tray', 20, 1],
    );
    const asked = [down('Cove', 'Reef'), down(1, 2), call('BOOK', ...ranges(stocked))];
    expect(column(call('MELTSHEET', ...asked), 'Fills')).toEqual([2]);
    expect(column(call('MELTSHEET', ...asked, true), 'Fills')).toEqual([1]);
  });

  it.each([
    ['heights that differ', down('Cove', 'Reef'), down(1), /^design has 2 rows and bars 1 row\./],
    ['one number for all', down('Cove', 'Reef'), 3, /^design has 2 rows and bars 1 row\./],
    ['one design for all', 'Cove', down(1, 2), /^design has 1 row and bars 2 rows\./],
    [
      'bars without a design',
      down('Cove', ''),
      down(1, 4),
      /^design is blank in row 2, beside 4 bars\./,
    ],
    [
      'a design without bars',
      down('Cove', 'Reef'),
      down(1, ''),
      /^bars is blank in row 2, beside Reef\./,
    ],
    ['nothing at all', down('', ''), down('', ''), /^design is blank\./],
    [
      'no such design',
      down('Cove', 'Reaf'),
      down(1, 1),
      /^"Reaf" is not a design in Designs\. Did you mean "Reef"\?/,
    ],
    ['half a bar', down('Cove', 'Reef'), down(1, 1.5), /^Bars of Reef is 1\.5\./],
    ['a word for a number', down('Cove', 'Reef'), down(1, 'two'), /^bars in row 2 is "two"/],
    ['an error', down('Cove', '#REF!'), down(1, 1), /^design in row 2 is the error #REF!/],
    [
      'two columns',
      [
        ['Cove', 'Reef'],
        ['Cove', 'Reef'],
      ],
      down(1, 1),
      /^design in row 1 must be one cell/,
    ],
  ] as const)('%s: says what to do', (_, designs, bars, sentence) => {
    for (const id of sheets) {
      const { code, message } = errorOf(() => call(id, designs, bars, book()));
      expect(code).toBe('#VALUE!');
      expect(message).toMatch(sentence);
    }
  });
});

describe('law', () => {
  const bars = fc.integer({ min: 1, max: 30 });
  const designs = ['Tide Pool', 'Plain Bar', 'Half Yield'];
  const shop = call('BOOK', ...ranges(withSetting(workshop, 'Scale step g', 1)));
  const total = (sheet: unknown, header: string): number =>
    column(sheet, header).reduce<number>((sum, cell) => sum + Number(cell), 0);

  it('in any order of rows a sitting takes the same, and never more than one by one', () => {
    fc.assert(
      fc.property(
        fc.tuple(bars, bars, bars),
        fc.shuffledSubarray([0, 1, 2], { minLength: 2 }),
        (wanted, order) => {
          const rows = order.map((at) => [designs[at] ?? '', wanted[at] ?? 0] as const);
          const ask = (of: typeof rows): unknown =>
            call(
              'MATERIALS',
              down(...of.map(([name]) => name)),
              down(...of.map(([, many]) => many)),
              shop,
            );
          expect(ask([...rows].reverse())).toEqual(ask(rows));
          const alone = rows.map(([name, many]) => call('MATERIALS', name, many, shop));
          expect(total(ask(rows), 'Amount')).toBeLessThanOrEqual(
            alone.reduce<number>((sum, sheet) => sum + total(sheet, 'Amount'), 0) + 1e-9,
          );
        },
      ),
      { numRuns: 40 },
    );
  });
});
