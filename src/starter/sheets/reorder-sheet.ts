import { cell, titleCells } from '../cells/answer-cells.ts';
import { answered } from '../blocks/answered.ts';
import { asOfCells } from './costing-sheet.ts';
import { cellOn, countAboveZero, named, pour, sumOf, unlessFailed } from '../cells/formula.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import { bookName } from '../cells/names.ts';
import type { StarterSheet } from '../cells/sheet.ts';
import { widths } from './weigh-sheet.ts';

const NAME = 'Reorder';
const AS_OF = 3;
const GIVEN = 1;
const LIST_ROW = 7;
const LIST_ROWS = 200;
/** Columns of POUR.STOCKLIST, from 1. */
const from = { item: 1, value: 5, orderPacks: 7 };

/** Everything on the shelf with its reorder point; what to order now stands out. */
export function reorderSheet(): StarterSheet {
  const stock = answered('stock');
  const first = String(LIST_ROW + 2);
  const toOrder = unlessFailed(stock.head, countAboveZero(stock.column(from.orderPacks)));
  return {
    name: NAME,
    group: 'answers',
    widths: widths([30, 13, 12, 8, 12, 15, 13, 25]),
    frozenRows: LIST_ROW + 1,
    cells: [
      ...titleCells(
        NAME,
        'Order what is marked: its stock is at or below the point of the usual formula. Reorder check tries that on your own days of use, one material at a time: where it trusts another, go by that.',
      ),
      ...asOfCells(AS_OF),
      ...listed({
        row: LIST_ROW + 1,
        column: 0,
        lines: LIST_ROWS,
        of: stock,
        columns: [
          { header: 'Item', format: 'text', take: 1 },
          { header: 'Kind', format: 'text', take: 2 },
          { header: 'On hand', format: 'grams', take: 3 },
          { header: 'Unit', format: 'text', take: 4 },
          { header: 'Value', format: 'money', take: 5 },
          { header: 'Reorder point', format: 'grams', take: 6 },
          { header: 'Order packs', format: 'whole', take: 7 },
          { header: 'Earliest best before', format: 'text', take: 8 },
        ],
      }),
      cell(AS_OF + 1, 0, 'Items to order', 'label'),
      cell(AS_OF + 1, GIVEN, toOrder, 'answer', 'whole'),
      cell(AS_OF + 2, 0, 'Value on the shelf', 'label'),
      cell(
        AS_OF + 2,
        GIVEN,
        unlessFailed(stock.head, sumOf(stock.column(from.value))),
        'answer',
        'money',
      ),
      cell(
        AS_OF + 2,
        2,
        moreNote(stock.beyond(LIST_ROWS, from.item), 'put POUR.STOCKLIST on a sheet of its own.'),
        'note',
      ),
    ],
    asks: [{ list: stock, of: pour('STOCKLIST', named(bookName), cellOn(NAME, AS_OF, GIVEN)) }],
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
