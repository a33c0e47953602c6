import { cell, headerCells, inputCells, titleCells } from './answer-cells.ts';
import { at, cellsIn, type Formula, named, nextDifferent, pour, sumOf } from './formula.ts';
import { dateOfIso } from './dates.ts';
import { columnOf, listed, moreNote } from './listed.ts';
import { numberBeside, sumWhere, textBeside } from './look-up.ts';
import { blank, choose, flat, pick, value } from './native.ts';
import { bookName } from './names.ts';
import type { StarterCell, StarterSheet } from './sheet.ts';
import { columnCells, wholeColumn } from './table-cells.ts';
import { widths } from './weigh-sheet.ts';

const ASKED = 3;
const GIVEN = 1;
const HEADERS = 9;
const BATCHES = 30;
const reached = { row: HEADERS + 1, lines: BATCHES };
const LINES = HEADERS + BATCHES + 4;
const LINES_ROOM = 120;
const trail = { row: LINES, lines: LINES_ROOM };

/** Every batch that a lot went into, with what was sold and is on hand of its design; or all that went into a batch. */
export function recallSheet(lot: string): StarterSheet {
  const asked = at(ASKED, GIVEN);
  const list = pour('TRACE', asked, named(bookName));
  return {
    name: 'Recall',
    group: 'answers',
    widths: widths([18, 14, 22, 11, 24, 12, 13]),
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
          { header: 'Batch', format: 'text', take: 1 },
          { header: 'Poured', format: 'text', take: 2 },
          { header: 'Design', format: 'text', take: 3 },
          { header: 'Bars', format: 'whole', take: 4 },
          { header: 'Item', format: 'text', take: 5 },
          { header: 'Lot', format: 'text', take: 6 },
          { header: 'Quantity', format: 'grams', take: 7 },
        ],
        unless: { blank: asked, instead: '' },
      }),
      cell(HEADERS - 1, 0, 'Batches reached', 'heading'),
      ...headerCells(HEADERS, 0, [
        ['Batch', 'text'],
        ['Poured', 'date'],
        ['Design', 'text'],
        ['Good bars', 'whole'],
        ['Design sold since', 'whole'],
        ['Design on hand', 'whole'],
        ['Called back', 'whole'],
      ]),
      ...Array.from({ length: BATCHES }, (_, index) => batchRow(index)).flat(),
      cell(ASKED + 3, 0, 'Good bars in them', 'label'),
      cell(ASKED + 3, GIVEN, sumOf(cellsIn(columnOf(reached, 3))), 'answer', 'whole'),
      cell(
        ASKED + 3,
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
        moreNote(batchName(BATCHES), 'More batches than these: the lines below name them all.'),
        'note',
      ),
    ],
    landscape: false,
    prints: { startRow: 0, startColumn: 0, endRow: HEADERS + BATCHES, endColumn: 6 },
  };
}

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

/** The batches on the trail, each once; the first has the index 0. */
function batchName(index: number): Formula {
  const names = cellsIn(columnOf(trail, 0), '$');
  const source = {
    text: names.text,
    work: (from: Parameters<Formula['work']>[0]) => flat(names.work(from)),
  };
  return nextDifferent(source, { row: HEADERS, column: 0 }, HEADERS + 1 + index);
}

function batchRow(index: number): StarterCell[] {
  const row = HEADERS + 1 + index;
  const batch = at(row, 0);
  const [poured, design] = [at(row, 1), at(row, 2)];
  const names = cellsIn(columnOf(trail, 0), '$');
  const iso = textBeside(batch, names, cellsIn(columnOf(trail, 1), '$'));
  const batches = columnCells('batches', 'batch');
  const sold = sumWhere(
    wholeColumn('sales', 'bars'),
    [wholeColumn('sales', 'design'), '', design],
    [wholeColumn('sales', 'soldOn'), '>=', poured],
  );
  const there = (then: Formula): Formula => choose([design, '=', blank], blank, then);
  return [
    cell(row, 0, batchName(index), 'plain', 'text'),
    cell(row, 1, dateOfIso(iso), 'plain', 'date'),
    cell(row, 2, textBeside(batch, names, cellsIn(columnOf(trail, 2), '$')), 'plain', 'text'),
    cell(row, 3, numberBeside(batch, batches, columnCells('batches', 'good')), 'strong', 'whole'),
    cell(row, 4, there(sold), 'plain', 'whole'),
    cell(row, 5, there(pour('ONHAND', design, named(bookName))), 'plain', 'whole'),
    cell(row, 6, '', 'input', 'whole'),
  ];
}
