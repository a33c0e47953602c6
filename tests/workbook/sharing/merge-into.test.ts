import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changeForUndoneLots } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { readTablesOf } from '../../../taskpane/read-workbook.ts';
import type { Cell, TableData } from '../../../src/workbook/port.ts';
import { mergeCopies } from '../../support/merged-copies.ts';
import { mergeInto } from '../../../src/workbook/sharing/merge-into.ts';
import { withChange } from '../../../src/workbook/write/with-change.ts';
import { createMemoryPort } from '../../support/memory-port.ts';
import { bookOf } from '../../taskpane/book-of.ts';
import { rowsOf, smallWorkshop, withRows } from '../../taskpane/small-workshop.ts';

const more = (tables: readonly TableData[], name: string, ...lines: string[]) =>
  withRows(tables, name, (rows) => [...rows, ...rowsOf(lines)]);
const changed = (name: string, id: string, at: number, cell: Cell) =>
  withRows(smallWorkshop, name, (rows) =>
    rows.map((row) => (row[0] === id ? row.with(at, cell) : row)),
  );

describe('mergeInto', () => {
  it('adds what only the other copy has, with every table that it names', () => {
    let other = more(smallWorkshop, 'Materials', 'Gold mica|colourant|g|||20|5|');
    other = more(other, 'Lots', 'L-9|Gold mica|2026-11-02|20|5||');
    other = more(other, 'Colours', 'Sun|Clear base|100|g', 'Sun|Gold mica|0.5|g');
    other = more(other, 'LedgerLines', 'M-9|2026-11-03|wasted|Gold mica|-1|L-9|-0.25|||');
    const plan = mergeInto(smallWorkshop, other);
    expect(plan.added.map(({ kind, ids }) => [kind, ids])).toEqual([
      ['materials', ['Gold mica']],
      ['lots', ['L-9']],
      ['moves', ['M-9']],
      ['colours', ['Sun']],
    ]);
    expect([plan.differences, plan.leftOut, plan.change.updates]).toEqual([[], [], []]);
    const together = withChange(smallWorkshop, plan.change).tables;
    const read = readTablesOf(together);
    expect(read.kind === 'ready' && read.book.colours.get('sun')?.lines).toHaveLength(2);
    expect(mergeInto(together, other).change).toEqual({ appends: [], updates: [] });
  });

  it('shows what differs, keeps one by rule, or the one chosen where that may be', () => {
    const other = changed('Materials', 'Clear base', 6, 8);
    const [found] = mergeInto(smallWorkshop, other).differences;
    expect(found).toMatchObject({ kind: 'materials', id: 'Clear base', differs: ['Pack price'] });
    expect([found?.mayChoose, found?.isOpen]).toEqual([true, true]);
    const prices = (['this copy', 'other copy'] as const).map((side) => {
      const plan = mergeInto(smallWorkshop, other, { [found?.key ?? '']: side });
      expect(plan.differences[0]?.isOpen).toBe(false);
      const table = withChange(smallWorkshop, plan.change).tables.find(
        ({ name }) => name === 'Materials',
      );
      return table?.rows[0]?.[6];
    });
    expect(prices).toEqual([9, 8]);
  });

  it('leaves lines of the ledger to the rule, whatever is chosen', () => {
    const other = changed('LedgerLines', 'M-1', 4, 13);
    const [found] = mergeInto(smallWorkshop, other).differences;
    expect([found?.mayChoose, found?.isOpen]).toEqual([false, false]);
    const opposite = found?.keeps === 'this copy' ? 'other copy' : 'this copy';
    expect(
      mergeInto(smallWorkshop, other, { [found?.key ?? '']: opposite }).differences[0]?.keeps,
    ).toBe(found?.keeps);
  });

  it('brings a delivery back that was undone here and stands in the other copy', () => {
    const names = findTables(smallWorkshop);
    const taken = bookOf(smallWorkshop).lots.filter(({ lot }) => lot === 'L-2');
    const undone = changeForUndoneLots(taken, names);
    if (!undone.ok) throw new Error(undone.failure.sentence);
    const here = withChange(smallWorkshop, undone.value).tables;
    expect(mergeInto(here, smallWorkshop).added).toEqual([{ kind: 'lots', ids: ['L-2'] }]);
    expect(mergeInto(smallWorkshop, here).change).toEqual({ appends: [], updates: [] });
  });

  it("leaves out rows that hold a column of the maker's own and nothing else", () => {
    const shelf = (...ends: Cell[]) =>
      smallWorkshop.map((table) =>
        table.name === 'Lots'
          ? {
              ...table,
              headers: [...table.headers, 'Shelf'],
              rows: [
                ...table.rows.map((row) => [...row, 'low']),
                ...ends.map((end) => [...table.headers.map(() => ''), end]),
              ],
            }
          : table,
      );
    const plan = mergeInto(shelf(), shelf('top'));
    expect([plan.change, plan.differences]).toEqual([{ appends: [], updates: [] }, []]);
  });

  it('says that a recipe which differs is not replaced', () => {
    const plan = mergeInto(smallWorkshop, changed('Colours', 'Pearl', 2, 60));
    expect(plan.change.updates).toEqual([]);
    expect(plan.leftOut).toEqual([
      "The recipe of Pearl differs in the two copies. This workbook keeps its own: change it by hand if the other's is right.",
    ]);
  });

  it('says which columns and tables it has no place for', () => {
    const other = [
      ...more(smallWorkshop, 'LedgerLines', 'M-9|2026-11-03|wasted|Wrapper|-1|L-8|-0.15|||').map(
        (table) =>
          table.name === 'LedgerLines'
            ? {
                ...table,
                headers: [...table.headers, 'Shelf'],
                rows: table.rows.map((row) => [...row, row[0] === 'M-9' ? 'top' : '']),
              }
            : table,
      ),
      { name: 'Fairs', headers: ['Fair', 'Opens'], rows: [['Quay', '2026-12-01']] },
    ];
    expect([...mergeInto(smallWorkshop, other).leftOut].sort()).toEqual([
      'LedgerLines has no column "Shelf" here, so what the other copy has in it is left out.',
      "This workbook has no Fairs table, so the other copy's Fairs are left out.",
    ]);
  });

  it('takes a day as a number and a day as text for the same', () => {
    expect(mergeInto(smallWorkshop, changed('Lots', 'L-1', 2, 46266)).differences).toEqual([]);
  });
});

/** Two copies of one ledger, written in apart: own lines of each, shared lines of which some were changed. */
const line = (entry: string, quantity: number, note: string): Cell[] => [
  entry,
  46000,
  'wasted',
  'Wrapper',
  -quantity,
  'L-8',
  -0.15,
  '',
  '',
  note,
];
const anyLines = fc.uniqueArray(
  fc
    .tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 3 }), fc.constantFrom('', 'a'))
    .map(([id, quantity, note]) => line(`W-${String(id)}`, quantity, note)),
  { maxLength: 9, selector: ([entry]) => entry },
);
const anyMoney = fc.constantFrom('', 8, 9);
const anyCopy = fc
  .tuple(anyLines, anyMoney)
  .map(([lines, price]) =>
    withRows(changed('Materials', 'Clear base', 6, price), 'LedgerLines', () => lines),
  );

/** What a book says, whatever order its rows stand in. */
const meaning = (tables: readonly TableData[]): string =>
  JSON.stringify(mergeCopies(tables, tables).tables);

describe('two copies that went apart', () => {
  it('come to the same whichever takes the other in first, and twice is once', async () => {
    await fc.assert(
      fc.asyncProperty(anyCopy, anyCopy, async (a, b) => {
        const [first, second] = await Promise.all([merged(a, b), merged(b, a)]);
        expect(meaning(first)).toBe(meaning(second));
        expect(meaning(first)).toBe(JSON.stringify(mergeCopies(a, b).tables));
        expect(await merged(first, b)).toEqual(first);
        expect(await merged(first, a)).toEqual(first);
      }),
    );
  });

  it('lose nothing: each line is there, or shown beside the one kept', async () => {
    await fc.assert(
      fc.asyncProperty(anyCopy, anyCopy, async (a, b) => {
        const { differences } = mergeInto(a, b);
        const shown = differences.flatMap(({ mine, theirs }) =>
          [...mine, ...theirs].map((row) => JSON.stringify([...row.values()])),
        );
        const after = (await merged(a, b)).flatMap(({ rows }) =>
          rows.map((row) => JSON.stringify(row)),
        );
        for (const row of [...a, ...b].flatMap(({ rows }) => rows))
          expect([...after, ...shown]).toContain(JSON.stringify(row));
      }),
    );
  });
});

/** The tables of a host once it has written the merge. */
async function merged(a: readonly TableData[], b: readonly TableData[]) {
  const port = createMemoryPort(a);
  const { change } = mergeInto(a, b);
  if (change.appends.length + change.updates.length > 0)
    expect(await port.apply(change)).toEqual({ kind: 'applied' });
  return port.tables;
}
