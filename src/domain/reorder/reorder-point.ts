import type { Book, Material } from '../book/book.ts';
import { itemOfMaterial } from '../book/find.ts';
import type { Day } from '../kernel/day.ts';
import { Exact, hundred, zero } from '../kernel/exact.ts';
import { answer, notYet, type Result, andThen, wrong } from '../kernel/result.ts';
import { onHand } from '../stock/on-hand.ts';
import { dailyUse } from './daily-use.ts';
import { normalQuantile } from './normal-quantile.ts';

/** What is used while an order is waited for, and how often stock should last. */
export interface LeadTimeDemand {
  /** 0 < service < 100. */
  readonly servicePercent: Exact;
  readonly meanDailyUse: Exact;
  readonly leadDays: Exact;
  readonly sdLeadDays: Exact;
}

/** Stock held against chance over the lead time, where one day's use has the given standard deviation. */
export function safetyStock(demand: LeadTimeDemand, sdDailyUse: Exact): Result<Exact> {
  const { servicePercent, meanDailyUse, leadDays, sdLeadDays } = demand;
  const share = servicePercent.div(hundred).toNumber();
  if (!(share > 0 && share < 1)) {
    return wrong(`service % is ${servicePercent.toString()}. Give more than 0 and less than 100.`);
  }
  const trouble = belowZero({
    'sd of daily use': sdDailyUse,
    'lead days': leadDays,
    'mean daily use': meanDailyUse,
    'sd of lead days': sdLeadDays,
  });
  if (trouble !== undefined) return wrong(trouble);
  return answer(againstChance(demand, sdDailyUse.times(sdDailyUse)));
}

/**
 * z·√(L·σd² + d²·σL²), the textbook form for daily use and lead time that both vary and don't depend on
 * each other.
 */
function againstChance(
  { servicePercent, meanDailyUse, leadDays, sdLeadDays }: LeadTimeDemand,
  varianceDailyUse: Exact,
): Exact {
  const z = new Exact(normalQuantile(servicePercent.div(hundred).toNumber()));
  const waiting = meanDailyUse.times(sdLeadDays);
  return z.times(leadDays.times(varianceDailyUse).plus(waiting.times(waiting)).sqrt());
}

/** Stock at which to order: mean use over the lead time plus safety stock, in stock units. */
export function reorderPoint(book: Book, material: Material, asOf: Day): Result<Exact> {
  const { leadDays } = material;
  if (leadDays === undefined) {
    return notYet(
      `Fill in Lead days for ${material.name} in Materials: days from ordering to having it.`,
    );
  }
  return andThen(dailyUse(book, itemOfMaterial(material), asOf), ({ mean, variance }) => {
    const demand = {
      servicePercent: material.servicePercent ?? book.settings.servicePercent,
      meanDailyUse: mean,
      leadDays,
      sdLeadDays: material.leadDaysSd ?? zero,
    };
    return answer(mean.times(leadDays).plus(againstChance(demand, variance)));
  });
}

/**
 * Packs to order now: none while stock is above the reorder point; at or below it, as many as bring
 * stock back over it, and never fewer than the supplier's least. Fails where there is no pack size.
 */
export function packsToOrder(book: Book, material: Material, asOf: Day): Result<Exact> {
  return andThen(reorderPoint(book, material, asOf), (point) => {
    const stock = onHand(book, itemOfMaterial(material), asOf);
    if (stock.gt(point) || (point.isZero() && stock.isZero())) return answer(zero);
    if (material.packSize === undefined)
      return notYet(`Fill in Pack size for ${material.name} in Materials.`);
    // At the point itself the next order would be due at once, so whole packs that just reach it are one too few.
    const over = point.minus(stock).div(material.packSize).floor().plus(1);
    return answer(Exact.max(over, material.leastPacks ?? zero));
  });
}

/** A sentence for the first argument below 0. */
function belowZero(given: Readonly<Record<string, Exact>>): string | undefined {
  const [what, value] = Object.entries(given).find(([, each]) => each.isNegative()) ?? [];
  return value === undefined ? undefined : `${what} is ${value.toString()}. Give 0 or more.`;
}

/** Economic order quantity √(2·D·S ÷ H) (F. W. Harris, 1913). */
export function orderSize(
  yearlyUse: Exact,
  costPerOrder: Exact,
  yearlyHoldingPerUnit: Exact,
): Result<Exact> {
  const trouble = belowZero({
    'yearly use': yearlyUse,
    'cost per order': costPerOrder,
    'holding cost per unit': yearlyHoldingPerUnit,
  });
  if (trouble !== undefined) return wrong(trouble);
  if (yearlyHoldingPerUnit.isZero()) {
    return {
      ok: false,
      failure: {
        kind: 'divides by nothing',
        sentence:
          'holding cost per unit is 0: without it there is no best order size, the larger the cheaper. Give one above 0.',
      },
    };
  }
  return answer(yearlyUse.times(costPerOrder).times(2).div(yearlyHoldingPerUnit).sqrt());
}
