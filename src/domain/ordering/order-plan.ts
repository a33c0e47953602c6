import type { Book, Lot, Material } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact, toCell, zero } from '../kernel/exact.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { currencyDecimals } from '../money/currency.ts';
import { splitAmount } from '../money/split.ts';
import { daysAhead } from '../supplies/orders.ts';
import { supplies, type SupplyLine, type SupplyOptions } from '../supplies/supplies.ts';
import { joinOrders, type Lack, type PlacedOrder, type Wanted } from './join-orders.ts';
import type { Carriage } from './one-order.ts';
import { inMillionths, inMoney, packPricesOf } from './pack-prices.ts';

/** One material in one order. Money in the Settings' currency. */
export interface OrderLine {
  /** Blank where the material has none. */
  readonly supplier: string;
  /** The day to place the order: never after that of SUPPLIES. */
  readonly orderBy: Day;
  readonly material: Material;
  /** Undefined where Pack size is blank. */
  readonly packs: number | undefined;
  /** Of all packs; undefined where packs or their price are not known. */
  readonly cost: Exact | undefined;
  /** Its share of the order's carriage, by cost. */
  readonly carriage: Exact;
}

/**
 * The orders for what SUPPLIES says is missing: those of one supplier joined where that costs less in all, carriage,
 * free carriage and prices of larger orders counted, and nothing ordered so early that it would not keep (as long as
 * its newest dated lot). By day, supplier and material. Fails where SUPPLIES does.
 */
export function orderPlan(book: Book, from: Day, options: SupplyOptions): Result<OrderLine[]> {
  return andThen(supplies(book, from, options), ({ lines }) => {
    const missing = lines.filter(({ net }) => !net.isZero());
    const groups = new Map<string, SupplyLine[]>();
    for (const line of missing) {
      const key = groupOf(line.material);
      groups.set(key, [...(groups.get(key) ?? []), line]);
    }
    const ordered = [...groups.values()].flatMap((group) => ordersAt(book, group));
    return answer(ordered.sort(byDay));
  });
}

/** Materials without a supplier have nobody in common. */
const groupOf = ({ supplier, name }: Material): string =>
  supplier === '' ? `of ${nameKey(name)}` : `at ${nameKey(supplier)}`;

const byDay = (a: OrderLine, b: OrderLine): number =>
  a.orderBy - b.orderBy ||
  compareNames(a.supplier, b.supplier) ||
  compareNames(a.material.name, b.material.name);

/** What one supplier is to send. */
function ordersAt(book: Book, group: readonly SupplyLine[]): OrderLine[] {
  const known = group.flatMap((line) => {
    const { packSize } = line.material;
    return packSize === undefined ? [] : [{ line, packSize }];
  });
  const wanted = known.map(({ line, packSize }): Wanted => ({
    prices: packPricesOf(line.material),
    packSize: toCell(packSize),
    lacks: lacksOf(book, line),
  }));
  const orders = joinOrders(wanted, carriageOf(group[0]?.material));
  const supplier = supplierOf(group);
  const placed = orders.flatMap((order) =>
    linesOf(
      book,
      order,
      known.map(({ line }) => line),
    ),
  );
  const unknown = group.filter(({ material }) => material.packSize === undefined);
  return [
    ...placed.map((line) => ({ supplier, ...line })),
    ...unknown.map(({ material, orderBy = 0 }) => ({
      ...{ supplier, orderBy, material },
      ...{ packs: undefined, cost: undefined, carriage: zero },
    })),
  ];
}

const supplierOf = ([first]: readonly SupplyLine[]): string =>
  first?.material.terms?.supplier ?? first?.material.supplier ?? '';

const carriageOf = (material: Material | undefined): Carriage => ({
  carriage: inMillionths(material?.terms?.carriage ?? zero),
  freeFrom: material?.terms?.freeFrom ? inMillionths(material.terms.freeFrom) : Infinity,
});

function lacksOf(book: Book, { material, days }: SupplyLine): Lack[] {
  const ahead = daysAhead(material, book.settings.bufferDays);
  const keeps = daysItKeeps(book, material);
  return days
    .filter(({ net }) => !net.isZero())
    .map(({ day, net }) => ({
      quantity: toCell(net),
      orderBy: day - ahead,
      notBefore: Math.min(day - ahead, day - daysAhead(material, 0) - keeps),
    }));
}

/** How long a purchase keeps, by the newest lot that has a best before; without one nothing says. */
function daysItKeeps(book: Book, material: Material): number {
  const dated = book.lots.filter(
    (lot): lot is Lot & { bestBefore: Day } =>
      lot.material === material && lot.bestBefore !== undefined,
  );
  const newest = dated.reduce<(typeof dated)[number] | undefined>(
    (best, lot) => (best === undefined || lot.received > best.received ? lot : best),
    undefined,
  );
  return newest === undefined
    ? Infinity
    : Math.max(0, wholeDay(newest.bestBefore) - wholeDay(newest.received));
}

function linesOf(
  { settings }: Book,
  { day, of, packs, carriage }: PlacedOrder,
  lines: readonly SupplyLine[],
): Omit<OrderLine, 'supplier'>[] {
  const materials = of.map((at) => (lines[at] as SupplyLine).material);
  const costs = materials.map((material, at) => costOf(material, packs[at] ?? 0));
  const shares = splitAmount(
    inMoney(carriage),
    costs.map((cost) => cost ?? zero),
    currencyDecimals(settings.currency),
  );
  return materials.map((material, at) => ({
    orderBy: day,
    material,
    packs: packs[at],
    cost: costs[at],
    carriage: shares[at] ?? zero,
  }));
}

function costOf(material: Material, packs: number): Exact | undefined {
  const price = packPricesOf(material).at(packs);
  return price === undefined ? undefined : inMoney(price).times(packs);
}
