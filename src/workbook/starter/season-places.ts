import type { CellRange } from './cell-names.ts';
import type { Formula } from './formula.ts';

/** Where the parts of the Season sheet stand; other sheets look things up there. */
export const SEASON = {
  asOf: 3,
  /** Columns beyond what prints, for what is only worked with. */
  unseen: 9,
  plan: { first: 11, lines: 24 },
  supplies: { first: 39, lines: 30 },
  work: { first: 73, lines: 60 },
} as const;

/** One column of one part. */
export const seasonColumn = (part: 'plan' | 'supplies' | 'work', column: number): CellRange => ({
  startRow: SEASON[part].first,
  startColumn: column,
  endRow: SEASON[part].first + SEASON[part].lines - 1,
  endColumn: column,
});

/** What the season is asked for: the day as typed, blank for today, and the day it stands for. */
export interface SeasonAsked {
  readonly from: Formula;
  readonly today: Formula;
}
