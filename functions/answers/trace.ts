import { isoDate } from '../../src/domain/kernel/day.ts';
import { toCell } from '../../src/domain/kernel/exact.ts';
import { andThen, answer } from '../../src/domain/kernel/result.ts';
import { type Recall, type RecalledLot, recallOf } from '../../src/domain/trace/recall.ts';
import { trace } from '../../src/domain/trace/trace.ts';
import type { AnswersOf, CellAnswer, CellRows } from '../answer.ts';
import type { traceRecords } from '../records/trace.ts';

export const traceAnswers: AnswersOf<typeof traceRecords> = {
  TRACE: ({ lotOrBatch, book }) =>
    andThen(trace(book, lotOrBatch), (lines) =>
      answer(
        lines.map((line) => [
          line.batch,
          isoDate(line.poured),
          line.design,
          line.bars ?? '',
          line.item,
          line.lot,
          toCell(line.quantity),
        ]),
      ),
    ),

  /** Quantities in each item's stock unit. */
  RECALL: ({ lot, book, asOf }) =>
    andThen(recallOf(book, lot, asOf), (found) => answer(recallRows(found))),
};

const recallRows = (found: Recall): CellRows => [
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

/** The lot itself; gone is what was wasted, counted off or used without a batch. */
const lotLine = ({ lot, onHand, gone }: RecalledLot): CellAnswer[] => [
  ...[lot.material.name, '', '', 'direct', lot.quantity, toCell(onHand), ''],
  toCell(gone),
];
