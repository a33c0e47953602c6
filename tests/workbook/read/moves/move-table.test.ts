import fc from 'fast-check';
import { expect, it } from 'vitest';
import { Findings } from '../../../../src/workbook/read/findings.ts';
import { readMoveCells } from '../../../../src/workbook/read/moves/move-cells.ts';
import { readAfresh, readAgain } from '../../../../src/workbook/read/moves/move-table.ts';
import { recogniseTable, type RecognisedTable } from '../../../../src/workbook/read/recognise.ts';

const HEADERS = 'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note';

const BLANK: readonly unknown[] = ['', ' ', ...Array<unknown>(8).fill('')];

type Rows = readonly (readonly unknown[])[];

const line = fc
  .tuple(
    fc.nat(2000),
    fc.integer({ min: 45_000, max: 45_003 }),
    fc.constantFrom('counted', 'used'),
    fc.constantFrom('Teal', 'Fog', 'teal'),
    fc.constantFrom(-1, -0.5, 0),
    fc.constantFrom('', 'L1', 'L2'),
    fc.constantFrom<unknown>('', ' ', 2.5, undefined),
    fc.constantFrom('B1', 'B2'),
    fc.constant(''),
    fc.constantFrom<unknown>('', 'seen', 'seen ', null, 7),
  )
  .map(([entry, ...cells]): unknown[] => [`E${entry}`, ...cells]);

/** A cell put into a row, a row added or taken out, a blank one, or two rows changing places. */
const edit = fc.record({
  kind: fc.constantFrom('cell', 'cell', 'added', 'taken out', 'blank', 'turned'),
  at: fc.nat(1000),
  column: fc.nat(9),
  cell: fc.constantFrom<unknown>('', 'E1', 'new', 'USED', 'used', -3, 45_001, '2024-05-01', 'Fog '),
  row: line,
});

function edited(
  rows: Rows,
  { kind, at, column, cell, row }: typeof edit extends fc.Arbitrary<infer T> ? T : never,
): Rows {
  const place = rows.length === 0 ? 0 : at % rows.length;
  if (kind === 'cell')
    return rows.map((cells, y) => (y === place ? cells.with(column, cell) : cells));
  if (kind === 'added') return [...rows, row];
  if (kind === 'taken out') return rows.filter((_, y) => y !== place);
  if (kind === 'blank') return [...rows.slice(0, place), BLANK, ...rows.slice(place)];
  return [...rows.slice(place), ...rows.slice(0, place)];
}

/** The table with its columns turned round where asked, as a maker may move them. */
function tableOf(rows: Rows, isTurned: boolean): RecognisedTable {
  const turn = (cells: readonly unknown[]): unknown[] =>
    isTurned ? [...cells].reverse() : [...cells];
  const table = recogniseTable([HEADERS.split(' | '), ...rows].map(turn), 1, new Findings());
  if (table === undefined) throw new Error('not recognised');
  return table;
}

const columns = ['reasons', 'materials', 'lots', 'batches', 'bys', 'notes'] as const;

it('reads after another table what it reads by itself', () => {
  let again = 0;
  fc.assert(
    fc.property(
      fc.uniqueArray(line, { selector: ([entry]) => entry, maxLength: 30 }),
      fc.array(fc.array(edit, { maxLength: 3 }), { maxLength: 4 }),
      fc.boolean(),
      (start, steps, isTurned) => {
        let rows: Rows = start;
        let warm = readMoveCells(tableOf(rows, false));
        for (const step of steps) {
          if (!warm.sound) return;
          rows = step.reduce(edited, rows);
          const table = tableOf(rows, isTurned);
          warm = readMoveCells(table, warm.prints);
          const cold = readMoveCells(table);
          expect(warm.sound).toBe(cold.sound);
          if (!cold.sound) return;
          again += 1;
          expect(warm.print).toEqual(cold.print);
          const printed = cold.prints.high.subarray(0, cold.entries.length);
          expect([...warm.prints.high.subarray(0, cold.entries.length)]).toEqual([...printed]);
          for (const name of ['entries', 'whens', 'quantities', 'values'] as const)
            expect([...warm[name]], name).toEqual([...cold[name]]);
          for (const name of columns) {
            const shown = [warm, cold].map(({ [name]: { values, places } }) =>
              Array.from(places, (place) => values[place]),
            );
            expect(shown[0], name).toEqual(shown[1]);
          }
        }
      },
    ),
    { numRuns: 1000 },
  );
  expect(again).toBeGreaterThan(300);
});

const lines = Array.from({ length: 1300 }, (_, at): unknown[] => [
  ...[`E${at}`, 45_000, 'used', 'Teal', -1, 'L1', '', 'B1', '', ''],
]);

it.each<[string, (rows: unknown[][]) => Rows, boolean]>([
  ['nothing else', (rows) => rows, true],
  ['another quantity', (rows) => rows.with(700, (rows[700] ?? []).with(4, -2)), true],
  [
    'lines added',
    (rows) => [...rows, ['X1', 45_000, 'used', 'Fog', -1, '', '', 'B2', '', '']],
    true,
  ],
  ['a line taken out', (rows) => rows.slice(1), false],
  ['a quantity in each line', (rows) => rows.map((cells) => cells.with(4, -2)), false],
])('takes over what stands as it did: %s', (_, change, isTakenOver) => {
  const before = readAfresh(tableOf(lines, false));
  expect(readAgain(tableOf(change(lines), true), before) !== undefined).toBe(isTakenOver);
});
