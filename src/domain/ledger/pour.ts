import type { Day } from '../kernel/day.ts';
import type { Exact } from '../kernel/exact.ts';
import type { MeltPlan, Sitting } from '../recipe/melt-plan.ts';

/** What the maker reports of some melting, whatever it was for: what came out differently from its plan. */
export interface Melting {
  /** Id of the batch, made once when the form opens and kept through every retry. */
  readonly batch: string;
  readonly poured: Day;
  readonly plan: Pick<Sitting, 'melts'>;
  /** Minutes it really took; the design's own where undefined. */
  readonly minutes: number | undefined;
  /** What was really weighed or counted, by `lineKey`, in the line's own measure, or g, ml or pieces of what is added; the plan's where absent. */
  readonly weighed: ReadonlyMap<string, Exact>;
  /** Spare pieces that came of it, by item name ("Teal × Small tiles"); the plan's where absent. */
  readonly sparePieces: ReadonlyMap<string, Exact>;
  /** Leftover soap that came of it, g, by item name ("Teal leftover"); the plan's where absent. */
  readonly leftoverG: ReadonlyMap<string, Exact>;
  /** Items, by name, whose count the maker says is off: what is missing is counted in first. */
  readonly countIsOff: ReadonlySet<string>;
  readonly by: string;
  readonly note: string;
}

/** Pieces shaped ahead, of no design: whole fills, of which all that came out whole become spares (`planPieces`). */
export interface ShapedAhead extends Melting {
  readonly plan: Sitting;
}

/** One pour of a design. */
export interface Pour extends Melting {
  /** Its design and bars, and what they were to take (`planPour`). */
  readonly plan: MeltPlan;
  /** Bars that came out good. */
  readonly good: number;
  /** Bars not good enough for full price. */
  readonly seconds: number;
  /**
   * What a second is worth, as a share (0 to 1) of a good bar's materials: then they are put in stock as "D seconds".
   * Undefined leaves them out of stock, and all they cost with the good bars.
   */
  readonly secondsShare?: Exact;
  /**
   * Bars that came to nothing: with the good and the seconds all that were started. Undefined only for a
   * batch of which nobody said, since its line is older than the column Lost.
   */
  readonly lost: number | undefined;
}

/** Names one line of the pour: an ingredient of a soap, or a material added to the bars. */
export function lineKey(soapName: string, ingredientName: string): string {
  return `${soapName} > ${ingredientName}`;
}

/** The soap name in `lineKey` for scent, paint and packaging, which belong to no soap. */
export const ADDED = 'added';
