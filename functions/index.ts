import { askedBefore } from './asked-before.ts';
import { book, rangesOf } from './book.ts';
import { costLines, costPerBar } from './cost.ts';
import { finite } from './finite.ts';
import { checks, ingredients } from './label.ts';
import {
  basePerMold,
  canMake,
  materials,
  meltSheet,
  takeOut,
  tileCount,
  weighOut,
} from './make.ts';
import { amount } from './measure.ts';
import { calendar, cashByWeek, forecast, forecastFit, planNotes, supplies } from './plan.ts';
import { orderSize, reorderPoint, safetyStock, serviceCheck } from './reorder.ts';
import { batchCost, breakEven, fair, price } from './sell.ts';
import { onHand, stockList, stockValue, unitCost } from './stock.ts';
import { dayOfBlanks } from './today.ts';
import { recall, trace } from './trace.ts';

/** A worksheet function: raw cell arguments in, a cell or rows out; throws `CellFailure`. */
export type WorksheetFunction = (...cellArguments: unknown[]) => unknown;

const answers: Readonly<Record<string, WorksheetFunction>> = {
  BOOK: (...cellArguments) => book(rangesOf(cellArguments)),
  BASEPERMOLD: basePerMold,
  TILECOUNT: (pattern, colour) => plainIfSingle(tileCount(pattern as unknown[][], colour)),
  MELTSHEET: meltSheet,
  WEIGHOUT: weighOut,
  MATERIALS: materials,
  TAKEOUT: takeOut,
  CANMAKE: canMake,
  ONHAND: onHand,
  STOCKVALUE: stockValue,
  UNITCOST: unitCost,
  STOCKLIST: stockList,
  REORDERPOINT: reorderPoint,
  SERVICECHECK: serviceCheck,
  SAFETYSTOCK: safetyStock,
  ORDERSIZE: orderSize,
  COSTPERBAR: costPerBar,
  COSTLINES: costLines,
  PRICE: price,
  BREAKEVEN: breakEven,
  FORECAST: (history, periods, season) => forecast(history as unknown[][], periods, season),
  FORECASTFIT: (history, periods, season) => forecastFit(history as unknown[][], periods, season),
  SUPPLIES: supplies,
  CASHBYWEEK: cashByWeek,
  PLANNOTES: planNotes,
  CALENDAR: calendar,
  FAIR: fair,
  BATCHCOST: batchCost,
  INGREDIENTS: ingredients,
  CHECKS: checks,
  TRACE: trace,
  RECALL: recall,
  AMOUNT: amount,
  TODAY: dayOfBlanks,
};

/**
 * Every worksheet function by its id in the namespace POUR; none ever answers with what is no number.
 * BOOK keeps its books in memory itself.
 */
export const functions: Readonly<Record<string, WorksheetFunction>> = Object.fromEntries(
  Object.entries(answers).map(([id, answer]) => [
    id,
    id === 'BOOK' ? finite(answer) : askedBefore(id, finite(answer)),
  ]),
);

/** With a colour, TILECOUNT answers one number and not a spill of one cell. */
function plainIfSingle(rows: readonly (readonly unknown[])[]): unknown {
  return rows.length === 1 && rows[0]?.length === 1 ? rows[0][0] : rows;
}
