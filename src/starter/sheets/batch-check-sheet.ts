import { cell, inputCells, titleCells } from '../cells/answer-cells.ts';
import { answered, type AnsweredList } from '../blocks/answered.ts';
import {
  at,
  cellOn,
  type Formula,
  named,
  pour,
  sumOf,
  unlessBlank,
  unlessFailed,
} from '../cells/formula.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import { numberBeside, textBeside } from '../cells/look-up.ts';
import { blank, choose, given, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import type { CellFormat, StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { batchNames } from '../blocks/table-choices.ts';
import { oneCell, widths } from './weigh-sheet.ts';

const NAME = 'Batch check';
const BATCH = 3;
const GIVEN = 1;
const LIST = 14;
const LIST_ROWS = 40;
const columns = [
  { header: 'Item', format: 'text', take: 1 },
  { header: 'Unit', format: 'text', take: 2 },
  { header: 'Planned', format: 'grams', take: 3 },
  { header: 'Used', format: 'grams', take: 4 },
  { header: 'Planned cost', format: 'money', take: 5 },
  { header: 'Used cost', format: 'money', take: 6 },
  { header: 'By quantity', format: 'money', take: 7 },
  { header: 'By price', format: 'money', take: 8 },
] as const;

/** What one batch should have used beside what it used, and why the cost differs. */
export function batchCheckSheet(batch: string): StarterSheet {
  const asked = at(BATCH, GIVEN);
  const list = answered('batchCost');
  const there = cellOn(NAME, BATCH, GIVEN);
  return {
    name: NAME,
    group: 'answers',
    widths: widths([28, 18, 11, 11, 16, 13, 15, 13]),
    cells: [
      ...titleCells(
        NAME,
        'Planned is what the recipe takes at list prices; used is what the ledger says. A plus costs more than planned.',
      ),
      ...inputCells(BATCH, GIVEN, 'Batch', batch, 'text'),
      ...facts(asked),
      cell(LIST - 1, 0, 'Planned and used', 'heading'),
      cell(
        LIST - 1,
        2,
        moreNote(list.beyond(LIST_ROWS), 'put POUR.BATCHCOST on a sheet of its own.'),
        'note',
      ),
      ...listed({
        row: LIST + 1,
        column: 0,
        lines: LIST_ROWS,
        of: list,
        columns,
        instead: 'Pick a batch above.',
      }),
      ...sums(list),
    ],
    asks: [{ list, of: unlessBlank(there, '', pour('BATCHCOST', there, named(bookName))) }],
    dropDowns: [{ range: oneCell(BATCH, GIVEN), choices: { source: batchNames }, strict: false }],
    landscape: false,
  };
}

function facts(asked: Formula): StarterCell[] {
  const names = columnCells('batches', 'batch');
  const number = (
    key: 'poured' | 'bars' | 'good' | 'seconds' | 'lost' | 'minutes' | 'costPerBar',
  ) => numberBeside(asked, names, columnCells('batches', key));
  const lines: readonly (readonly [string, Formula, CellFormat])[] = [
    ['Design', textBeside(asked, names, columnCells('batches', 'design')), 'text'],
    ['Poured', number('poured'), 'date'],
    ['Bars started', number('bars'), 'whole'],
    ['Good bars', number('good'), 'whole'],
    ['Seconds', number('seconds'), 'whole'],
    ['Lost', number('lost'), 'whole'],
    ['Minutes', number('minutes'), 'whole'],
  ];
  const [design, poured, good] = [at(BATCH + 1, GIVEN), at(BATCH + 2, GIVEN), at(BATCH + 4, GIVEN)];
  // A batch that came to nothing has no good bar to ask for.
  const planned = pour('COSTPERBAR', design, named(bookName), good, poured);
  return [
    ...lines.flatMap(([name, holds, format], index) => [
      cell(BATCH + 1 + index, 0, name, 'label'),
      cell(BATCH + 1 + index, GIVEN, holds, 'answer', format),
    ]),
    cell(BATCH + 1, 3, 'Cost per bar, as recorded', 'label'),
    cell(BATCH + 1, 6, number('costPerBar'), 'answer', 'money'),
    cell(BATCH + 2, 3, 'Cost per bar that day by the recipe', 'label'),
    cell(
      BATCH + 2,
      6,
      given([good], choose([good, '>', value(0)], planned, blank)),
      'answer',
      'money',
    ),
  ];
}

/** What the list comes to. */
function sums(list: AnsweredList): StarterCell[] {
  const all = (take: number) => unlessFailed(list.head, sumOf(list.column(take)));
  const lines: readonly (readonly [string, Formula])[] = [
    ['Material planned', all(5)],
    ['Material used', all(6)],
    ['Used − planned, by quantity', all(7)],
    ['Used − planned, by price', all(8)],
  ];
  return lines.flatMap(([name, holds], index) => [
    cell(BATCH + 3 + index, 3, name, 'label'),
    cell(BATCH + 3 + index, 6, holds, 'answer', 'money'),
  ]);
}
