import type { Batch, Book, Design, Move } from '../book/book.ts';
import { type Ledger, someMoves } from '../book/ledger.ts';
import { count } from '../kernel/count.ts';
import { exact } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { type PourWanted, planPour } from '../ledger/plan-pour.ts';
import { postBatch } from '../ledger/post-batch.ts';
import type { Pour } from '../ledger/pour.ts';
import type { NewMove } from '../ledger/posting.ts';
import { movesOfBatch } from '../stock/batch-moves.ts';
import { indexAfter } from '../stock/ledger-index.ts';
import type { Mender, Repair } from './finding.ts';

/**
 * The moves that a batch lacks, where those it has are just what its recipe says of it: the ones its
 * posting would have written and Moves does not hold. Undefined where the pour went another way than
 * the recipe, or stock was short of it: then only the maker knows.
 */
export function lostMoves(book: Book, batch: Batch, { today, by }: Who): Repair | undefined {
  const { design } = batch;
  // Of pieces shaped ahead no line says which were wanted.
  if (design === undefined) return undefined;
  const key = nameKey(batch.batch);
  const standing = movesOfBatch(book, key).all.filter(isOfPosting);
  // A pour that was started again or taken back in part is no longer the one the recipe tells of.
  if (standing.some(({ reason }) => reason === 'reversed')) return undefined;
  const before: Book = {
    ...book,
    ledger: withoutPosting(book.ledger, key),
    batches: new Map([...book.batches].filter(([known]) => known !== key)),
  };
  // Only the items that this batch touched are followed again.
  indexAfter(book, before);
  for (const way of waysOf(batch)) {
    const missing = missingMoves(before, { ...batch, design }, standing, { today, by }, way);
    if (missing !== undefined && missing.length > 0) {
      return {
        says: `Write the ${count(missing.length, 'ledger line')} that it lacks, as the recipe of ${design.name} says.`,
        moves: missing.map((move) => ({ ...move, note: NOTE })),
        batches: [],
      };
    }
  }
  return undefined;
}

const NOTE = 'Health check: this line was missing, written as the recipe says';

/** What a batch's line does not say of how it was recorded. */
type Way = Pick<PourWanted, 'useLeftovers'> & Pick<Pour, 'lost'>;

/** A line without Lost may be older than that column, or stand in a table that never got it. */
function waysOf({ bars, good = bars, seconds = 0, lost }: Batch): readonly Way[] {
  const rest = bars - good - seconds;
  const lostWays = rest <= 0 ? [undefined] : lost === rest ? [rest] : [undefined, rest];
  return lostWays.flatMap((told) => [
    { useLeftovers: false, lost: told },
    { useLeftovers: true, lost: told },
  ]);
}

type Who = Pick<Mender, 'today' | 'by'>;

const isOfPosting = ({ reason }: Pick<Move, 'reason'>): boolean =>
  reason !== 'sold' && reason !== 'wasted';

/** The ledger without what the posting of one batch wrote. */
function withoutPosting(ledger: Ledger, batchKey: string): Ledger {
  const { batches, reasons } = ledger.columns;
  const isBatch = batches.values.map((batch) => nameKey(batch) === batchKey);
  const isPosted = reasons.values.map((reason) => isOfPosting({ reason }));
  return someMoves(
    ledger,
    (row) => !isBatch[batches.places[row] as number] || !isPosted[reasons.places[row] as number],
  );
}

function missingMoves(
  before: Book,
  batch: Batch & { readonly design: Design },
  standing: readonly Move[],
  { today, by }: Who,
  way: Way,
): readonly NewMove[] | undefined {
  const { bars, poured } = batch;
  // The batch's line counts the bars started, so the yield has had its share.
  const design = { ...batch.design, yieldShare: exact(1) };
  const { lost, useLeftovers } = way;
  const plan = planPour(before, { design, bars, poured, useLeftovers }, today);
  if (!plan.ok) return undefined;
  const posted = postBatch(
    before,
    {
      batch: batch.batch,
      poured,
      plan: plan.value,
      lost,
      good: batch.good ?? batch.bars,
      seconds: batch.seconds ?? 0,
      minutes: batch.minutes,
      weighed: new Map(),
      sparePieces: new Map(),
      leftoverG: new Map(),
      countIsOff: new Set(),
      by,
      note: '',
    },
    today,
  );
  if (!posted.ok || posted.value.kind === 'short') return undefined;
  const { moves } = posted.value.posting;
  const byEntry = new Map(moves.map((move) => [nameKey(move.entry), move]));
  const isAsPosted = standing.every((move) => isSame(move, byEntry.get(nameKey(move.entry))));
  if (!isAsPosted) return undefined;
  const there = new Set(standing.map(({ entry }) => nameKey(entry)));
  return moves.filter(({ entry }) => !there.has(nameKey(entry)));
}

const isSame = (move: Move, posted: NewMove | undefined): boolean =>
  posted !== undefined &&
  move.reason === posted.reason &&
  nameKey(move.item.name) === nameKey(posted.item.name) &&
  nameKey(move.lot) === nameKey(posted.lot) &&
  posted.quantity.eq(exact(move.quantity)) &&
  (move.value === undefined || posted.value.eq(exact(move.value)));
