import { valueIn } from '../book/ledger.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import type { ItemHistory } from './item-history.ts';

const MADE = 1;

/**
 * The rows of an item so that a batch takes before it puts back: soap or pieces that it leaves over
 * have no part in the average at which it took. All else stays as it was, what comes in on a day first.
 */
export function takenFirst({ ledger }: ItemHistory, rows: Int32Array): Int32Array {
  const { whens, quantities, batches, reasons } = ledger.columns;
  const quantity = (row: number): number => quantities[row] as number;
  const day = (row: number): number => Math.floor(whens[row] as number);
  const batch = (row: number): string => nameKey(valueIn(batches, row));
  const turn = (row: number): string => `${day(row)} ${batch(row)}`;
  const isBack = (row: number): boolean => {
    const reason = valueIn(reasons, row);
    return (reason === 'left over' || reason === 'spare') && batch(row) !== '';
  };
  const back = new Set(Array.from(rows.filter(isBack), turn));
  if (back.size === 0) return rows;
  const taking = rows.filter((row) => quantity(row) < 0 && back.has(turn(row)));
  if (taking.length === 0) return rows;
  const both = new Set(Array.from(taking, turn));
  const rank = (row: number): number =>
    both.has(turn(row)) && (isBack(row) || quantity(row) < 0) ? MADE : quantity(row) > 0 ? 0 : 2;
  const inTurn = (a: number, b: number): number =>
    compareNames(batch(a), batch(b)) || Math.sign(quantity(a)) - Math.sign(quantity(b));
  return Int32Array.from(
    Array.from(rows).sort(
      (a, b) => day(a) - day(b) || rank(a) - rank(b) || (rank(a) === MADE ? inTurn(a, b) : 0),
    ),
  );
}
