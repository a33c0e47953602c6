import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import { answered } from '../blocks/answered.ts';
import {
  cellOn,
  fixedAt,
  type Formula,
  named,
  pour,
  saysYes,
  unlessBlank,
} from '../cells/formula.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import { bookName } from '../cells/names.ts';
import type { StarterSheet } from '../cells/sheet.ts';
import { designNames } from '../blocks/table-choices.ts';

const NAME = 'What to weigh';
const DESIGN = 3;
const BARS = 4;
const LEFTOVERS = 5;
const ASKED = 1;
const LIST_ROW = 9;
const NEEDS = 12;
const LIST_ROWS = 60;

const meltColumns = [
  { header: 'Step', format: 'general', take: 1 },
  { header: 'Colour', format: 'text', take: 2 },
  { header: 'Fills', format: 'whole', take: 3 },
  { header: 'Needed g', format: 'grams', take: 4 },
  { header: 'Melt g', format: 'grams', take: 5 },
  { header: 'Ingredient', format: 'text', take: 6 },
  { header: 'Amount', format: 'fine', take: 7 },
  { header: 'Unit', format: 'text', take: 8 },
  { header: 'Spare tiles', format: 'whole', take: 9 },
  { header: 'Leftover g', format: 'grams', take: 10 },
  { header: 'Mind', format: 'text', take: 11 },
] as const;
const needColumns = [
  { header: 'Material', format: 'text', take: 1 },
  { header: 'Amount', format: 'fine', take: 2 },
  { header: 'Unit', format: 'text', take: 3 },
  { header: 'On hand', format: 'fine', take: 4 },
  { header: 'Short', format: 'fine', take: 5 },
] as const;

/** Pick a design and a number of bars; read off what to weigh, in pouring order, and what is short. */
export function weighSheet(design: string, bars: number): StarterSheet {
  const [book, asked, count] = [named(bookName), fixedAt(DESIGN, ASKED), fixedAt(BARS, ASKED)];
  const [melts, needs] = [answered('melts'), answered('needs')];
  return {
    name: NAME,
    group: 'answers',
    widths: widths([14, 20, 7, 10, 9, 22, 10, 8, 12, 12, 24, 3, 22, 10, 7, 11, 10]),
    frozenRows: LIST_ROW,
    cells: [
      ...titleCells(NAME, 'Fill in the three sand-coloured cells, then weigh from top to bottom.'),
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
      ...listed({
        row: LIST_ROW,
        column: 0,
        lines: LIST_ROWS,
        of: melts,
        columns: meltColumns,
        instead: 'Pick a design above.',
      }),
      ...listed({
        row: LIST_ROW,
        column: NEEDS,
        lines: LIST_ROWS,
        of: needs,
        columns: needColumns,
      }),
      cell(
        LIST_ROW - 2,
        4,
        moreNote(melts.beyond(LIST_ROWS, 6), 'put POUR.WEIGHOUT on a sheet of its own.'),
        'note',
      ),
      cell(
        LIST_ROW - 2,
        NEEDS + 2,
        moreNote(needs.beyond(LIST_ROWS), 'put POUR.TAKEOUT on a sheet of its own.'),
        'note',
      ),
    ],
    asks: [
      { list: melts, of: ofBatch('WEIGHOUT') },
      { list: needs, of: ofBatch('TAKEOUT') },
    ],
    dropDowns: [
      { range: oneCell(DESIGN, ASKED), choices: { source: designNames }, strict: false },
      { range: oneCell(LEFTOVERS, ASKED), choices: ['yes', 'no'], strict: true },
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

function ofBatch(id: string): Formula {
  const asked = cellOn(NAME, DESIGN, ASKED);
  const reuse = cellOn(NAME, LEFTOVERS, ASKED + 1);
  return unlessBlank(asked, '', pour(id, asked, cellOn(NAME, BARS, ASKED), named(bookName), reuse));
}

export const oneCell = (row: number, column: number) => ({
  startRow: row,
  startColumn: column,
  endRow: row,
  endColumn: column,
});

export const widths = (characters: readonly number[]): Readonly<Record<number, number>> => ({
  ...characters,
});
