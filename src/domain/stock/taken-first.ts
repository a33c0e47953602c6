import { valueIn } from '../book/ledger.ts';
import { compareNames, nameKey } from '../kernel/names.ts';
import type { ItemHistory } from './item-history.ts';

const MADE = 1;

/** The rows of an item in the order in which the moving average follows them. */
export interface TakenFirst {
  readonly rows: Int32Array;
  /**
   * Rows that took at the average on a day when another batch put something back, and have a Value. Which
   * of the two was poured first no table says; what was written then tells what the average was.
   */
  readonly asWritten: ReadonlySet<number>;
}

/**
 * The rows of an item so that a batch takes before it puts back: soap or pieces that it leaves over
 * have no part in the average at which it took. All else stays as it was, what comes in on a day first.
 */
export function takenFirst({ ledger }: ItemHistory, rows: Int32Array): TakenFirst {
  const { whens, quantities, batches, reasons, values } = ledger.columns;
  const quantity = (row: number): number => quantities[row] as number;
  const day = (row: number): number => Math.floor(whens[row] as number);
  const batch = (row: number): string => nameKey(valueIn(batches, row));
  const turn = (row: number): string => `${day(row)} ${batch(row)}`;
  const isBack = (row: number): boolean => {
    const reason = valueIn(reasons, row);
    return (reason === 'left over' || reason === 'spare') && batch(row) !== '';
  };
  const backRows = rows.filter(isBack);
  const back = new Set(Array.from(backRows, turn));
  const asWritten = new Set<number>();
  if (back.size === 0) return { rows, asWritten };
  const backOn = new Map<number, Set<string>>();
  for (const row of backRows)
    backOn.set(day(row), (backOn.get(day(row)) ?? new Set()).add(batch(row)));
  for (const row of rows) {
    const isTold = quantity(row) < 0 && batch(row) !== '' && !Number.isNaN(values[row]);
    const backThen = isTold ? backOn.get(day(row)) : undefined;
    const others = (backThen?.size ?? 0) - (backThen?.has(batch(row)) === true ? 1 : 0);
    if (others > 0) asWritten.add(row);
  }
  const taking = rows.filter(
    (row) => quantity(row) < 0 && back.has(turn(row)) && !asWritten.has(row),
  );
  if (taking.length === 0) return { rows, asWritten };
  const both = new Set(Array.from(taking, turn));
  const rank = (row: number): number =>
    both.has(turn(row)) && (isBack(row) || quantity(row) < 0) ? MADE : quantity(row) > 0 ? 0 : 2;
  const inTurn = (a: number, b: number): number =>
    compareNames(batch(a), batch(b)) || Math.sign(quantity(a)) - Math.sign(quantity(b));
  return {
    rows: Int32Array.from(
      Array.from(rows).sort(
        (a, b) => day(a) - day(b) || rank(a) - rank(b) || (rank(a) === MADE ? inTurn(a, b) : 0),
      ),
    ),
    asWritten,
  };
}
