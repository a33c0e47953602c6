import type { Book, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { Exact, zero } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import { packsToOrder, reorderPoint } from '../reorder/reorder-point.ts';
import { onHand } from '../stock/on-hand.ts';
import { type Advice, byWhen } from './advice.ts';
import { supplies } from '../supplies/supplies.ts';

/** A material to order, by the plan or by its reorder point or by both. */
interface ToOrder {
  readonly material: Material;
  readonly packs: Exact | undefined;
  readonly due: Day;
  readonly reason: string;
}

/** Orders within this many days of the supplier's first go with it. */
const TOGETHER_DAYS = 7;

/** Materials whose reorder point can't be worked out yet: nothing tells when their stock is low. */
export function withoutPoint(book: Book, today: Day): Material[] {
  return [...book.materials.values()].filter((material) => !reorderPoint(book, material, today).ok);
}

/** One advice for each supplier, since what comes together shares the freight. */
export function orderAdvice(book: Book, today: Day): Advice[] {
  const bySupplier = new Map<string, ToOrder[]>();
  for (const order of toOrder(book, today)) {
    const { supplier, name } = order.material;
    // Who sells it is not known: then it is an order of its own.
    const key = supplier === '' ? `${name} alone` : supplier;
    bySupplier.set(key, [...(bySupplier.get(key) ?? []), order]);
  }
  return [...bySupplier.values()].map((orders) => oneOrder(orders, today));
}

function oneOrder(orders: readonly ToOrder[], today: Day): Advice {
  const due = Math.min(...orders.map((order) => order.due));
  const together = orders
    .filter((order) => order.due <= due + TOGETHER_DAYS)
    .sort((a, b) => a.due - b.due || compareNames(a.material.name, b.material.name));
  const [first] = together;
  const supplier = first?.material.supplier ?? '';
  const [only, ...others] = together.map(({ material }) => material.name);
  const what = others.length === 0 ? (only ?? '') : `${String(together.length)} materials`;
  return {
    kind: 'order',
    title: supplier === '' ? `Order ${what}` : `Order ${what} from ${supplier}`,
    reasons: together.map(
      (order) => `${amountOf(order)}, ${byWhen(order.due, today)}. ${order.reason}`,
    ),
    due,
  };
}

function amountOf({ material, packs }: ToOrder): string {
  if (packs === undefined) return material.name;
  return `${packs.toString()} ${packs.eq(1) ? 'pack' : 'packs'} of ${material.name}`;
}

function toOrder(book: Book, today: Day): ToOrder[] {
  const planned = plannedOrders(book, today);
  return [...book.materials.values()].flatMap((material) => {
    const plan = planned.get(material);
    const low = lowStock(book, material, today);
    if (low === undefined || plan === undefined) return low ?? plan ?? [];
    const packs = plan.packs && low.packs ? Exact.max(plan.packs, low.packs) : undefined;
    return {
      ...low,
      packs,
      due: Math.min(low.due, plan.due),
      reason: `${low.reason} ${plan.reason}`,
    };
  });
}

function plannedOrders(book: Book, today: Day): Map<Material, ToOrder> {
  const plan = supplies(book, today);
  const orders = new Map<Material, ToOrder>();
  for (const { material, net, packs, orderBy } of plan.ok ? plan.value.lines : []) {
    if (orderBy === undefined) continue;
    const reason = `The plan is short of ${shown(net, material)}.`;
    orders.set(material, { material, packs, due: orderBy, reason });
  }
  return orders;
}

function lowStock(book: Book, material: Material, today: Day): ToOrder | undefined {
  const packs = packsToOrder(book, material, today);
  const point = reorderPoint(book, material, today);
  // Without a pack size the packs are not known, yet stock may be low all the same.
  const stock = onHand(book, itemOfMaterial(material), today);
  const isLow = packs.ok ? packs.value.gt(zero) : point.ok && stock.lte(point.value);
  if (!isLow || !point.ok) return undefined;
  return {
    material,
    packs: packs.ok ? packs.value : undefined,
    due: today,
    reason: `${shown(stock, material)} on hand; order again at ${shown(point.value, material)} or less by the usual formula; Reorder tries it on your own days.`,
  };
}

/** Rounded up to whole units: nobody orders by the tenth of a gram. */
const shown = (quantity: Exact, { unit }: Material): string =>
  unit === 'each' ? quantity.ceil().toString() : `${quantity.ceil().toString()} ${unit}`;
