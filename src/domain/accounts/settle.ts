import type { Book } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, exact, sum } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { andThen, answer, notYet, type Result, wrong } from '../kernel/result.ts';
import { currencyDecimals, roundMoney } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { isUndone } from '../stock/batch-moves.ts';
import { landedCost } from '../stock/lot-cost.ts';
import { type Days, daysOf, isWithin } from './days.ts';
import { salesAccount } from './period.ts';
import { atMostTwenty } from './stock-account.ts';

/** One partner's side of some days; money in the Settings' currency. */
export interface Settlement {
  readonly partner: string;
  /** For lots received, freight included. */
  readonly paid: Exact;
  /** From sales: takings less commission, fees and postage; tax is in it, since all of them owe it. */
  readonly took: Exact;
  /** Of work on batches, as their lines say. */
  readonly minutes: Exact;
  /** Their part of all that was taken less all that was paid. */
  readonly share: Exact;
  /** What the others owe them; negative where they owe it. All together are 0. */
  readonly owed: Exact;
}

/**
 * Who paid, who took and who owes whom in the days from one to another, both included. Fails where a line names
 * nobody: its money would be no partner's.
 */
export function settlePartners(book: Book, from: Day, to: Day): Result<readonly Settlement[]> {
  return andThen(daysOf(from, to), (days) => {
    if (book.partners.size === 0)
      return notYet(
        'Nobody shares yet: list who does in Partners, with shares that add up to 100.',
      );
    const nobody = linesOfNobody(book, days);
    if (nobody.length > 0) return wrong(`${nobody.join(' ')} Type who it was, as in Partners.`);
    return answer(settlements(book, days));
  });
}

function linesOfNobody(book: Book, days: Days): string[] {
  const isPartner = (name: string): boolean => book.partners.has(nameKey(name));
  const lots = book.lots.filter(
    ({ received, paidBy }) => isWithin(days, received) && !isPartner(paidBy),
  );
  const sales = book.sales.filter(
    ({ soldOn, takenBy }) => isWithin(days, soldOn) && !isPartner(takenBy),
  );
  const says = (ids: readonly string[], table: string, column: string): string[] =>
    ids.length === 0 ? [] : [`Lines in ${table} without ${column}: ${atMostTwenty(ids)}.`];
  return [
    ...says(
      lots.map(({ lot }) => lot),
      'Lots',
      'Paid by',
    ),
    ...says(
      sales.map(({ sale }) => sale),
      'Sales',
      'Taken by',
    ),
  ];
}

function settlements(book: Book, days: Days): Settlement[] {
  const { currency } = book.settings;
  const sides = [...book.partners.values()].map(({ name, sharePercent }) => {
    const isTheirs = (who: string): boolean => nameKey(who) === nameKey(name);
    const lots = book.lots.filter(
      ({ received, paidBy }) => isWithin(days, received) && isTheirs(paidBy),
    );
    const sales = book.sales.filter(
      ({ soldOn, takenBy }) => isWithin(days, soldOn) && isTheirs(takenBy),
    );
    const { takings, commission, fees, postage } = salesAccount(book, sales);
    return {
      partner: name,
      sharePercent,
      paid: roundMoney(sum(lots.map(landedCost)), currency),
      took: takings.minus(sum([commission, fees, postage])),
      minutes: minutesOf(book, days, isTheirs),
    };
  });
  const toShare = sum(sides.map(({ took }) => took)).minus(sum(sides.map(({ paid }) => paid)));
  const shares = splitAmount(
    toShare,
    sides.map(({ sharePercent }) => sharePercent),
    currencyDecimals(currency),
  );
  return sides.map(({ partner, paid, took, minutes }, at) => {
    const share = shares[at] as Exact;
    return { partner, paid, took, minutes, share, owed: share.minus(took).plus(paid) };
  });
}

const minutesOf = (book: Book, days: Days, isTheirs: (who: string) => boolean): Exact =>
  sum(
    [...book.batches.values()]
      .filter(
        (batch) => isWithin(days, batch.poured) && isTheirs(batch.by) && !isUndone(book, batch),
      )
      .map(({ minutes = 0 }) => exact(minutes)),
  );
