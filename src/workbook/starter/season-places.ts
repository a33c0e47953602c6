import type { CellRange } from './cell-names.ts';
import type { Formula } from './formula.ts';

/** Where the parts of the Season sheet stand; other sheets look things up there. */
export const SEASON = {
  asOf: 3,
  reuse: 4,
  /** Columns beyond what prints, for what is only worked with. */
  unseen: 9,
  notes: { first: 10, lines: 4 },
  plan: { first: 17, lines: 24 },
  supplies: { first: 45, lines: 30 },
  work: { first: 79, lines: 60 },
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
  /** 1 where leftovers and spares go in first. */
  readonly reuse: Formula;
}
