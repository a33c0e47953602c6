import { cell, headerCells, inputCells, titleCells } from './answer-cells.ts';
import { at, cellsIn, type Formula, named, pour } from './formula.ts';
import { dateOfIso } from './dates.ts';
import { columnOf, listed, moreNote } from './listed.ts';
import { numberBeside, sumWhere, textBeside } from './look-up.ts';
import { blank, choose, pick, value } from './native.ts';
import { bookName } from './names.ts';
import type { StarterCell, StarterSheet } from './sheet.ts';
import { columnCells } from './table-cells.ts';
import { widths } from './weigh-sheet.ts';

const ASKED = 3;
const GIVEN = 1;
const HEADERS = 9;
const BATCHES = 30;
const reached = { row: HEADERS + 1, lines: BATCHES };
const LINES = HEADERS + BATCHES + 4;
const LINES_ROOM = 120;
const trail = { row: LINES, lines: LINES_ROOM };
const DATES = 2;
const MADE = 4;
const ON_HAND = 5;
const CALLED_BACK = 8;

/** Every batch that a lot or a batch went into, with its own bars sold and on hand; or all that went into a batch. */
export function recallSheet(lot: string): StarterSheet {
  const asked = at(ASKED, GIVEN);
  const recall = pour('RECALL', asked, named(bookName));
  const list = pour('TRACE', asked, named(bookName));
  return {
    name: 'Recall',
    group: 'answers',
    widths: widths([24, 18, 14, 18, 22, 14, 12, 12, 13]),
    cells: [
      ...titleCells(
        'Recall',
        'Type a lot from Purchases or a batch from Pours. Leftovers and spare tiles are followed too.',
      ),
      ...inputCells(ASKED, GIVEN, 'Lot or batch', lot, 'text'),
      ...lotFacts(asked),
      cell(LINES - 2, 0, 'What carried it, line by line', 'heading'),
      ...listed({
        ...trail,
        column: 0,
        of: list,
        columns: [
          { header: 'Item', format: 'text', take: 5 },
          { header: 'Batch', format: 'text', take: 1 },
          { header: 'Poured', format: 'text', take: 2 },
          { header: 'Lot', format: 'text', take: 6 },
          { header: 'Design', format: 'text', take: 3 },
          { header: 'Quantity', format: 'grams', take: 7 },
          { header: 'Bars', format: 'whole', take: 4 },
        ],
        unless: { blank: asked, instead: '' },
      }),
      cell(HEADERS - 1, 0, 'Where it is', 'heading'),
      ...listed({
        ...reached,
        column: 0,
        of: recall,
        columns: [
          { header: 'Item', format: 'text', take: 1 },
          { header: 'Batch', format: 'text', take: 2 },
          { header: 'Poured', format: 'date', take: 3, as: dateOfIso },
          { header: 'How sure', format: 'text', take: 4 },
          { header: 'Made', format: 'grams', take: 5 },
          { header: 'On hand', format: 'grams', take: 6 },
          { header: 'Sold', format: 'whole', take: 7 },
          { header: 'Gone', format: 'grams', take: 8 },
        ],
        unless: { blank: asked, instead: '' },
      }),
      ...headerCells(HEADERS, CALLED_BACK, [['Called back', 'whole']]),
      ...Array.from({ length: BATCHES }, (_, index) =>
        cell(reached.row + index, CALLED_BACK, '', 'input', 'whole'),
      ),
      cell(ASKED + 3, 0, 'Good bars in them', 'label'),
      cell(ASKED + 3, GIVEN, ofBatches(MADE), 'answer', 'whole'),
      cell(ASKED + 3, 3, 'Of them on hand', 'label'),
      cell(ASKED + 3, 4, ofBatches(ON_HAND), 'answer', 'whole'),
      cell(
        LINES - 2,
        2,
        moreNote(
          pick(list, LINES_ROOM + 2, 1),
          'More lines than this sheet shows: put POUR.TRACE on a sheet of its own.',
        ),
        'note',
      ),
      cell(
        HEADERS - 1,
        2,
        moreNote(
          pick(recall, BATCHES + 2, 1),
          'More than this sheet shows: put POUR.RECALL on a sheet of its own.',
        ),
        'note',
      ),
    ],
    landscape: true,
    prints: { startRow: 0, startColumn: 0, endRow: HEADERS + BATCHES, endColumn: CALLED_BACK },
  };
}

/** Only the lines of batches have a day on which they were poured, and bars made. */
const ofBatches = (column: number): Formula =>
  sumWhere(cellsIn(columnOf(reached, column), '$'), [
    cellsIn(columnOf(reached, DATES), '$'),
    '>=',
    value(1),
  ]);

/** What is known of the lot itself. */
function lotFacts(asked: Formula): StarterCell[] {
  const lots = columnCells('lots', 'lot');
  const beside = (key: 'material' | 'supplier') =>
    textBeside(asked, lots, columnCells('lots', key));
  // Packaging has none, and a cell that is empty would be shown as a day in 1900.
  const bestBefore = numberBeside(asked, lots, columnCells('lots', 'bestBefore'));
  return [
    cell(ASKED + 1, 0, 'Material of the lot', 'label'),
    cell(ASKED + 1, GIVEN, beside('material'), 'answer', 'text'),
    cell(ASKED + 1, 3, 'Supplier', 'label'),
    cell(ASKED + 1, 4, beside('supplier'), 'answer', 'text'),
    cell(ASKED + 2, 0, 'Received', 'label'),
    cell(
      ASKED + 2,
      GIVEN,
      numberBeside(asked, lots, columnCells('lots', 'received')),
      'answer',
      'date',
    ),
    cell(ASKED + 2, 3, 'Best before', 'label'),
    cell(ASKED + 2, 4, choose([bestBefore, '=', value(0)], blank, bestBefore), 'answer', 'date'),
  ];
}
