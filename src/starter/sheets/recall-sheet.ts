import { cell, headerCells, inputCells, titleCells } from '../cells/answer-cells.ts';
import { answered } from '../blocks/answered.ts';
import {
  at,
  cellOn,
  type Formula,
  named,
  pour,
  unlessBlank,
  unlessFailed,
} from '../cells/formula.ts';
import { dateOfIso } from '../cells/dates.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import { numberBeside, sumSaying, textBeside } from '../cells/look-up.ts';
import { blank, choose, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { widths } from './weigh-sheet.ts';

const NAME = 'Recall';
const ASKED = 3;
const GIVEN = 1;
const HEADERS = 9;
const BATCHES = 30;
const reached = { row: HEADERS + 1, lines: BATCHES };
const LINES = HEADERS + BATCHES + 4;
const LINES_ROOM = 120;
const trailList = answered('trail');
const recall = answered('recall');
/** What POUR.RECALL lists, its columns from 1. */
const from = { poured: 3, made: 5, onHand: 6 };
const CALLED_BACK = 8;

/** Every batch that a lot or a batch went into, with its own bars sold and on hand; or all that went into a batch. */
export function recallSheet(lot: string): StarterSheet {
  const asked = at(ASKED, GIVEN);
  const there = cellOn(NAME, ASKED, GIVEN);
  const asking = (id: string) => unlessBlank(there, '', pour(id, there, named(bookName)));
  return {
    name: NAME,
    group: 'answers',
    widths: widths([24, 18, 14, 18, 22, 14, 12, 12, 13]),
    cells: [
      ...titleCells(
        NAME,
        'Type a lot from Purchases or a batch from Pours. Leftovers and spare tiles are followed too.',
      ),
      ...inputCells(ASKED, GIVEN, 'Lot or batch', lot, 'text'),
      ...lotFacts(asked),
      cell(LINES - 2, 0, 'What carried it, line by line', 'heading'),
      ...listed({
        row: LINES,
        lines: LINES_ROOM,
        column: 0,
        of: trailList,
        columns: [
          { header: 'Item', format: 'text', take: 5 },
          { header: 'Batch', format: 'text', take: 1 },
          { header: 'Poured', format: 'text', take: 2 },
          { header: 'Lot', format: 'text', take: 6 },
          { header: 'Design', format: 'text', take: 3 },
          { header: 'Quantity', format: 'grams', take: 7 },
          { header: 'Bars', format: 'whole', take: 4 },
        ],
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
      }),
      ...headerCells(HEADERS, CALLED_BACK, [['Called back', 'whole']]),
      ...Array.from({ length: BATCHES }, (_, index) =>
        cell(reached.row + index, CALLED_BACK, '', 'input', 'whole'),
      ),
      cell(ASKED + 3, 0, 'Good bars in them', 'label'),
      cell(ASKED + 3, GIVEN, ofBatches(from.made), 'answer', 'whole'),
      cell(ASKED + 3, 3, 'Of them on hand', 'label'),
      cell(ASKED + 3, 4, ofBatches(from.onHand), 'answer', 'whole'),
      cell(
        LINES - 2,
        2,
        moreNote(trailList.beyond(LINES_ROOM, 5), 'put POUR.TRACE on a sheet of its own.'),
        'note',
      ),
      cell(
        HEADERS - 1,
        2,
        moreNote(recall.beyond(BATCHES), 'put POUR.RECALL on a sheet of its own.'),
        'note',
      ),
    ],
    asks: [
      { list: trailList, of: asking('TRACE') },
      { list: recall, of: asking('RECALL') },
    ],
    landscape: true,
    prints: { startRow: 0, startColumn: 0, endRow: HEADERS + BATCHES, endColumn: CALLED_BACK },
  };
}

/** Only the lines of batches have a day on which they were poured, and bars made; all of them, shown or not. */
const ofBatches = (column: number): Formula =>
  unlessFailed(recall.head, sumSaying(recall.column(from.poured), '-', recall.column(column)));

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
