import type { Book } from '../book/book.ts';
import { itemOfBars, itemOfSeconds } from '../book/find.ts';
import { batchStates } from '../book/words.ts';
import type { Day } from '../kernel/day.ts';
import { Exact, exact, notBelowZero, sum, zero } from '../kernel/exact.ts';
import { answer, type Result, andThen } from '../kernel/result.ts';
import { moldWear } from '../cost/mold-wear.ts';
import { roundMoney } from '../money/currency.ts';
import { labourMinutes } from '../recipe/labour.ts';
import { checkPour } from './check-pour.ts';
import { addedMaterials, type PouredMelt } from './consumption.ts';
import type { Pour } from './pour.ts';
import type { NewBatch } from './posting.ts';
import {
  besideBars,
  type Makings,
  type PostBatchAnswer,
  settleMelting,
  type SettledLine,
  type ToSettle,
} from './settle.ts';
import type { Taken } from './take-stock.ts';

/**
 * Works out everything that recording a pour writes: one `used` move for each lot taken from, then
 * leftover soap, spare pieces and good bars put in stock at what they cost, and the batch's line.
 * The value taken out equals the value put back, to the smallest unit of the currency. `today` bounds
 * what later moves may have taken. Writes nothing itself.
 */
export function postBatch(book: Book, pour: Pour, today: Day): Result<PostBatchAnswer> {
  const toSettle: ToSettle = {
    melts: checkPour(pour),
    added: addedMaterials(pour),
    makings: (melts, taken) => makings(pour, melts, taken),
    batchLine: (rest) => batchLine(book, pour, rest),
  };
  return settleMelting(book, pour, toSettle, today);
}

/** What the pour put in stock; bars carry all that leftovers and spares leave, the good ones last. */
function makings(pour: Pour, melts: readonly PouredMelt[], taken: readonly Taken[]): Makings {
  const beside = besideBars(pour.batch, melts, taken);
  const rest = sum(taken.map(({ value }) => value)).minus(sum(beside.map(({ value }) => value)));
  const { seconds, bars } = barsMade(pour, notBelowZero(rest));
  return { beside: [...beside, ...seconds], bars, rest: bars.value };
}

/** The seconds, where they are kept, and the good bars: what they are worth together, by the seconds' share of a bar. */
function barsMade(
  pour: Pour,
  worth: Exact,
): { readonly seconds: readonly SettledLine[]; readonly bars: SettledLine } {
  const made = { reason: 'made' as const, lot: pour.batch };
  const { design } = pour.plan;
  const good = exact(pour.good);
  const bars = { ...made, item: itemOfBars(design), quantity: good };
  if (pour.secondsShare === undefined) return { seconds: [], bars: { ...bars, value: worth } };
  const seconds = exact(pour.seconds);
  const asGood = seconds.times(pour.secondsShare);
  const all = good.plus(asGood);
  const value = all.isZero() ? zero : worth.times(asGood).div(all);
  return {
    seconds: [{ ...made, item: itemOfSeconds(design), quantity: seconds, value }],
    bars: { ...bars, value: worth.minus(value) },
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
