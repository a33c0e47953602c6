import { misreadHint } from '../book/batch-code.ts';
import type { Batch, Book, Lot } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { compareNames, nameKey, didYouMean, quoted } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { movesOfBatch } from '../stock/batch-moves.ts';
import type { Leaving } from './flows.ts';
import { batchKeyOf, reachOfLot, sourcesOfBatches } from './reach.ts';

/** One thing that went into one batch. */
export interface TraceLine {
  /** "" where a move used stock without naming a batch. */
  readonly batch: string;
  /** From Batches; the day of the move where the batch has no line there. */
  readonly poured: Day;
  /** "" where the batch has no line in Batches. */
  readonly design: string;
  /** Bars started. */
  readonly bars: number | undefined;
  readonly item: string;
  /** The lot, or for soap, pieces and bars the batch they came from. "" where nobody knows. */
  readonly lot: string;
  /** Taken by the batch, in the item's unit. */
  readonly quantity: Exact;
}

/** What a name stands for in Lots and in Batches or the moves of one. */
export interface Traceable {
  readonly lot: Lot | undefined;
  readonly batch: string | undefined;
}

/**
 * A lot: every batch that it went into, straight or through leftovers, spare pieces and bars melted
 * again, a line for each thing that carried it. A batch: everything that went into it, and into the
 * batches it took leftovers from, back to the lots. A name that is both is answered both ways, since
 * a recall must not miss either. Fails on a name that is neither, with the nearest.
 */
export function trace(book: Book, name: string): Result<readonly TraceLine[]> {
  const found = findTraceable(book, name);
  if (!found.ok) return found;
  const { lot, batch } = found.value;
  const leavings = new Set<Leaving>();
  if (lot !== undefined)
    for (const leaving of reachOfLot(book, nameKey(lot.lot))) leavings.add(leaving);
  if (batch !== undefined)
    for (const leaving of sourcesOfBatches(book, [nameKey(batch)])) leavings.add(leaving);
  return answer(traceLines(book, leavings));
}

/** The lot or batch of that name, in any case of letters. */
export function findTraceable(book: Book, name: string): Result<Traceable> {
  const key = nameKey(name);
  const lot = book.lots.find((known) => nameKey(known.lot) === key);
  const batch = book.batches.get(key)?.batch ?? movesOfBatch(book, key).all[0]?.batch;
  if (key !== '' && (lot ?? batch) !== undefined) return answer({ lot, batch });
  const design = book.designs.get(key);
  if (design !== undefined) {
    const poured = [...book.batches.values()].filter((known) => known.design === design);
    const newest = poured.sort((a, b) => b.poured - a.poured)[0];
    return wrong(
      `"${design.name}" is a design, not a lot or a batch.${newest === undefined ? '' : ` Give one of its batches, such as ${newest.batch}.`}`,
    );
  }
  const known = [
    ...book.lots.map((known) => known.lot),
    ...[...book.batches.values()].map((known) => known.batch),
  ];
  return wrong(
    `${quoted(name)} is neither a lot in Lots nor a batch in Batches.${misreadHint(name)}${didYouMean(name, known)}`,
  );
}

/** Leavings as lines, those of one batch, item and source added up, in order of time. */
function traceLines(book: Book, leavings: Iterable<Leaving>): TraceLine[] {
  const lines = new Map<string, TraceLine>();
  for (const leaving of leavings) {
    const { move, item, from, quantity } = leaving;
    const key = [batchKeyOf(leaving), nameKey(item.name), nameKey(from)].join('\n');
    const batch: Batch | undefined = book.batches.get(batchKeyOf(leaving));
    const before = lines.get(key);
    lines.set(key, {
      batch: batch?.batch ?? move.batch,
      poured: batch?.poured ?? Math.min(move.when, before?.poured ?? move.when),
      design: batch?.design?.name ?? '',
      bars: batch?.bars,
      item: item.name,
      lot: from,
      quantity: quantity.plus(before?.quantity ?? zero),
    });
  }
  return [...lines.values()].sort(
    (a, b) =>
      a.poured - b.poured ||
      compareNames(a.batch, b.batch) ||
      compareNames(a.item, b.item) ||
      compareNames(a.lot, b.lot),
  );
}
