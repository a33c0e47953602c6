import { labourMinutes } from '../recipe/labour.ts';
import type { Book, Item } from '../book/book.ts';
import { itemOfBars, itemOfLeftover, itemOfSeconds } from '../book/find.ts';
import { batchStates, type MoveReason } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { Exact, exact, notBelowZero, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { all, answer, type Result, andThen, wrong } from '../kernel/result.ts';
import { moldWear } from '../cost/mold-wear.ts';
import { currencyDecimals, roundMoney } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { isPast } from '../stock/layer.ts';
import { checkPour } from './check-pour.ts';
import { addedMaterials, type PouredMelt } from './consumption.ts';
import type { Pour } from './pour.ts';
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

/**
 * Works out everything that recording a pour writes: one `used` move for each lot taken from, then
 * leftover soap, spare pieces and good bars put in stock at what they cost, and the batch's line.
 * The value taken out equals the value put back, to the smallest unit of the currency. `today` bounds
 * what later moves may have taken. Writes nothing itself.
 */
export function postBatch(book: Book, pour: Pour, today: Day): Result<PostBatchAnswer> {
  if (book.batches.has(nameKey(pour.batch))) {
    return wrong(`Batch ${pour.batch} is in Batches already, so it is not recorded again.`);
  }
  const latest = Math.max(today, pour.poured);
  return andThen(checkPour(pour), (melts) => {
    const needs = stockNeeds(melts, addedMaterials(pour.plan, pour));
    const takings = all(
      needs.map(({ item, quantity }) =>
        takeStock(
          book,
          item,
          quantity,
          { day: pour.poured, latest },
          pour.countIsOff.has(item.name),
        ),
      ),
    );
    return andThen(takings, (taken) => settle(book, pour, melts, taken));
  });
}

function settle(
  book: Book,
  pour: Pour,
  melts: readonly PouredMelt[],
  takings: readonly Taking[],
): Result<PostBatchAnswer> {
  const lacking = takings.flatMap(({ shortage }) => shortage ?? []);
  const missing = takings.flatMap(({ shortage, counted }) =>
    counted === undefined ? (shortage ?? []) : [],
  );
  const pastDate = takings.flatMap(({ picks }) =>
    picks.filter(({ bestBefore }) => isPast(bestBefore, pour.poured)),
  );
  if (missing.length > 0) return answer({ kind: 'short', shortages: missing, lacking, pastDate });
  const { lines, barsValue } = settleLines(book, pour, melts, takings);
  const moves = lines.map((line, index) => newMove(line, pour, index + 1));
  return andThen(batchLine(book, pour, barsValue), (batch) =>
    answer({
      kind: 'ready',
      lacking,
      pastDate,
      posting: {
        moves,
        batch,
        changes: stockChanges(book, moves, pour.poured),
        countedIn: lacking,
        writtenOff: pour.good === 0 ? barsValue : zero,
      },
    }),
  );
}

/** Every line of the ledger, with values that sum to the same total out and in; and what the good bars carry. */
function settleLines(
  book: Book,
  pour: Pour,
  melts: readonly PouredMelt[],
  takings: readonly Taking[],
): { readonly lines: readonly MoveLine[]; readonly barsValue: Exact } {
  const taken = takings.flatMap(({ picks }) => picks);
  const { currency } = book.settings;
  const decimals = currencyDecimals(currency);
  const total = roundMoney(sum(taken.map(({ value }) => value)), currency);
  const valuesOut = splitAmount(
    total,
    taken.map(({ value }) => value),
    decimals,
  );
  const made = makings(pour, melts, taken);
  const valuesIn = splitAmount(
    total,
    made.map(({ value }) => value),
    decimals,
  );
  const lines: MoveLine[] = [
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
  return { lines, barsValue: valuesIn.at(-1) ?? zero };
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

interface MoveLine {
  readonly reason: MoveReason;
  readonly item: Item;
  readonly quantity: Exact;
  readonly lot: string;
  readonly value: Exact;
}

/** What the pour put in stock with its exact value; the good bars last, carrying all that is left. */
function makings(pour: Pour, melts: readonly PouredMelt[], taken: readonly Taken[]): MoveLine[] {
  const perG = soapCostsPerG(melts, taken);
  const lot = pour.batch;
  const beside = melts.flatMap(({ melt, leftoverG, sparesMade }): MoveLine[] => {
    const cost = perG.get(melt.soap.name) ?? zero;
    return [
      {
        reason: 'left over',
        item: itemOfLeftover(melt.soap),
        quantity: leftoverG,
        lot,
        value: leftoverG.times(cost),
      },
      ...sparesMade.map(({ item, shape, pieces }) => ({
        reason: 'spare' as const,
        item,
        quantity: pieces,
        lot,
        value: pieces.times(shape.mold.fillG).div(shape.mold.cavities).times(cost),
      })),
    ];
  });
  const rest = sum(taken.map(({ value }) => value)).minus(sum(beside.map(({ value }) => value)));
  return [...beside, ...barsMade(pour, notBelowZero(rest))];
}

/** The seconds, where they are kept, and the good bars: what they are worth together, by the seconds' share of a bar. */
function barsMade(pour: Pour, worth: Exact): MoveLine[] {
  const made = { reason: 'made' as const, lot: pour.batch };
  const { design } = pour.plan;
  const good = exact(pour.good);
  const bars = { ...made, item: itemOfBars(design), quantity: good };
  if (pour.secondsShare === undefined) return [{ ...bars, value: worth }];
  const seconds = exact(pour.seconds);
  const asGood = seconds.times(pour.secondsShare);
  const all = good.plus(asGood);
  const value = all.isZero() ? zero : worth.times(asGood).div(all);
  return [
    { ...made, item: itemOfSeconds(design), quantity: seconds, value },
    { ...bars, value: worth.minus(value) },
  ];
}

function countedLine(counted: Taken, currency: string): MoveLine {
  return { ...counted, reason: 'counted', value: roundMoney(counted.value, currency) };
}

function newMove(line: MoveLine, pour: Pour, number: number): NewMove {
  return {
    entry: entryId(pour.batch, number),
    when: pour.poured,
    reason: line.reason,
    item: line.item,
    quantity: line.quantity,
    lot: line.lot,
    value: line.value,
    batch: pour.batch,
    by: pour.by,
    note: line.reason === 'counted' ? 'Found when the pour was recorded' : '',
  };
}

/** The batch's own line; its cost per bar is the full cost, as in COSTPERBAR but with what really happened. */
function batchLine(book: Book, pour: Pour, materialCost: Exact): Result<NewBatch> {
  const { design, barsToStart } = pour.plan;
  const { labourRatePerHour, overheadPerBar, currency } = book.settings;
  const planned = labourMinutes(design, barsToStart);
  const minutes = pour.minutes === undefined ? planned : exact(pour.minutes);
  return andThen(moldWear(pour.plan), (wear) => {
    const labour = minutes.div(60).times(labourRatePerHour);
    const wearCosts = wear.map(({ cost }) => cost);
    const full = sum([materialCost, labour, overheadPerBar.times(barsToStart), ...wearCosts]);
    return answer({
      batch: pour.batch,
      poured: pour.poured,
      design: design.name,
      bars: barsToStart,
      good: pour.good,
      seconds: pour.seconds,
      lost: pour.lost,
      minutes,
      materialCost,
      costPerBar: pour.good === 0 ? undefined : roundMoney(full.div(pour.good), currency),
      readyOn: Math.ceil(new Exact(pour.poured).plus(design.handsOffHours.div(24)).toNumber()),
      state: batchStates.recorded,
      by: pour.by,
      note: pour.note,
    });
  });
}
