import fc from 'fast-check';
import { expect, it } from 'vitest';
import { nameKey } from '../../../../src/domain/kernel/names.ts';
import { Findings } from '../../../../src/workbook/read/findings.ts';
import { printOf } from '../../../../src/workbook/read/handle.ts';
import { readMoveCells } from '../../../../src/workbook/read/moves/move-cells.ts';
import { recogniseTable, type RecognisedTable } from '../../../../src/workbook/read/recognise.ts';
import { readRows } from '../../../../src/workbook/read/rows.ts';
import { hashOfName, hasRepeats } from '../../../../src/workbook/read/unique.ts';

const HEADERS = 'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note';

/** Cells that are right in some column, and a few that are right in none. */
const cell = fc.constantFrom<unknown>(
  '',
  ' ',
  'E1',
  'e1 ',
  'E2',
  'É3',
  45_000,
  45_000.5,
  '2024-05-01',
  'used',
  'Used',
  'counted',
  'Teal',
  -1,
  -0,
  0,
  2.5,
  '2.5',
  true,
  null,
  undefined,
  { error: '#REF!' },
  // At and beyond the limits of what is taken as it stands.
  60.5,
  61,
  2_958_465,
  2_958_465.5,
  2_958_466,
  1e12,
  -1e12 - 1,
  Infinity,
  NaN,
  'x'.repeat(300),
  'x'.repeat(301),
  'Teal\u00a0',
  'Teal ',
);
const goodRow = fc
  .tuple(fc.nat(40), fc.constantFrom(45_000, '2024-05-01'), fc.constantFrom('used', ' USED'), cell)
  .map(([entry, day, reason, note]) => [
    `E${entry}`,
    day,
    reason,
    'Teal',
    -1,
    '',
    '',
    'B',
    '',
    note,
  ]);
const rows = fc.array(fc.oneof(goodRow, goodRow, fc.array(cell, { maxLength: 10 })), {
  maxLength: 12,
});

const tableOf = (cells: readonly (readonly unknown[])[]): RecognisedTable => {
  const table = recogniseTable([HEADERS.split(' | '), ...cells], 1, new Findings());
  if (table === undefined) throw new Error('not recognised');
  return table;
};

it('gives Moves the fingerprint that every table gets', () => {
  fc.assert(
    fc.property(rows, (cells) => {
      const table = tableOf(cells);
      const moves = readMoveCells(table);
      if (moves.sound) expect(moves.print).toEqual(printOf(table));
    }),
    { numRuns: 2000 },
  );
});

it('reads a column at a time what is read row by row, and is sound just where no row is refused', () => {
  let sound = 0;
  fc.assert(
    fc.property(rows, (cells) => {
      const findings = new Findings();
      const plain = readRows('moves', tableOf(cells), findings, [], () => undefined);
      const moves = readMoveCells(tableOf(cells));
      const takesSign = plain.every(
        ({ reason, quantity }) => reason === 'counted' || quantity <= 0,
      );
      expect(moves.sound).toBe(findings.none && takesSign);
      if (!moves.sound) return;
      sound += 1;
      expect([...moves.quantities]).toEqual(plain.map(({ quantity }) => quantity));
      expect([...moves.whens]).toEqual(plain.map(({ when }) => when));
      expect(moves.entries).toEqual(plain.map(({ entry }) => entry));
      const notes = Array.from(moves.notes.places, (place) => moves.notes.values[place]);
      expect(notes).toEqual(plain.map(({ note }) => note ?? ''));
    }),
    { numRuns: 2000 },
  );
  expect(sound).toBeGreaterThan(100);
});

it('reads a long table with blank rows in it as it reads a short one', () => {
  const blank = ['', ' ', undefined, null];
  const long = Array.from({ length: 2100 }, (_, at) =>
    at % 7 === 3 || (at > 900 && at < 1500)
      ? blank
      : [
          `E${at}`,
          45_000 + at / 10,
          'counted',
          `Teal ${at % 3}`,
          at,
          '',
          '',
          `B${at % 40}`,
          '',
          '',
        ],
  );
  const findings = new Findings();
  const plain = readRows('moves', tableOf(long), findings, [], () => undefined);
  const moves = readMoveCells(tableOf(long));
  expect(findings.none && moves.sound).toBe(true);
  expect(moves.print).toEqual(printOf(tableOf(long)));
  expect(moves.entries).toEqual(plain.map(({ entry }) => entry));
  expect([...moves.quantities]).toEqual(plain.map(({ quantity }) => quantity));
  for (const [name, key] of [
    ['materials', 'material'],
    ['batches', 'batch'],
    ['lots', 'lot'],
  ] as const)
    expect(Array.from(moves[name].places, (place) => moves[name].values[place])).toEqual(
      plain.map((row) => row[key] ?? ''),
    );
});

it('finds a name that stands twice in any spelling', () => {
  const name = fc.oneof(
    fc.constantFrom(
      'a',
      'A',
      ' a',
      'B-1',
      'b-1',
      'B 1',
      'b  1',
      'É',
      'é',
      'e\u0301',
      'İ',
      'ß',
      'SS',
    ),
    fc.string({ maxLength: 3 }),
  );
  fc.assert(
    fc.property(fc.array(name, { maxLength: 12 }), (names) => {
      expect(
        hasRepeats(
          names,
          Int32Array.from(names, (text) => hashOfName(text)),
        ),
      ).toBe(new Set(names.map(nameKey)).size < names.length);
    }),
    { numRuns: 5000 },
  );
});
