import type { Batch, Book, Design, Move } from '../book/book.ts';
import { itemOfBars } from '../book/find.ts';
import { batchStates, saysUndone } from '../book/words.ts';
import { count } from '../kernel/count.ts';
import { type Exact, exact, zero } from '../kernel/exact.ts';
import { Tally } from '../kernel/tally.ts';
import { roundMoney } from '../money/currency.ts';
import type { NewMove } from '../ledger/posting.ts';
import { isOfPour, movesOfBatch } from '../stock/batch-moves.ts';
import {
  finding,
  type HealthFinding,
  type Mender,
  type Mending,
  mendingBy,
  type Repair,
  reversalIn,
} from './finding.ts';
import { lostMoves } from './lost-moves.ts';

/** What the moves of each batch in Batches do not bear out. */
export function batchFindings(book: Book, mender: Mender): HealthFinding[] {
  return [...book.batches].flatMap(([key, batch]) => {
    const { all, live } = movesOfBatch(book, key);
    const moves = live.filter(isOfPour);
    if (saysUndone(batch.state))
      return moves.length === 0 ? [] : [halfUndone(batch, moves, mender)];
    if (moves.length === 0) return [noMoves(book, batch, all.some(isOfPour), mender)];
    // A made move that is missing explains a value that is missing.
    const found =
      barsFinding(book, batch, moves, mender) ?? valueFinding(book, batch, moves, mender);
    return found === undefined ? [] : [found];
  });
}

const halfUndone = (batch: Batch, moves: readonly Move[], mender: Mender): HealthFinding =>
  finding(
    'batch half undone',
    batch.batch,
    () =>
      `Batch ${batch.batch} is marked ${batch.state}, but ${moves.length} of its ledger lines still count. Take them back, or mend its State.`,
    () => {
      const mending = mendingBy(mender);
      return {
        says: `Take back the ${count(moves.length, 'ledger line that still counts', 'ledger lines that still count')}.`,
        moves: moves.map((move) => reversalIn(move, mending)),
        batches: [],
      };
    },
  );

const noMoves = (
  book: Book,
  batch: Batch,
  wereTakenBack: boolean,
  mender: Mender,
): HealthFinding =>
  wereTakenBack
    ? finding(
        'state not as the ledger says',
        batch.batch,
        () =>
          `All ledger lines of batch ${batch.batch} were taken back, but its State is "${batch.state}". Set it to ${batchStates.undone}.`,
        () => undefined,
      )
    : finding(
        'batch without ledger lines',
        batch.batch,
        () =>
          `Batch ${batch.batch} is in Batches, but LedgerLines has nothing that it used or made, so stock was never depleted. Write its lines, or set its State to ${batchStates.undone} and record the pour again.`,
        () => lostMoves(book, batch, mender),
      );

/** Good bars by the batch's line against bars put in stock. */
function barsFinding(
  book: Book,
  batch: Batch,
  moves: readonly Move[],
  mender: Mender,
): HealthFinding | undefined {
  if (batch.good === undefined) return undefined;
  const made = totalOf(
    moves.filter(({ reason }) => reason === 'made'),
    ({ quantity }) => quantity,
  );
  const missing = exact(batch.good).minus(made);
  if (missing.isZero()) return undefined;
  return finding(
    'bars not as the batch says',
    batch.batch,
    () =>
      `Batch ${batch.batch} says ${batch.good} good bars, but its ledger lines put ${made.toString()} in stock. Mend the Good of the batch, or ${missing.gt(0) ? 'add the missing bars' : 'take the surplus bars back'}.`,
    () => {
      const worth = unclaimedValue(book, moves);
      const canMend = missing.gt(0) && worth !== undefined && !worth.isNegative();
      return (
        lostMoves(book, batch, mender) ??
        (canMend && batch.design !== undefined
          ? barsRepair(batch, batch.design, missing, worth, mendingBy(mender))
          : undefined)
      );
    },
  );
}

const barsRepair = (
  batch: Batch,
  design: Design,
  missing: Exact,
  worth: Exact,
  mending: Mending,
): Repair => ({
  says: `Put ${count(missing, 'bar')} of ${design.name} in stock at what the batch used and no other line holds.`,
  moves: [missingBars(batch, design, missing, worth, mending)],
  batches: [],
});

function missingBars(
  batch: Batch,
  design: Design,
  bars: Exact,
  value: Exact,
  mending: Mending,
): NewMove {
  return {
    entry: mending.entryFor(`${batch.batch}.made`),
    when: batch.poured,
    reason: 'made',
    item: itemOfBars(design),
    quantity: bars,
    lot: batch.batch,
    value,
    batch: batch.batch,
    by: mending.by,
    note: 'Health check: this line was missing',
  };
}

/** Value used that no leftover, spare or bar carries; undefined where a move has no Value. */
export function unclaimedValue(book: Book, moves: readonly Move[]): Exact | undefined {
  if (moves.some(({ value }) => value === undefined)) return undefined;
  const total = totalOf(moves, ({ value }) => value ?? 0);
  return roundMoney(total, book.settings.currency).neg();
}

function totalOf(moves: readonly Move[], numberOf: (move: Move) => number): Exact {
  const tally = new Tally();
  for (const move of moves) tally.add(numberOf(move));
  return tally.total();
}

function valueFinding(
  book: Book,
  batch: Batch,
  moves: readonly Move[],
  mender: Mender,
): HealthFinding | undefined {
  const kind = 'value out is not value in';
  const unclaimed = unclaimedValue(book, moves);
  if (unclaimed === undefined) {
    const blank = moves.filter(({ value }) => value === undefined).map(({ entry }) => entry);
    return finding(
      kind,
      batch.batch,
      () =>
        `Batch ${batch.batch}: no Value in ${blank.join(', ')}, so nobody can tell whether what it used is what it made. Fill it in.`,
      () => undefined,
    );
  }
  // Where no bar came out good, or no piece shaped ahead, what was used is written off with them.
  const isNothingMade = batch.good === 0 || batch.design === undefined;
  const isWrittenOff = isNothingMade && unclaimed.gt(0);
  if (unclaimed.eq(zero) || isWrittenOff) return undefined;
  const way = unclaimed.gt(0) ? 'more than' : 'less than';
  return finding(
    kind,
    batch.batch,
    () =>
      `Batch ${batch.batch} used ${unclaimed.abs().toString()} ${book.settings.currency} ${way} its bars, spares and leftovers hold. A ledger line is missing or its Value is mistyped: undo the batch and record it again, or mend the Value.`,
    () => lostMoves(book, batch, mender),
  );
}
