import type { Book, Material } from '../book/book.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import { andThen, answer, notYet, type Result, wrong } from '../kernel/result.ts';
import { explode, type Need } from './explode.ts';
import { grossToNet } from './gross-to-net.ts';
import { daysAhead, type Order, ordersFor } from './orders.ts';
import { hasLayers, plannedBatches } from '../schedule/planned-batches.ts';
import { shelfOverTime } from './shelf-over-time.ts';

/** What the plan takes of one material, what is there, and what to buy. In its stock unit. */
export interface SupplyLine {
  readonly material: Material;
  readonly gross: Exact;
  /** On hand and still good on the day of the first need; below zero where stock is owed. */
  readonly onHand: Exact;
  /** On hand, but past its best-before date before the plan gets to it. */
  readonly expiring: Exact;
  /** Missing in all, each shortage after the stock of its day. */
  readonly net: Exact;
  /** By the day of need. */
  readonly days: readonly SupplyDay[];
  /** In order of time. Empty with nothing to buy or no Pack size. */
  readonly orders: readonly Order[];
  /** Undefined where Pack size is blank and something is missing. */
  readonly packs: Exact | undefined;
  /** Undefined where packs or Pack price are not known. */
  readonly cost: Exact | undefined;
  /** Last day to order; undefined with nothing missing. */
  readonly orderBy: Day | undefined;
  /** The last day to order is over. */
  readonly late: boolean;
}

export interface SupplyDay {
  readonly day: Day;
  readonly gross: Exact;
  readonly net: Exact;
  /** Left on hand after it. */
  readonly projected: Exact;
}

export interface SupplyPlan {
  /** What must be ordered first stands first; then what need not be bought. */
  readonly lines: readonly SupplyLine[];
  /** What is missing in the tables or goes off too soon, a sentence each. */
  readonly notes: readonly SupplyNote[];
}

export interface SupplyNote {
  readonly material: Material;
  readonly sentence: string;
}

export interface SupplyOptions {
  /**
   * Melt and lay leftover soap and spare pieces first, an earlier line's too. Off by default, as in
   * MELTSHEET and MATERIALS: a shopping list that counts on every spare tile is soon short.
   */
  readonly reuse: boolean;
}

/**
 * What to buy for the batches of the calendar from a day on, how much and by when. What finds no day there
 * takes nothing. Fails where Plan has no line or a design has no layers.
 */
export function supplies(
  book: Book,
  from: Day,
  { reuse }: SupplyOptions = { reuse: false },
): Result<SupplyPlan> {
  const today = wholeDay(from);
  return andThen(plannedBatches(book, today), ({ open, planned }) => {
    if (open.length === 0)
      return notYet(`No line of Plan is to be ready on ${isoDate(today)} or later. Add one.`);
    const bare = open.find((line) => line.barsToMake > 0 && !hasLayers(line))?.line;
    if (bare !== undefined)
      return wrong(
        `Plan line ${bare.planLine}: ${bare.design.name} has no lines in Layers. Add what one bar is made of.`,
      );
    return andThen(explode(book, planned.batches, today, reuse), (needs) => {
      const lines = [...needs]
        .map(([material, list]) => supplyLine(book, material, list, today))
        .sort(byOrderDay);
      return answer({ lines, notes: lines.flatMap(notesOn) });
    });
  });
}

function supplyLine(book: Book, material: Material, needs: readonly Need[], from: Day): SupplyLine {
  const { bufferDays } = book.settings;
  const shelf = shelfOverTime(book, material, needs, from);
  const netted = grossToNet(shelf.onHand, shelf.buckets);
  const days = shelf.buckets.map(({ day, gross }, index): SupplyDay => ({
    day,
    gross,
    net: netted[index]?.net ?? zero,
    projected: netted[index]?.projected ?? zero,
  }));
  const shortages = days
    .filter(({ net }) => !net.isZero())
    .map(({ day, net }) => ({ day, quantity: net }));
  const orders = ordersFor(material, shortages, bufferDays);
  const net = sum(shortages.map(({ quantity }) => quantity));
  const packs =
    material.packSize === undefined && !net.isZero()
      ? undefined
      : sum(orders.map((order) => order.packs));
  const first = shortages[0];
  const orderBy = first && first.day - daysAhead(material, bufferDays);
  return {
    material,
    gross: sum(days.map(({ gross }) => gross)),
    onHand: shelf.stillGood,
    expiring: sum(shelf.buckets.map(({ losses }) => losses)),
    net,
    days,
    orders,
    packs,
    cost: packs?.isZero() === true ? zero : packs && material.packPrice?.times(packs),
    orderBy,
    late: orderBy !== undefined && orderBy < from,
  };
}

function byOrderDay(a: SupplyLine, b: SupplyLine): number {
  if (a.orderBy !== b.orderBy) return (a.orderBy ?? Infinity) - (b.orderBy ?? Infinity);
  return compareNames(a.material.name, b.material.name);
}

function notesOn({ material, net, expiring }: SupplyLine): SupplyNote[] {
  const { name, unit, packSize, packPrice, leadDays } = material;
  const blank = (column: string): string => `Fill in ${column} for ${name} in Materials.`;
  const dated = `${expiring.toString()}${unit === 'each' ? '' : ` ${unit}`} of ${name} will be past its best before when the plan needs it.`;
  const sentences = [
    ...(expiring.isZero() ? [] : [dated]),
    ...(packSize === undefined && !net.isZero() ? [blank('Pack size')] : []),
    ...(packPrice === undefined && !net.isZero() ? [blank('Pack price')] : []),
    ...(leadDays === undefined && !net.isZero()
      ? [`${blank('Lead days')} Until then it is taken to come at once.`]
      : []),
  ];
  return sentences.map((sentence) => ({ material, sentence }));
}
