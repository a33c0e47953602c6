import { cell, titleCells } from './answer-cells.ts';
import { asOfCells } from './costing-sheet.ts';
import { block, countAboveZero, fixedAt, named, pour, sumOf } from './formula.ts';
import { bookName } from './names.ts';
import type { StarterSheet } from './sheet.ts';
import { widths } from './weigh-sheet.ts';

const AS_OF = 3;
const GIVEN = 1;
const LIST_ROW = 7;
const LIST_ROWS = 200;
const VALUE = 4;
const ORDER_PACKS = 6;

/** Everything on the shelf with its reorder point; what to order now stands out. */
export function reorderSheet(): StarterSheet {
  const down = (column: number) => block(LIST_ROW + 1, column, LIST_ROW + LIST_ROWS, column);
  const first = String(LIST_ROW + 2);
  return {
    name: 'Reorder',
    group: 'answers',
    widths: widths([30, 13, 12, 8, 12, 15, 13, 25]),
    frozenRows: LIST_ROW + 1,
    cells: [
      ...titleCells(
        'Reorder',
        'Order what is marked: its stock is at or below the point of the usual formula. Reorder check tries that on your own days of use, one material at a time: where it trusts another, go by that.',
      ),
      ...asOfCells(AS_OF),
      cell(LIST_ROW, 0, pour('STOCKLIST', named(bookName), fixedAt(AS_OF, GIVEN)), 'header'),
      cell(AS_OF + 1, 0, 'Items to order', 'label'),
      cell(AS_OF + 1, GIVEN, countAboveZero(down(ORDER_PACKS)), 'answer', 'whole'),
      cell(AS_OF + 2, 0, 'Value on the shelf', 'label'),
      cell(AS_OF + 2, GIVEN, sumOf(down(VALUE)), 'answer', 'money'),
    ],
    spillLooks: [
      {
        row: LIST_ROW,
        column: 0,
        rows: LIST_ROWS,
        formats: ['text', 'text', 'grams', 'text', 'money', 'grams', 'whole', 'text'],
      },
    ],
    marks: [
      {
        range: {
          startRow: LIST_ROW + 1,
          endRow: LIST_ROW + LIST_ROWS,
          startColumn: 0,
          endColumn: 7,
        },
        formula: `N($G${first})>0`,
        shows: 'short',
      },
    ],
    landscape: false,
  };
}
