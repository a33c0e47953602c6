import { cell, headerCells } from './answer-cells.ts';
import type { Cell } from '../port.ts';
import { at, fixedAt, less, named, pour, rowOf, shareLeft, unlessBlank } from './formula.ts';
import { bookName } from './names.ts';
import type { StarterCell, StarterSheet } from './sheet.ts';
import { designNames } from './table-choices.ts';
import { one, widths } from './weigh-sheet.ts';

const AS_OF = 2;
const BARS = 3;
const GIVEN = 1;
const HEADERS = 6;
const DESIGNS_SHOWN = 15;
/** Where the cost of one chosen design goes. */
const LINES = 6;
const LINE_ROWS = 40;
/** The same design in batches of 1 to 36 bars. */
const CURVE = 10;
const LARGEST_BATCH = 36;

/** What each design costs, where the money of one goes, and how its cost falls with the batch. */
export function costingSheet(design: string, asOf: Cell): StarterSheet {
  const lastCurveRow = HEADERS + LARGEST_BATCH;
  const curveColumn = (column: number) => ({
    startRow: HEADERS + 1,
    endRow: lastCurveRow,
    startColumn: column,
    endColumn: column,
  });
  return {
    name: 'Costing',
    group: 'answers',
    widths: widths([20, 12, 13, 13, 13, 3, 24, 10, 10, 3, 14, 13, 3]),
    frozenRows: HEADERS + 1,
    cells: [
      cell(0, 0, 'Costing', 'title'),
      cell(
        1,
        0,
        'Full cost of one good bar: material, labour, setup, mold wear, overhead, lost bars.',
        'note',
      ),
      cell(AS_OF, 0, 'As of', 'label'),
      cell(AS_OF, GIVEN, asOf, 'input', 'date'),
      cell(
        AS_OF,
        2,
        asOf === '' ? 'Blank is today.' : 'A day of the demo. Clear it for today.',
        'note',
      ),
      cell(BARS, 0, 'Good bars', 'label'),
      cell(BARS, GIVEN, 12, 'input', 'whole'),
      cell(BARS, 2, 'in one batch', 'note'),
      cell(HEADERS - 1, 0, 'Every design', 'heading'),
      ...headerCells(HEADERS, 0, ['Design', 'Price', 'Cost per bar', 'Price − cost', 'Of price']),
      ...designRows(),
      cell(AS_OF, LINES, 'Look into', 'label'),
      cell(AS_OF, LINES + 1, design, 'input', 'text'),
      cell(HEADERS - 1, LINES, 'Where its cost goes', 'heading'),
      cell(HEADERS, LINES, ofChosen('Pick a design above.', 'COSTLINES'), 'header'),
      cell(HEADERS - 1, CURVE, 'By batch size', 'heading'),
      ...headerCells(HEADERS, CURVE, ['Bars in batch', 'Cost per bar']),
      ...curveRows(),
    ],
    spillLooks: [
      { row: HEADERS, column: LINES, rows: LINE_ROWS, formats: ['text', 'money', 'number'] },
    ],
    dropDowns: [{ range: one(AS_OF, LINES + 1), choices: { source: designNames }, strict: false }],
    merges: [{ startRow: AS_OF, startColumn: LINES + 1, endRow: AS_OF, endColumn: LINES + 2 }],
    chart: {
      title: 'Cost of one bar by batch size',
      description:
        'A line that falls as the setup is shared by more bars, with steps where another fill or a lost bar begins.',
      place: { startRow: HEADERS, startColumn: 13, endRow: HEADERS + 19, endColumn: 21 },
      horizontal: { title: 'Good bars in the batch', range: curveColumn(CURVE) },
      vertical: { title: 'Cost per bar', range: curveColumn(CURVE + 1) },
    },
    landscape: true,
  };
}

function designRows(): StarterCell[] {
  return Array.from({ length: DESIGNS_SHOWN }, (_, index) => {
    const row = HEADERS + 1 + index;
    const [name, price, cost] = [at(row, 0), at(row, 1), at(row, 2)];
    const given = [fixedAt(BARS, GIVEN), fixedAt(AS_OF, GIVEN)];
    return [
      cell(row, 0, rowOf('Designs', 'Design', index + 1), 'plain', 'text'),
      cell(row, 1, rowOf('Designs', 'Price', index + 1), 'plain', 'money'),
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
  const chosen = fixedAt(AS_OF, LINES + 1);
  return Array.from({ length: LARGEST_BATCH }, (_, index) => {
    const row = HEADERS + 1 + index;
    const cost = pour('COSTPERBAR', chosen, named(bookName), at(row, CURVE), fixedAt(AS_OF, GIVEN));
    return [
      cell(row, CURVE, index + 1, 'plain', 'whole'),
      cell(row, CURVE + 1, unlessBlank(chosen, '', cost), 'plain', 'money'),
    ];
  }).flat();
}

function ofChosen(instead: string, id: string) {
  const chosen = fixedAt(AS_OF, LINES + 1);
  const given = [fixedAt(BARS, GIVEN), fixedAt(AS_OF, GIVEN)];
  return unlessBlank(chosen, instead, pour(id, chosen, named(bookName), ...given));
}
