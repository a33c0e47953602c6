import type { CellRange } from '../cells/cell-names.ts';
import { cellOn, type Formula } from '../cells/formula.ts';
import { seasonName } from '../cells/names.ts';

/** Where the parts of the Season sheet stand; other sheets look things up there. */
export const SEASON = {
  asOf: 3,
  reuse: 4,
  /** Orders already late, among the figures on top. */
  late: { row: 7, column: 5 },
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

/** The same for formulas of other sheets. */
export const onSeason: SeasonAsked = {
  from: cellOn(seasonName, SEASON.asOf, 1),
  today: cellOn(seasonName, SEASON.asOf, SEASON.unseen),
  reuse: cellOn(seasonName, SEASON.reuse, SEASON.unseen),
};

/** What a list says where nothing is planned. */
export const UNPLANNED = 'Season plan has no lines yet.';
