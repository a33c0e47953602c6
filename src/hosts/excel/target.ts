import type { WritableTable } from '../../workbook/write/writable-table.ts';

/** A table of the workbook as a change is looked for in it, and what keeps Excel from writing there. */
export interface Target extends WritableTable {
  /** Stays the same when the table is renamed. */
  readonly tableId: string;
  readonly sheet: string;
  readonly protected: boolean;
  /** A filter hides some of its rows. */
  readonly filtered: boolean;
}

/** Why Excel would not write into a table as it is, or undefined if it would. */
export function whyShut({
  name,
  sheet,
  protected: isProtected,
  filtered,
}: Target): string | undefined {
  if (isProtected) {
    return `The sheet "${sheet}" is protected, so ${name} cannot take new rows. Unprotect it (Review tab, Unprotect Sheet), then try again.`;
  }
  if (filtered) {
    return `A filter hides rows of ${name}, so Excel would not write there safely. Clear it (Data tab, Clear), then try again.`;
  }
  return undefined;
}
