import type { Book, Design, Fair } from '../book/book.ts';
import { itemOfBars } from '../book/find.ts';
import { barCost } from '../cost/bar-cost.ts';
import { count } from '../kernel/count.ts';
import { wholeDay } from '../kernel/day.ts';
import { type Exact, exact, hundred, notBelowZero, one, toCell, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { USUAL_BARS } from '../recipe/plain-plan.ts';
import { onHand } from '../stock/on-hand.ts';
import { bestToBring, bringing, type Brought, type Stakes } from './bring.ts';
import type { CountDemand } from './count-demand.ts';
import { demandFrom, type PastFairs, pastFairs, soldAtFairs } from './fair-demand.ts';

/** What to bring of one design, and what to expect of it. Money in the Settings' currency. */
export interface LoadLine extends Brought {
  readonly design: Design;
  readonly demand: CountDemand;
  readonly stakes: Stakes;
  /** On hand before the fair opens. */
  readonly have: Exact;
  /** Whole bars still to pour. */
  readonly pour: number;
}

export interface FairLoad {
  readonly fair: Fair;
  /** By name; the most to bring first. */
  readonly lines: readonly LoadLine[];
  /** What had to be assumed, a sentence each. */
  readonly assumed: readonly string[];
}

/** Fewer fairs than this say little of how much demand varies. */
const ENOUGH_FAIRS = 3;

/**
 * What to bring to a fair, design by design: the number of the newsvendor's rule for what was asked for at the fairs
 * before it, in proportion to their hours. Sold, a bar earns its price net of tax and card fees less its full cost;
 * left over it loses what Leftover worth % leaves of that cost. Fails where no fair before it sold anything.
 */
export function fairLoad(book: Book, fair: Fair): Result<FairLoad> {
  const past = pastFairs(book, fair);
  if (past.fairs.length === 0)
    return notYet(
      `No fair before ${fair.fair} has sales, so nothing tells what is asked for. Record the sales of a fair, with its name, in Sales.`,
    );
  const assumed = assumptionsOf(fair, past);
  const lines: LoadLine[] = [];
  for (const design of book.designs.values()) {
    const demand = demandOf(book, fair, design, past, assumed);
    if (demand === undefined) continue;
    const stakes = stakesOf(book, fair, design, assumed);
    if (!stakes.ok) return stakes;
    if (stakes.value !== undefined) lines.push(lineOf(book, fair, design, demand, stakes.value));
  }
  lines.sort((a, b) => b.bring - a.bring || compareNames(a.design.name, b.design.name));
  return answer({ fair, lines, assumed });
}

function lineOf(
  book: Book,
  fair: Fair,
  design: Design,
  demand: CountDemand,
  stakes: Stakes,
): LoadLine {
  const brought = bringing(demand, stakes, bestToBring(demand, stakes));
  const have = onHand(book, itemOfBars(design), wholeDay(fair.opens) - 1);
  const pour = notBelowZero(exact(brought.bring).minus(have)).ceil().toNumber();
  return { design, demand, stakes, have, pour, ...brought };
}

/** What is asked for of a design; undefined where nobody means to bring it. */
function demandOf(
  book: Book,
  fair: Fair,
  design: Design,
  past: PastFairs,
  assumed: string[],
): CountDemand | undefined {
  const sold = soldAtFairs(design, fair, past);
  if (sold.length >= ENOUGH_FAIRS) return demandFrom(sold);
  if (sold.length > 0) {
    const varies = sold.length === 1 ? ' How much demand varies is taken from its size alone.' : '';
    assumed.push(
      `${design.name} was at ${count(sold.length, 'fair')} only before ${fair.fair}: its demand is taken from ${sold.length === 1 ? 'that one' : 'those'}.${varies}`,
    );
    return demandFrom(sold);
  }
  if (!isMeantFor(book, fair, design)) return undefined;
  const others = [...book.designs.values()]
    .map((other) => soldAtFairs(other, fair, past))
    .filter((each) => each.length > 0);
  assumed.push(
    `${design.name} was at no fair yet: it is taken to sell as the other designs did at their first.`,
  );
  return demandFrom(others.map(([first = 0]) => first));
}

const isMeantFor = (book: Book, fair: Fair, design: Design): boolean =>
  book.plan.some((line) => line.design === design && nameKey(line.fair) === nameKey(fair.fair)) ||
  onHand(book, itemOfBars(design), wholeDay(fair.opens) - 1).gt(0);

/** Undefined, and said among what is assumed, where a design has no price. */
function stakesOf(
  book: Book,
  fair: Fair,
  design: Design,
  assumed: string[],
): Result<Stakes | undefined> {
  const { price } = design;
  if (price === undefined) {
    assumed.push(`${design.name} has no Price in Designs, so it is left out.`);
    return answer(undefined);
  }
  return andThen(barCost(book, design, USUAL_BARS, fair.opens), ({ perBar: cost }) => {
    const worth = book.settings.leftoverWorthPercent.div(hundred);
    return answer({
      earned: toCell(netOf(book, price).minus(cost)),
      lost: toCell(cost.times(one.minus(worth))),
    });
  });
}

/** What stays of the price of one bar, after tax and after card fees as Settings say. */
function netOf({ settings }: Book, price: Exact): Exact {
  const { salesTaxPercent, pricesIncludeTax, cardFeePercent, cardFeeFixed } = settings;
  const withTax = one.plus(salesTaxPercent.div(hundred));
  const [net, paid] = pricesIncludeTax
    ? [price.div(withTax), price]
    : [price, price.times(withTax)];
  const fee = price.isZero() ? zero : paid.times(cardFeePercent).div(hundred).plus(cardFeeFixed);
  return net.minus(fee);
}

function assumptionsOf(fair: Fair, { fairs }: PastFairs): string[] {
  const few =
    fairs.length < ENOUGH_FAIRS
      ? [
          `Only ${count(fairs.length, 'fair')} before ${fair.fair} ${fairs.length === 1 ? 'has' : 'have'} sales: three or more would say how much demand varies.`,
        ]
      : [];
  const withoutHours = [fair, ...fairs.map((past) => past.fair)].filter(
    ({ hours }) => (hours ?? 0) === 0,
  );
  const hours = withoutHours.length === 0 ? [] : [hoursSentence(fair, withoutHours)];
  return [...few, ...hours];
}

const hoursSentence = (fair: Fair, without: readonly Fair[]): string =>
  without.includes(fair)
    ? `${fair.fair} has no Hours in Fairs: it is taken to be as long as those before it.`
    : `${without.map((each) => each.fair).join(', ')} ${without.length === 1 ? 'has' : 'have'} no Hours in Fairs: taken to be as long as ${fair.fair}.`;
