import type { Book, Item } from '../book/book.ts';
import { itemOfLeftover } from '../book/find.ts';
import type { MoveReason } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { all, answer, type Result, andThen, wrong } from '../kernel/result.ts';
import { currencyDecimals, roundMoney } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { isPast } from '../stock/layer.ts';
import type { PouredMelt } from './consumption.ts';
import type { Melting } from './pour.ts';
import {
  type BatchPosting,
  entryId,
  type NewBatch,
  type NewMove,
  type ShortOfStock,
} from './posting.ts';
import { stockChanges } from './stock-changes.ts';
import { type Shortage, type Taken, takeStock, type Taking } from './take-stock.ts';
import { soapCostsPerG } from './value-out.ts';

/** A posting ready to write, or what stock is short of. */
export type PostBatchAnswer = (
  | { readonly kind: 'ready'; readonly posting: BatchPosting }
  | ({ readonly kind: 'short' } & ShortOfStock)
) & {
  /** All that stock lacks, whatever was said of its counts. */
  readonly lacking: readonly Shortage[];
  /** Taken from lots that are past their best before on the day of the pour: allowed, never unsaid. */
  readonly pastDate: readonly Taken[];
};

/** A line to be, whose value is exact until all are split. */
export interface SettledLine {
  readonly reason: MoveReason;
  readonly item: Item;
  readonly quantity: Exact;
  readonly lot: string;
  readonly value: Exact;
}

/** What some melting put in stock, at exact values that come to all that was taken. */
export interface Makings {
  /** Leftovers and spares. */
  readonly beside: readonly SettledLine[];
  /** Undefined where nothing but these was made. */
  readonly bars: SettledLine | undefined;
  /** What the bars carry; written off where none came out good. */
  readonly rest: Exact;
}

/** What went in, and what to make of what was taken for it. */
export interface ToSettle {
  readonly melts: Result<readonly PouredMelt[]>;
  /** Beside what went into the melts. */
  readonly added: readonly { readonly item: Item; readonly quantity: Exact }[];
  readonly makings: (melts: readonly PouredMelt[], taken: readonly Taken[]) => Makings;
  /** The batch's own line, given what the bars carry. */
  readonly batchLine: (rest: Exact) => Result<NewBatch>;
}

/**
 * Takes all that a melting needs from stock and works out every line that recording it writes. The value taken out
 * equals the value put back, to the smallest unit of the currency. `today` bounds what later moves may have taken.
 */
export function settleMelting(
  book: Book,
  melting: Melting,
  { melts, added, makings, batchLine }: ToSettle,
  today: Day,
): Result<PostBatchAnswer> {
  if (book.batches.has(nameKey(melting.batch))) {
    return wrong(`Batch ${melting.batch} is in Batches already, so it is not recorded again.`);
  }
  const when = { day: melting.poured, latest: Math.max(today, melting.poured) };
  return andThen(melts, (poured) => {
    const takings = all(
      stockNeeds(poured, added).map(({ item, quantity }) =>
        takeStock(book, item, quantity, when, melting.countIsOff.has(item.name)),
      ),
    );
    return andThen(takings, (taken) =>
      settle(book, melting, taken, { makings: (picks) => makings(poured, picks), batchLine }),
    );
  });
}

/** A settling whose melts are known. */
interface Settling extends Pick<ToSettle, 'batchLine'> {
  readonly makings: (taken: readonly Taken[]) => Makings;
}

function settle(
  book: Book,
  melting: Melting,
  takings: readonly Taking[],
  { makings, batchLine }: Settling,
): Result<PostBatchAnswer> {
  const lacking = takings.flatMap(({ shortage }) => shortage ?? []);
  const missing = takings.flatMap(({ shortage, counted }) =>
    counted === undefined ? (shortage ?? []) : [],
  );
  const pastDate = takings.flatMap(({ picks }) =>
    picks.filter(({ bestBefore }) => isPast(bestBefore, melting.poured)),
  );
  if (missing.length > 0) return answer({ kind: 'short', shortages: missing, lacking, pastDate });
  const { lines, rest, isWrittenOff } = settleLines(book, takings, makings);
  const moves = lines.map((line, index) => newMove(line, melting, index + 1));
  return andThen(batchLine(rest), (batch) =>
    answer({
      kind: 'ready',
      lacking,
      pastDate,
      posting: {
        moves,
        batch,
        changes: stockChanges(book, moves, melting.poured),
        countedIn: lacking,
        writtenOff: isWrittenOff ? rest : zero,
      },
    }),
  );
}

/** Every line of the ledger, with values that sum to the same total out and in; and what the good bars carry. */
function settleLines(
  book: Book,
  takings: readonly Taking[],
  makings: Settling['makings'],
): {
  readonly lines: readonly SettledLine[];
  readonly rest: Exact;
  readonly isWrittenOff: boolean;
} {
  const taken = takings.flatMap(({ picks }) => picks);
  const { currency } = book.settings;
  const decimals = currencyDecimals(currency);
  const total = roundMoney(sum(taken.map(({ value }) => value)), currency);
  const valuesOut = splitAmount(
    total,
    taken.map(({ value }) => value),
    decimals,
  );
  const { beside, bars, rest } = makings(taken);
  const valuesIn = splitAmount(total, [...beside.map(({ value }) => value), rest], decimals);
  const made = bars === undefined ? beside : [...beside, bars];
  const lines: SettledLine[] = [
    ...takings.flatMap(({ counted }) =>
      counted === undefined ? [] : [countedLine(counted, currency)],
    ),
    ...taken.map((line, index) => ({
      ...line,
      reason: 'used' as const,
      quantity: line.quantity.neg(),
      value: (valuesOut[index] ?? zero).neg(),
    })),
    ...made.flatMap((line, index) =>
      line.quantity.isZero() ? [] : [{ ...line, value: valuesIn[index] ?? zero }],
    ),
  ];
  const isWrittenOff = bars === undefined || bars.quantity.isZero();
  return { lines, rest: valuesIn.at(-1) ?? zero, isWrittenOff };
}

/** Everything taken from stock, each item once. */
function stockNeeds(
  melts: readonly PouredMelt[],
  added: readonly { readonly item: Item; readonly quantity: Exact }[],
): { item: Item; quantity: Exact }[] {
  const needs = new Map<string, { item: Item; quantity: Exact }>();
  const add = (item: Item, quantity: Exact): void => {
    const before = needs.get(item.name)?.quantity ?? zero;
    needs.set(item.name, { item, quantity: before.plus(quantity) });
  };
  for (const { consumed, sparesLaid } of melts) {
    for (const { item, quantity } of consumed) if (item !== undefined) add(item, quantity);
    for (const { item, pieces } of sparesLaid) add(item, pieces);
  }
  for (const { item, quantity } of added) add(item, quantity);
  return [...needs.values()].filter(({ quantity }) => !quantity.isZero());
}

/** Leftover soap and spare pieces with what they are worth at their colour's cost per g. */
export function besideBars(
  batch: string,
  melts: readonly PouredMelt[],
  taken: readonly Taken[],
): SettledLine[] {
  const perG = soapCostsPerG(melts, taken);
  return melts.flatMap(({ melt, leftoverG, sparesMade }): SettledLine[] => {
    const cost = perG.get(melt.soap.name) ?? zero;
    return [
      {
        reason: 'left over',
        item: itemOfLeftover(melt.soap),
        quantity: leftoverG,
        lot: batch,
        value: leftoverG.times(cost),
      },
      ...sparesMade.map(({ item, shape, pieces }) => ({
        reason: 'spare' as const,
        item,
        quantity: pieces,
        lot: batch,
        value: pieces.times(shape.mold.fillG).div(shape.mold.cavities).times(cost),
      })),
    ];
  });
}

function countedLine(counted: Taken, currency: string): SettledLine {
  return { ...counted, reason: 'counted', value: roundMoney(counted.value, currency) };
}

function newMove(line: SettledLine, melting: Melting, number: number): NewMove {
  return {
    entry: entryId(melting.batch, number),
    when: melting.poured,
    reason: line.reason,
    item: line.item,
    quantity: line.quantity,
    lot: line.lot,
    value: line.value,
    batch: melting.batch,
    by: melting.by,
    note: line.reason === 'counted' ? 'Found when the pour was recorded' : '',
  };
}
