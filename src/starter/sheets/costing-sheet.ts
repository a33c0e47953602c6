import { cell, headerCells, inputCells, titleCells } from '../cells/answer-cells.ts';
import { costByKind, kindChart, LINES_ROOM } from '../blocks/cost-kinds.ts';
import { answered } from '../blocks/answered.ts';
import {
  at,
  cellOn,
  fixedAt,
  type Formula,
  less,
  named,
  pour,
  rowOf,
  shareLeft,
  unlessBlank,
} from '../cells/formula.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import { bookName } from '../cells/names.ts';
import { textsIn } from '../cells/native.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { designNames } from '../blocks/table-choices.ts';
import { oneCell, widths } from './weigh-sheet.ts';

const NAME = 'Costing';
const AS_OF = 3;
const BARS = 4;
const GIVEN = 1;
const HEADERS = 7;
const DESIGNS_SHOWN = 15;
/** Where the cost of one chosen design goes. */
const LINES = 6;
const CHOSEN = BARS;
/** The same design in batches of 1 to 36 bars. */
const CURVE = 10;
const LARGEST_BATCH = 36;

/** What each design costs, where the money of one goes, and how its cost falls with the batch. */
export function costingSheet(design: string): StarterSheet {
  const costLines = answered('costLines');
  const lastCurveRow = HEADERS + LARGEST_BATCH;
  const curveColumn = (column: number) => ({
    startRow: HEADERS + 1,
    endRow: lastCurveRow,
    startColumn: column,
    endColumn: column,
  });
  return {
    name: NAME,
    group: 'answers',
    widths: widths([20, 12, 13, 13, 13, 3, 24, 10, 10, 3, 14, 13, 3]),
    frozenRows: HEADERS + 1,
    cells: [
      ...titleCells(
        NAME,
        'Full cost of one good bar: material, labour, setup, mold wear, overhead, lost bars.',
      ),
      ...asOfCells(AS_OF),
      ...inputCells(BARS, GIVEN, 'Good bars', 12, 'whole'),
      cell(BARS, 2, 'in one batch', 'aside'),
      cell(HEADERS - 1, 0, 'Every design', 'heading'),
      cell(
        HEADERS - 2,
        0,
        moreNote(
          textsIn(columnCells('designs', 'design', DESIGNS_SHOWN + 1)),
          'look into them on the right.',
        ),
        'note',
      ),
      ...headerCells(HEADERS, 0, [
        ['Design', 'text'],
        ['Price', 'money'],
        ['Cost per bar', 'money'],
        ['Price − cost', 'money'],
        ['Of price', 'share'],
      ]),
      ...designRows(),
      cell(CHOSEN - 1, LINES, 'Look into', 'label'),
      cell(CHOSEN, LINES, design, 'input', 'text'),
      cell(HEADERS - 1, LINES, 'Where its cost goes', 'heading'),
      ...listed({
        row: HEADERS + 1,
        column: LINES,
        lines: LINES_ROOM,
        of: costLines,
        columns: [
          { header: 'Line', format: 'text', take: 1 },
          { header: 'Per bar', format: 'money', take: 2 },
          { header: 'Share %', format: 'grams', take: 3 },
        ],
        instead: 'Pick a design above.',
      }),
      cell(
        HEADERS - 1,
        LINES + 1,
        moreNote(costLines.beyond(LINES_ROOM), 'put POUR.COSTLINES on a sheet of its own.'),
        'note',
      ),
      ...costByKind(costLines),
      cell(HEADERS - 1, CURVE, 'By batch size', 'heading'),
      ...headerCells(HEADERS, CURVE, [
        ['Bars in batch', 'whole'],
        ['Cost per bar', 'money'],
      ]),
      ...curveRows(),
    ],
    asks: [{ list: costLines, of: linesOfChosen() }],
    dropDowns: [{ range: oneCell(CHOSEN, LINES), choices: { source: designNames }, strict: false }],
    charts: [
      kindChart(),
      {
        kind: 'curve',
        title: 'Cost of one bar by batch size',
        description:
          'A line that falls as the setup is shared by more bars, with steps where another fill or a lost bar begins.',
        place: { startRow: HEADERS, startColumn: 13, endRow: HEADERS + 19, endColumn: 21 },
        across: 'Good bars in the batch',
        up: 'Cost per bar',
        series: [
          { name: 'Cost per bar', along: curveColumn(CURVE), values: curveColumn(CURVE + 1) },
        ],
      },
    ],
    landscape: true,
  };
}

/** The day that a sheet answers for: today, until a maker types another. */
export const asOfCells = (row: number): StarterCell[] => [
  ...inputCells(row, GIVEN, 'As of', '', 'date'),
  cell(row, GIVEN + 1, 'Blank is today.', 'aside'),
];

function designRows(): StarterCell[] {
  return Array.from({ length: DESIGNS_SHOWN }, (_, index) => {
    const row = HEADERS + 1 + index;
    const [name, price, cost] = [at(row, 0), at(row, 1), at(row, 2)];
    const given = [fixedAt(BARS, GIVEN), fixedAt(AS_OF, GIVEN)];
    return [
      cell(row, 0, rowOf(columnCells('designs', 'design'), index + 1), 'plain', 'text'),
      cell(row, 1, rowOf(columnCells('designs', 'price'), index + 1), 'plain', 'money'),
      cell(
        row,
        2,
        unlessBlank(name, '', pour('COSTPERBAR', name, named(bookName), ...given)),
        'plain',
        'money',
      ),
      cell(row, 3, less(price, cost), 'plain', 'money'),
      cell(row, 4, shareLeft(price, cost), 'plain', 'share'),
    ];
  }).flat();
}

function curveRows(): StarterCell[] {
  const chosen = fixedAt(CHOSEN, LINES);
  return Array.from({ length: LARGEST_BATCH }, (_, index) => {
    const row = HEADERS + 1 + index;
    const cost = pour('COSTPERBAR', chosen, named(bookName), at(row, CURVE), fixedAt(AS_OF, GIVEN));
    return [
      cell(row, CURVE, index + 1, 'plain', 'whole'),
      cell(row, CURVE + 1, unlessBlank(chosen, '', cost), 'plain', 'money'),
    ];
  }).flat();
}

function linesOfChosen(): Formula {
  const chosen = cellOn(NAME, CHOSEN, LINES);
  const given = [cellOn(NAME, BARS, GIVEN), cellOn(NAME, AS_OF, GIVEN)];
  return unlessBlank(chosen, '', pour('COSTLINES', chosen, named(bookName), ...given));
}
