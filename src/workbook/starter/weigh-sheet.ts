import { cell, inputCells, titleCells } from './answer-cells.ts';
import { fixedAt, named, pour, saysYes, unlessBlank } from './formula.ts';
import { bookName } from './names.ts';
import type { CellFormat, StarterSheet } from './sheet.ts';
import { designNames } from './table-choices.ts';

const DESIGN = 3;
const BARS = 4;
const LEFTOVERS = 5;
const ASKED = 1;
const LIST_ROW = 9;
const NEEDS = 12;
const LIST_ROWS = 60;

const meltFormats: readonly CellFormat[] = [
  'general',
  'text',
  'whole',
  'grams',
  'grams',
  'text',
  'fine',
  'text',
  'whole',
  'grams',
  'text',
];
const needFormats: readonly CellFormat[] = ['text', 'fine', 'text', 'fine', 'fine'];

/** Pick a design and a number of bars; read off what to weigh, in pouring order, and what is short. */
export function weighSheet(design: string, bars: number): StarterSheet {
  const [book, asked, count] = [named(bookName), fixedAt(DESIGN, ASKED), fixedAt(BARS, ASKED)];
  const answers = (id: string) => pour(id, asked, count, book, fixedAt(LEFTOVERS, ASKED + 1));
  return {
    name: 'What to weigh',
    group: 'answers',
    widths: widths([14, 20, 7, 10, 9, 22, 10, 8, 12, 12, 24, 3, 22, 10, 7, 11, 10]),
    frozenRows: LIST_ROW,
    cells: [
      ...titleCells(
        'What to weigh',
        'Fill in the three sand-coloured cells, then weigh from top to bottom.',
      ),
      ...inputCells(DESIGN, ASKED, 'Design', design, 'text'),
      ...inputCells(BARS, ASKED, 'Good bars', bars, 'whole'),
      ...inputCells(LEFTOVERS, ASKED, 'Use leftovers', 'no', 'text'),
      // In a cell of its own: the workbench's grid hands a comparison over only once.
      cell(LEFTOVERS, ASKED + 1, saysYes(fixedAt(LEFTOVERS, ASKED)), 'plain', 'unseen'),
      cell(DESIGN, 3, 'Bars that stock allows now', 'label'),
      cell(DESIGN, 6, unlessBlank(asked, '', pour('CANMAKE', asked, book)), 'answer', 'whole'),
      cell(BARS, 3, 'Cost of one bar in this batch', 'label'),
      cell(
        BARS,
        6,
        unlessBlank(asked, '', pour('COSTPERBAR', asked, book, count)),
        'answer',
        'money',
      ),
      cell(
        LEFTOVERS,
        3,
        'Melted base burns: short bursts, stir between them, never leave it.',
        'note',
      ),
      cell(LIST_ROW - 2, 0, 'Weigh out, in pouring order', 'heading'),
      cell(LIST_ROW - 2, NEEDS, 'Taken from the shelf', 'heading'),
      cell(
        LIST_ROW - 1,
        0,
        unlessBlank(asked, 'Pick a design above.', answers('WEIGHOUT')),
        'header',
      ),
      cell(LIST_ROW - 1, NEEDS, unlessBlank(asked, '', answers('TAKEOUT')), 'header'),
    ],
    spillLooks: [
      { row: LIST_ROW - 1, column: 0, rows: LIST_ROWS, formats: meltFormats },
      { row: LIST_ROW - 1, column: NEEDS, rows: LIST_ROWS, formats: needFormats },
    ],
    dropDowns: [
      { range: one(DESIGN, ASKED), choices: { source: designNames }, strict: false },
      { range: one(LEFTOVERS, ASKED), choices: ['yes', 'no'], strict: true },
    ],
    marks: [
      // A colour with several ingredients says its own figures once; the rest is the same again.
      ...[
        { startColumn: 0, endColumn: 4 },
        { startColumn: 8, endColumn: 9 },
      ].map((columns) => ({
        range: { startRow: LIST_ROW, endRow: LIST_ROW + LIST_ROWS, ...columns },
        formula: `AND($A${String(LIST_ROW + 1)}<>"",$A${String(LIST_ROW + 1)}=$A${String(LIST_ROW)})`,
        shows: 'repeated' as const,
      })),
      {
        range: {
          startRow: LIST_ROW,
          endRow: LIST_ROW + LIST_ROWS,
          startColumn: NEEDS,
          endColumn: NEEDS + 4,
        },
        formula: `N($Q${String(LIST_ROW + 1)})>0`,
        shows: 'short',
      },
    ],
    landscape: true,
  };
}

export const one = (row: number, column: number) => ({
  startRow: row,
  startColumn: column,
  endRow: row,
  endColumn: column,
});

export const widths = (characters: readonly number[]): Readonly<Record<number, number>> => ({
  ...characters,
});
