import type { Book, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import { count } from '../kernel/count.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { LUMPY_INTERVAL } from '../forecast/lumpy.ts';
import { dice } from '../kernel/dice.ts';
import { one, toCell, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { andThen, answer, notYet, type Result } from '../kernel/result.ts';
import { daysWithUse } from './daily-use.ts';
import { reorderPoint } from './reorder-point.ts';
import { simulateStock, type WatchedStock } from './simulate-stock.ts';
import type { StockYear } from './stock-year.ts';
import { playYear, typicalYear } from './year-shown.ts';

/** A reorder point and how often stock lasted with it until the order came. */
export interface CheckedPoint {
  /** In the material's stock unit. */
  readonly point: number;
  /** Share of simulated waits for an order without running out, in %. */
  readonly servicePercent: number;
  /** One simulated year for a picture, typical of the usual point; the days of use are the same for both. */
  readonly year: StockYear;
}

export interface ServiceCheck {
  readonly askedPercent: number;
  /** By the usual formula, which takes use to vary as the normal curve does. */
  readonly usual: CheckedPoint;
  /** The least point that keeps the service when the material's own past days are played again. */
  readonly own: CheckedPoint;
  readonly trust: 'usual' | 'own';
  /** Which to trust and why, for the maker. */
  readonly sentence: string;
}

const YEAR = 365;
const YEARS = 250;
/** The point is sought in one set of years and judged in another, or it would flatter itself. */
const SEEK_SEED = 11;
const JUDGE_SEED = 23;
/** So near to the service asked the usual formula is as good (percentage points). */
const NEAR_ENOUGH = 1;
const HALVINGS = 16;
/** Days; where the pack is not known, an order is taken to be a month's use. */
const MONTH = 30;

/**
 * Tries the reorder point of the usual formula on years put together at random from the History days,
 * each day on its own, and seeks the point that would have kept the Service %. The same on every run.
 * Fails where REORDERPOINT does, and where nothing was used in the History days. Kept for the book,
 * since it takes a while.
 */
export function serviceCheck(book: Book, material: Material, asOf: Day): Result<ServiceCheck> {
  const key = `${String(wholeDay(asOf))} ${nameKey(material.name)}`;
  return kept(book, key, () => workOut(book, material, asOf));
}

const kept = oncePerKey<Book, Result<ServiceCheck>>();

function workOut(book: Book, material: Material, asOf: Day): Result<ServiceCheck> {
  return andThen(reorderPoint(book, material, asOf), (usual) =>
    andThen(watched(book, material, asOf), (stock) => {
      const askedPercent = toCell(material.servicePercent ?? book.settings.servicePercent);
      const checked = {
        askedPercent,
        ...judge(
          { ...stock, point: toCell(usual) },
          { ...stock, point: leastPoint(stock, askedPercent) },
        ),
      };
      const trust = checked.usual.servicePercent >= askedPercent - NEAR_ENOUGH ? 'usual' : 'own';
      return answer({ ...checked, trust, sentence: sentenceFor(checked, trust, material, stock) });
    }),
  );
}

/** The material's shelf with a point still to be set. */
function watched(book: Book, material: Material, asOf: Day): Result<WatchedStock> {
  return andThen(daysWithUse(book, itemOfMaterial(material), asOf), (used) => {
    const days = book.settings.historyDays;
    if (used.length === 0) {
      return notYet(
        `${material.name} was not used in the last ${days} days, so there is nothing to try a reorder point on.`,
      );
    }
    const uses = [...used.map(toCell), ...new Array<number>(days - used.length).fill(0)];
    return answer({
      uses,
      leadDays: toCell(material.leadDays ?? zero),
      sdLeadDays: toCell(material.leadDaysSd ?? zero),
      lot: orderOf(material) ?? monthOf(uses),
      point: 0,
    });
  });
}

/** The least that the supplier sells; undefined where the pack is not known. */
function orderOf({ packSize, leastPacks }: Material): number | undefined {
  return packSize && toCell(packSize.times(leastPacks?.gt(one) === true ? leastPacks : one));
}

const monthOf = (uses: readonly number[]): number =>
  (uses.reduce((sum, use) => sum + use, 0) / uses.length) * MONTH;

function judge(usual: WatchedStock, own: WatchedStock): Pick<ServiceCheck, 'usual' | 'own'> {
  const usualPercent = playYears(usual, JUDGE_SEED);
  const year = typicalYear(usual, usualPercent);
  const checked = (stock: WatchedStock, servicePercent: number): CheckedPoint => ({
    point: stock.point,
    servicePercent,
    year: playYear(stock, year).path,
  });
  return { usual: checked(usual, usualPercent), own: checked(own, playYears(own, JUDGE_SEED)) };
}

/** Share of waits, in %, in which stock lasted. */
function playYears(packed: WatchedStock, seed: number): number {
  const roll = dice(seed);
  // A pack that lasts for years would leave too few waits to judge by; it changes how often one
  // waits, not how sure stock is to last.
  const stock = { ...packed, lot: Math.min(packed.lot, monthOf(packed.uses)) };
  let waits = 0;
  let covered = 0;
  for (let run = 0; run < YEARS; run += 1) {
    // Nobody knows where between two orders the year begins.
    const start = stock.point + stock.lot * roll();
    const played = simulateStock(stock, start, YEAR, roll);
    waits += played.waits;
    covered += played.covered;
  }
  return waits === 0 ? 100 : (covered / waits) * 100;
}

/** The least point, by halving, that keeps the service; none is higher than use at its worst all through. */
function leastPoint(stock: WatchedStock, askedPercent: number): number {
  let tooLow = 0;
  let enough = Math.max(...stock.uses) * (stock.leadDays + 4 * stock.sdLeadDays + 2);
  for (let halving = 0; halving < HALVINGS; halving += 1) {
    const point = (tooLow + enough) / 2;
    if (playYears({ ...stock, point }, SEEK_SEED) >= askedPercent) enough = point;
    else tooLow = point;
  }
  return roundedUp(enough);
}

/** Three digits are more than chance allows to be told apart. */
function roundedUp(value: number): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  return Number((Math.ceil(value / step) * step).toPrecision(3));
}

function sentenceFor(
  { askedPercent, usual, own }: Pick<ServiceCheck, 'askedPercent' | 'usual' | 'own'>,
  trust: ServiceCheck['trust'],
  { name, unit }: Material,
  { uses }: WatchedStock,
): string {
  const amount = (value: number): string =>
    `${Number(value.toPrecision(3))}${unit === 'each' ? '' : ` ${unit}`}`;
  const share = (value: number): string => `${value.toFixed(0)} of 100`;
  const tried = `With ${amount(usual.point)}, the reorder point of the usual formula, ${name} lasted in ${share(usual.servicePercent)} simulated waits for an order; ${askedPercent} were asked for.`;
  if (trust === 'usual') return `${tried} Trust it.`;
  const days = uses.filter((use) => use > 0).length;
  const why =
    uses.length / days >= LUMPY_INTERVAL
      ? `It is used in lumps, on ${days} of ${count(uses.length, 'day')}, which the formula does not foresee.`
      : `When stock is seen to be at the point, the day's use has taken it below, which the formula does not foresee.`;
  return `${tried} ${why} Trust ${amount(own.point)}, which lasted in ${share(own.servicePercent)}.`;
}
