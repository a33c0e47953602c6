import { findMaterial } from '../../src/domain/book/find.ts';
import { isoDate } from '../../src/domain/kernel/day.ts';
import { exact, toCell, zero } from '../../src/domain/kernel/exact.ts';
import { andThen, answer, wrong } from '../../src/domain/kernel/result.ts';
import { orderPlan } from '../../src/domain/ordering/order-plan.ts';
import { orderSize, reorderPoint, safetyStock } from '../../src/domain/reorder/reorder-point.ts';
import {
  type CheckedPoint,
  serviceCheck,
  type ServiceCheck,
} from '../../src/domain/reorder/service-check.ts';
import { daysWithout, weeklyLows } from '../../src/domain/reorder/stock-year.ts';
import { cashByWeek } from '../../src/domain/supplies/cash-by-week.ts';
import { supplies } from '../../src/domain/supplies/supplies.ts';
import { amountCell, type AnswersOf, cellOrBlank, type CellRows } from '../answer.ts';
import { readers } from '../kinds.ts';
import type { buyRecords } from '../records/buy.ts';

export const buyAnswers: AnswersOf<typeof buyRecords> = {
  /** In the material's stock unit. */
  REORDERPOINT: ({ material, book, asOf }) =>
    andThen(findMaterial(book, material), (found) => reorderPoint(book, found, asOf)),

  SERVICECHECK: ({ material, book, asOf }) =>
    andThen(findMaterial(book, material), (found) =>
      andThen(serviceCheck(book, found, asOf), (checked) => answer(checkRows(checked))),
    ),

  /** In the unit of the use. */
  SAFETYSTOCK: ({ servicePercent, sdDailyUse, leadDays, meanDailyUse, sdLeadDays }) =>
    meanDailyUse === undefined && sdLeadDays.gt(zero)
      ? wrong(`mean daily use is ${readers.number.blank}`)
      : safetyStock(
          { servicePercent, meanDailyUse: meanDailyUse ?? zero, leadDays, sdLeadDays },
          sdDailyUse,
        ),

  /** Units in one order. */
  ORDERSIZE: ({ yearlyUse, costPerOrder, holdingPerUnit }) =>
    orderSize(yearlyUse, costPerOrder, holdingPerUnit),

  SUPPLIES: ({ book, from, useLeftovers }) =>
    andThen(supplies(book, from, { reuse: useLeftovers }), ({ lines }) =>
      answer(
        lines.map((line) => [
          line.material.name,
          amountCell(line.gross),
          amountCell(line.onHand),
          amountCell(line.net),
          cellOrBlank(line.packs),
          line.orderBy === undefined ? '' : isoDate(line.orderBy),
          cellOrBlank(line.cost),
        ]),
      ),
    ),

  ORDERPLAN: ({ book, from, useLeftovers }) =>
    andThen(orderPlan(book, from, { reuse: useLeftovers }), (lines) =>
      answer(
        lines.map(({ supplier, orderBy, material, packs, cost, carriage }) => [
          supplier,
          isoDate(orderBy),
          material.name,
          packs ?? '',
          cellOrBlank(cost),
          toCell(carriage),
        ]),
      ),
    ),

  CASHBYWEEK: ({ book, from, useLeftovers }) =>
    andThen(supplies(book, from, { reuse: useLeftovers }), (found) =>
      answer(
        cashByWeek(found, from).map(({ monday, cost, late, inAll }) => [
          isoDate(monday),
          ...[cost, late, inAll].map(toCell),
        ]),
      ),
    ),
};

/** Service, points, which to trust and why, then the lowest stock of each week of a simulated year. */
function checkRows({ askedPercent, usual, own, trust, sentence }: ServiceCheck): CellRows {
  const both = <T>(of: (checked: CheckedPoint) => T): T[] => [of(usual), of(own)];
  const [usualLows = [], ownLows = []] = both(({ year }) => weeklyLows(year).map(withoutDrift));
  return [
    ['Service % asked', askedPercent, askedPercent],
    ['Reorder point', ...both(({ point }) => point)],
    ['Service %', ...both(({ servicePercent }) => servicePercent)],
    ['Days without stock', ...both(({ year }) => daysWithout(year))],
    ['Trust it', trust === 'usual' ? 'yes' : 'no', trust === 'own' ? 'yes' : 'no'],
    ['In words', sentence, ''],
    ...usualLows.map((low, week) => [`Week ${week + 1}`, low, ownLows[week] ?? '']),
  ];
}

/** Millionths are finer than any scale; beyond them a simulated sum shows only binary drift. */
const withoutDrift = (quantity: number): number => toCell(exact(quantity).toDecimalPlaces(6));
