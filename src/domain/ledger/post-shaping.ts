import type { Book } from '../book/book.ts';
import { batchStates } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { exact, notBelowZero, sum, zero } from '../kernel/exact.ts';
import { answer, type Result } from '../kernel/result.ts';
import { checkMelting } from './check-pour.ts';
import type { PouredMelt } from './consumption.ts';
import type { ShapedAhead } from './pour.ts';
import type { NewBatch } from './posting.ts';
import {
  besideBars,
  type Makings,
  type PostBatchAnswer,
  settleMelting,
  type ToSettle,
} from './settle.ts';
import type { Taken } from './take-stock.ts';

/**
 * Works out everything that recording pieces shaped ahead writes: what the melts took out of stock, spare pieces and
 * leftover soap put in at what they cost, and a line in Batches with no design and 0 bars (contract §2). No bars; the
 * pieces carry what broke, as a pour's bars carry it, and a later pour that lays them takes them at their cost. Undone
 * like any batch. Writes nothing itself.
 */
export function postShaping(book: Book, shaping: ShapedAhead, today: Day): Result<PostBatchAnswer> {
  const toSettle: ToSettle = {
    melts: checkMelting(shaping),
    added: [],
    makings: (melts, taken) => makings(shaping, melts, taken),
    batchLine: () => answer(shapedLine(shaping)),
  };
  return settleMelting(book, shaping, toSettle, today);
}

/** Leftovers at their colour's cost per g; the spare pieces share all the rest, in proportion to theirs. */
function makings(
  shaping: ShapedAhead,
  melts: readonly PouredMelt[],
  taken: readonly Taken[],
): Makings {
  const beside = besideBars(shaping.batch, melts, taken);
  const spares = sum(beside.map(({ reason, value }) => (reason === 'spare' ? value : zero)));
  const others = sum(beside.map(({ value }) => value)).minus(spares);
  const rest = notBelowZero(sum(taken.map(({ value }) => value)).minus(others));
  if (spares.isZero()) return { beside, bars: undefined, rest };
  const dearer = beside.map((line) =>
    line.reason === 'spare' ? { ...line, value: line.value.times(rest).div(spares) } : line,
  );
  return { beside: dearer, bars: undefined, rest: zero };
}

const shapedLine = ({ batch, poured, minutes, by, note }: ShapedAhead): NewBatch => ({
  batch,
  poured,
  design: '',
  bars: zero,
  good: 0,
  seconds: 0,
  lost: 0,
  minutes: minutes === undefined ? undefined : exact(minutes),
  // What the pieces cost stands in the ledger; there are no bars for it to stay in.
  materialCost: zero,
  costPerBar: undefined,
  readyOn: undefined,
  state: batchStates.recorded,
  by,
  note,
});
