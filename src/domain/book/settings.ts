import type { Exact } from '../kernel/exact.ts';
import type { SkinStay, Valuation } from './words.ts';

/** Choices that hold for the whole workbook; each has a default (see workbook/read/settings.ts). */
export interface Settings {
  /** ISO 4217 code. */
  readonly currency: string;
  readonly labourRatePerHour: Exact;
  readonly overheadPerBar: Exact;
  readonly valuation: Valuation;
  readonly servicePercent: Exact;
  /** The step that melts are rounded up to; 0 rounds nothing. */
  readonly scaleStepG: Exact;
  readonly salesTaxPercent: Exact;
  readonly pricesIncludeTax: boolean;
  readonly cardFeePercent: Exact;
  readonly cardFeeFixed: Exact;
  readonly historyDays: number;
  readonly bufferDays: number;
  readonly skinStay: SkinStay;
  /** The workbook says so itself; false where the default was taken. */
  readonly skinStaySet: boolean;
  /** Minutes of work the maker has on a day; 0 where unknown. */
  readonly minutesPerDay: number;
  /** Days of the week without work, Monday = 1 … Sunday = 7. */
  readonly restDays: readonly number[];
  /** What a bar that a fair leaves over is worth, in percent of its cost. */
  readonly leftoverWorthPercent: Exact;
}
