import type { Book } from '../book/book.ts';
import { batchStates } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { Exact } from '../kernel/exact.ts';
import { didYouMean, nameKey, quoted } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { live } from '../stock/reversals.ts';
import type { NewMove, StockChange } from './posting.ts';
import { changesByReversals, reversalOf } from './reversal.ts';
import { stockChanges } from './stock-changes.ts';

/** Everything that taking back a batch writes. */
export interface UndoPosting {
  readonly batch: string;
  /** What State of the batch's line becomes. */
  readonly state: string;
  readonly moves: readonly NewMove[];
  readonly changes: readonly StockChange[];
}

/**
 * Takes a batch back by appending, for each of its moves that still counts, one of the opposite
 * quantity and value. Refused where it would take stock below zero, on the day of the reversals or
 * later, since more has been sold or used since than what other batches brought.
 */
export function undoBatch(
  book: Book,
  batchId: string,
  today: Day,
  by: string,
): Result<UndoPosting> {
  const batch = book.batches.get(nameKey(batchId));
  if (batch === undefined) {
    const known = [...book.batches.values()].map((known) => known.batch);
    return wrong(`Batch ${quoted(batchId)} is not in Batches.${didYouMean(batchId, known)}`);
  }
  const moves = live(book.ledger.moves).filter(
    (move) => nameKey(move.batch) === nameKey(batchId) && move.reason !== 'sold',
  );
  if (moves.length === 0)
    return wrong(
      `Batch ${batch.batch} has no ledger lines left to take back: it is undone already.`,
    );
  const reversals = moves.map((move) => reversalOf(move, today, by));
  const changes = changesByReversals(book, reversals, today);
  const inTheEnd = stockChanges(book, reversals, Infinity);
  const gone = changes.flatMap(({ item, before, after }, index) => {
    const least = Exact.min(after, inTheEnd[index]?.after ?? after);
    if (!least.isNegative() || after.gte(before)) return [];
    const unit = item.unit === 'each' ? '' : ` ${item.unit}`;
    return [`${least.neg().toString()}${unit} of ${item.name}`];
  });
  if (gone.length > 0) {
    return wrong(
      `Batch ${batch.batch} can't be undone, since ${gone.join(', ')} it gave are no longer in stock. Undo the sale or pour that took them first.`,
    );
  }
  return answer({ batch: batch.batch, state: batchStates.undone, moves: reversals, changes });
}
