import { isoDate } from '../src/domain/kernel/day.ts';
import { toCell } from '../src/domain/kernel/exact.ts';
import { trace as traceName } from '../src/domain/trace/trace.ts';
import { type RecalledLot, recallOf } from '../src/domain/trace/recall.ts';
import { settle } from './answer.ts';
import { dayArgument, nameArgument } from './arguments.ts';
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

/**
 * Where everything is that a lot or a batch went into: what is left of the lot, each batch with its own bars made, on the shelf, sold and gone, leftover soap on the shelf, and uses of which nobody knows the lot.
 * @customfunction RECALL
 * @param {any} lot A lot from Lots or a batch from Batches.
 * @param {any} book The cell named Book.
 * @param {any} [asOf] At the end of this day; today if blank.
 * @returns {any[][]} Item, Batch, Poured, How sure, Made, On hand, Sold, Gone; in each item's stock unit.
 */
export function recall(lot: any, book: any, asOf?: any): any[][] {
  const pourBook = bookArgument(book);
  const found = settle(
    recallOf(pourBook, nameArgument(lot, 'lot or batch'), dayArgument(asOf, 'as of')),
  );
  return [
    ['Item', 'Batch', 'Poured', 'How sure', 'Made', 'On hand', 'Sold', 'Gone'],
    ...(found.lot === undefined ? [] : [lotLine(found.lot)]),
    ...found.batches.map((made) => [
      // A batch without its line has no design; no list may lose it for that.
      made.design === '' ? made.batch : made.design,
      made.batch,
      isoDate(made.poured),
      made.certainty,
      ...[made.barsMade, made.barsOnHand, made.barsSold, made.barsGone].map(toCell),
    ]),
    ...found.soapOnHand.map(({ item, batch, certainty, onHand }) => [
      ...[item.name, batch, '', certainty, ''],
      toCell(onHand),
      ...['', ''],
    ]),
    ...found.doubtful.map(({ item, move, quantity }) => [
      ...[item.name, move.batch, isoDate(move.when), 'lot unknown', '', '', ''],
      toCell(quantity),
    ]),
  ];
}

/** The lot itself; gone is what was wasted, counted off or used without a batch. */
const lotLine = ({ lot, onHand, gone }: RecalledLot): any[] => [
  ...[lot.material.name, '', '', 'direct', lot.quantity, toCell(onHand), ''],
  toCell(gone),
];
