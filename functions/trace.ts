import { isoDate } from '../src/domain/kernel/day.ts';
import { toCell } from '../src/domain/kernel/exact.ts';
import { trace as traceName } from '../src/domain/trace/trace.ts';
import { settle } from './answer.ts';
import { nameArgument } from './arguments.ts';
import { bookArgument } from './books.ts';

/**
 * Follows a lot to every batch it went into, or a batch back to every lot, through leftovers and spares.
 * @customfunction TRACE
 * @param {any} lotOrBatch A lot from Lots or a batch from Batches.
 * @param {any} book The cell named Book.
 * @returns {any[][]} Batch, Poured, Design, Bars, Item, Lot, Quantity.
 */
export function trace(lotOrBatch: any, book: any): any[][] {
  const pourBook = bookArgument(book);
  const lines = settle(traceName(pourBook, nameArgument(lotOrBatch, 'lot or batch')));
  return [
    ['Batch', 'Poured', 'Design', 'Bars', 'Item', 'Lot', 'Quantity'],
    ...lines.map((line) => [
      line.batch,
      isoDate(line.poured),
      line.design,
      line.bars ?? '',
      line.item,
      line.lot,
      toCell(line.quantity),
    ]),
  ];
}
