import { findMaterial } from '../src/domain/book/find.ts';
import { type Exact, exact, hundred, one, toCell, zero } from '../src/domain/kernel/exact.ts';
import { andThen } from '../src/domain/kernel/result.ts';
import {
  orderSize as economicOrder,
  reorderPoint as pointOf,
  safetyStock as stockFor,
} from '../src/domain/reorder/reorder-point.ts';
import { type CheckedPoint, serviceCheck as checkOf } from '../src/domain/reorder/service-check.ts';
import { daysWithout, weeklyLows } from '../src/domain/reorder/stock-year.ts';
import { settle, settleNumber } from './answer.ts';
import {
  countArgument,
  dayArgument,
  exactArgument,
  nameArgument,
  optionalExact,
} from './arguments.ts';
import { bookArgument } from './books.ts';
import { CellFailure } from './failure.ts';

/**
 * Stock of a material at which to order: mean use over the lead time plus safety stock.
 * @customfunction REORDERPOINT
 * @param {any} material Name of the material, as in Materials.
 * @param {any} book The cell named Book.
 * @param {any} [asOf] Looks back from this day; today if blank.
 * @returns {number} In the material's stock unit.
 */
export function reorderPoint(material: any, book: any, asOf?: any): number {
  const pourBook = bookArgument(book);
  const day = dayArgument(asOf, 'as of');
  return settleNumber(
    andThen(findMaterial(pourBook, nameArgument(material, 'material')), (found) =>
      pointOf(pourBook, found, day),
    ),
  );
}

/**
 * Tries a material's reorder point on simulated years of its own use, beside the point that those days ask for.
 * @customfunction SERVICECHECK
 * @param {any} material Name of the material, as in Materials.
 * @param {any} book The cell named Book.
 * @param {any} [asOf] Looks back from this day; today if blank.
 * @returns {any[][]} Line, Usual formula, Own days: service, points, which to trust and why, then the lowest stock of each week of a simulated year.
 */
export function serviceCheck(material: any, book: any, asOf?: any): any[][] {
  const pourBook = bookArgument(book);
  const day = dayArgument(asOf, 'as of');
  const { askedPercent, usual, own, trust, sentence } = settle(
    andThen(findMaterial(pourBook, nameArgument(material, 'material')), (found) =>
      checkOf(pourBook, found, day),
    ),
  );
  const both = <T>(of: (checked: CheckedPoint) => T): T[] => [of(usual), of(own)];
  const [usualLows = [], ownLows = []] = both(({ year }) => weeklyLows(year).map(withoutDrift));
  return [
    ['Line', 'Usual formula', 'Own days'],
    ['Service % asked', askedPercent, askedPercent],
    ['Reorder point', ...both(({ point }) => point)],
    ['Service %', ...both(({ servicePercent }) => servicePercent)],
    ['Days without stock', ...both(({ year }) => daysWithout(year))],
    ['Trust it', trust === 'usual' ? 'yes' : 'no', trust === 'own' ? 'yes' : 'no'],
    ['In words', sentence, ''],
    ...usualLows.map((low, week) => [`Week ${week + 1}`, low, ownLows[week] ?? '']),
  ];
}

/**
 * Stock to hold against chance over the lead time.
 * @customfunction SAFETYSTOCK
 * @param {any} servicePercent How often stock should last until the order comes, such as 95.
 * @param {any} sdDailyUse Standard deviation of one day's use.
 * @param {any} leadDays Days from ordering to having it.
 * @param {any} [meanDailyUse] Mean use a day; needed where lead days vary.
 * @param {any} [sdLeadDays] Standard deviation of the lead days; 0 if blank.
 * @returns {number} In the unit of the use.
 */
export function safetyStock(
  servicePercent: any,
  sdDailyUse: any,
  leadDays: any,
  meanDailyUse?: any,
  sdLeadDays?: any,
): number {
  const sdLead = optionalExact(sdLeadDays, 'sd of lead days') ?? zero;
  const readMean = sdLead.gt(zero) ? exactArgument : optionalExact;
  return settleNumber(
    stockFor(
      {
        servicePercent: serviceArgument(servicePercent),
        meanDailyUse: readMean(meanDailyUse, 'mean daily use') ?? zero,
        leadDays: exactArgument(leadDays, 'lead days'),
        sdLeadDays: sdLead,
      },
      exactArgument(sdDailyUse, 'sd of daily use'),
    ),
  );
}

/** A cell that shows 95 % holds 0.95; a service below 1 % can't be meant (contract §2). */
function serviceArgument(argument: any): Exact {
  const percent = exact(countArgument(argument, 'service %'));
  if (percent.gt(zero) && percent.lt(one)) {
    const meant = percent.times(hundred);
    const hint = meant.gt(one)
      ? `${meant.toString()} if ${meant.toString()} % is meant`
      : '1 or more';
    throw new CellFailure('#VALUE!', `service % is ${percent.toString()}. Give ${hint}.`);
  }
  return percent;
}

/**
 * The order size at which ordering and holding together cost least (economic order quantity).
 * @customfunction ORDERSIZE
 * @param {any} yearlyUse Units used in a year.
 * @param {any} costPerOrder What placing one order costs.
 * @param {any} holdingPerUnit What holding one unit for a year costs.
 * @returns {number} Units in one order.
 */
export function orderSize(yearlyUse: any, costPerOrder: any, holdingPerUnit: any): number {
  return settleNumber(
    economicOrder(
      exactArgument(yearlyUse, 'yearly use'),
      exactArgument(costPerOrder, 'cost per order'),
      exactArgument(holdingPerUnit, 'holding cost per unit'),
    ),
  );
}

/** Millionths are finer than any scale; beyond them a simulated sum shows only binary drift. */
const withoutDrift = (quantity: number): number => toCell(exact(quantity).toDecimalPlaces(6));
