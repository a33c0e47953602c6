import type { Book, Material } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, sum, zero } from '../kernel/exact.ts';
import { nameKey } from '../kernel/names.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { currencyDecimals, roundMoney } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { benchUnitOf } from '../measure/units.ts';
import { onBench } from '../recipe/hand-amount.ts';
import { entryId } from './posting.ts';

/** A delivery: several lots that came together and share the freight. */
export interface Delivery {
  /** Made once when the form opens; lots without a number of their own are named after it. */
  readonly id: string;
  readonly received: Day;
  readonly supplier: string;
  readonly freight: Exact;
  /** How the freight is shared out. */
  readonly shareFreightBy: 'value' | 'weight';
  readonly lines: readonly DeliveredLine[];
}

export interface DeliveredLine {
  readonly material: Material;
  /** The supplier's or your own lot number; "" takes one from the delivery's id. */
  readonly lot: string;
  /** In the material's stock unit. */
  readonly quantity: Exact;
  readonly paid: Exact;
  readonly bestBefore: Day | undefined;
}

/** A line to append to Lots. */
export interface NewLot extends DeliveredLine {
  readonly received: Day;
  readonly freight: Exact;
  readonly supplier: string;
}

/** Works out the lines that a delivery adds to Lots; shares of the freight sum to it exactly. */
export function receiveDelivery(book: Book, delivery: Delivery): Result<NewLot[]> {
  const trouble = troubleWith(book, delivery);
  if (trouble !== undefined) return wrong(trouble);
  const { currency } = book.settings;
  const weights = delivery.lines.map((line) =>
    delivery.shareFreightBy === 'value' ? line.paid : weightOf(line),
  );
  const freight = splitAmount(
    roundMoney(delivery.freight, currency),
    weights,
    currencyDecimals(currency),
  );
  return answer(
    delivery.lines.map((line, index) => ({
      ...line,
      lot: lotOf(line, delivery, index),
      received: delivery.received,
      freight: freight[index] ?? zero,
      supplier: delivery.supplier,
    })),
  );
}

const lotOf = (line: DeliveredLine, delivery: Delivery, index: number): string =>
  line.lot === '' ? entryId(delivery.id, index + 1) : line.lot;

/** Grams, or as many millilitres; things counted in each weigh nothing here, since nobody knows. */
function weightOf({ material, quantity }: DeliveredLine): Exact {
  const measured = onBench(quantity, material.unit);
  const bench = benchUnitOf(material.unit);
  if (bench === 'each') return zero;
  return bench === 'ml' ? measured.times(material.densityGPerMl ?? 1) : measured;
}

function troubleWith(book: Book, delivery: Delivery): string | undefined {
  if (delivery.lines.length === 0) return 'Nothing was received: give at least one material.';
  if (delivery.freight.lt(0)) return `Freight is ${delivery.freight.toString()}. Give 0 or more.`;
  const weighed = sum(delivery.lines.map(weightOf));
  if (delivery.shareFreightBy === 'weight' && weighed.isZero() && !delivery.freight.isZero()) {
    return 'Nothing in this delivery has a weight. Share the freight by value instead.';
  }
  const taken = new Set(book.lots.map(({ lot }) => nameKey(lot)));
  for (const [index, line] of delivery.lines.entries()) {
    const lot = lotOf(line, delivery, index);
    if (taken.has(nameKey(lot)))
      return `Lot ${lot} is in Lots already. Give this one another number.`;
    taken.add(nameKey(lot));
    if (!line.quantity.gt(0))
      return `Quantity of ${line.material.name} is ${line.quantity.toString()}. Give more than 0.`;
    if (line.paid.lt(0))
      return `Paid for ${line.material.name} is ${line.paid.toString()}. Give 0 or more.`;
    if (line.bestBefore !== undefined && line.bestBefore < delivery.received) {
      return `${line.material.name} is past its best before on the day it came. Check the date.`;
    }
  }
  return undefined;
}
