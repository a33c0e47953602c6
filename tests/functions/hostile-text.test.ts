import { describe, expect, it } from 'vitest';
import { errorOf, loadFunctions } from '../support/worksheet-functions.ts';
import { expectSentence, fullWorkshop, refusalOf } from '../support/full-workshop.ts';
import { ranges, withCell, type Tables } from '../support/small-book.ts';

const call = await loadFunctions();

const formula = '=HYPERLINK("http://x","y")';

describe.each([
  ['text that a spreadsheet might run', formula],
  // What every object of the language has by itself.
  ['a word of the language', 'constructor'],
  ['a word of the language', '__proto__'],
  ['a word of the language', 'toString'],
])('%s: %s', (_what, hostile) => {
  const renamed = (from: string): Tables =>
    Object.fromEntries(
      Object.entries(fullWorkshop).map(([name, range]) => [
        name,
        range.map((cells, y) =>
          y === 0 ? cells : cells.map((cell) => (cell === from ? hostile : cell)),
        ),
      ]),
    );

  it.each(['Clear base', 'Slate', 'Tide Pool', 'Box', 'Orange oil', 'Tiles'])(
    'stays what it is in place of %s',
    (name) => {
      const tables = renamed(name);
      const book = call('BOOK', ...ranges(tables));
      const design = name === 'Tide Pool' ? hostile : 'Tide Pool';
      const cells = [
        call('MELTSHEET', design, 2, book),
        call('MATERIALS', design, 2, book),
        call('COSTLINES', design, book, 2, '2024-03-01'),
        call('STOCKLIST', book, '2024-03-10'),
      ].flatMap((spill) => (spill as unknown[][]).flat());
      const plain = call('BOOK', ...ranges(fullWorkshop));
      const plainCells = [
        call('MELTSHEET', 'Tide Pool', 2, plain),
        call('MATERIALS', 'Tide Pool', 2, plain),
        call('COSTLINES', 'Tide Pool', plain, 2, '2024-03-01'),
        call('STOCKLIST', plain, '2024-03-10'),
      ].flatMap((spill) => (spill as unknown[][]).flat());
      const texts = (all: readonly unknown[]): string[] =>
        all.filter((cell) => typeof cell === 'string').sort();
      expect(texts(cells)).toEqual(
        texts(
          plainCells.map((cell) =>
            typeof cell === 'string'
              ? cell.replace(new RegExp(`^${name}(?= wear$|$)`, 'u'), () => hostile)
              : cell,
          ),
        ),
      );
    },
  );

  it('is shown whole where it is near to nothing', () => {
    const { message } = errorOf(() =>
      call('ONHAND', hostile, call('BOOK', ...ranges(fullWorkshop))),
    );
    expect(message.startsWith(`"${hostile}" is not a stock item`)).toBe(true);
  });
});

describe('names without end', () => {
  it.each(['Materials', 'Lots', 'Molds', 'Designs', 'Plan', 'Fairs'])('%s', (name) => {
    const header = String(fullWorkshop[name]?.[0]?.[0]);
    expectSentence(
      refusalOf(call, withCell(fullWorkshop, name, 1, header, 'n'.repeat(32_000))),
      `${name}, row 1, ${header} is "nnn`,
    );
  });

  it('as an argument', () => {
    const book = call('BOOK', ...ranges(fullWorkshop));
    for (const id of ['ONHAND', 'CANMAKE', 'REORDERPOINT', 'BASEPERMOLD']) {
      expect(errorOf(() => call(id, 'n'.repeat(32_000), book)).message.length).toBeLessThan(300);
    }
    expect(errorOf(() => call('ONHAND', 'Box', 'n'.repeat(32_000))).message.length).toBeLessThan(
      300,
    );
  });

  it('leaves notes as long as a cell holds', () => {
    expect(
      call('BOOK', ...ranges(withCell(fullWorkshop, 'LedgerLines', 1, 'Note', 'n'.repeat(32_767)))),
    ).toMatch(/^book /);
  });
});
