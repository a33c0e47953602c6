import type { Exact } from '../kernel/exact.ts';

/** What a check comes to: never `ok` unless a figure was there to be held against a limit. */
export type CheckResult = 'ok' | 'over' | 'unknown';

/** One line of CHECKS. */
export interface CheckLine {
  readonly check: string;
  readonly value: Exact | string;
  readonly limit: Exact | string;
  readonly result: CheckResult;
  /** Where the limit comes from, or what to do. */
  readonly source: string;
}

/** `ok` up to and with the limit, `over` beyond it. */
export function against(value: Exact, limit: Exact): CheckResult {
  return value.lte(limit) ? 'ok' : 'over';
}

/** Something that can't be judged, and what to do about it. */
export function unknownLine(check: string, value: Exact | string, source: string): CheckLine {
  return { check, value, limit: '', result: 'unknown', source };
}
