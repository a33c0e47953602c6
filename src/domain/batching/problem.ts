/**
 * What to make in whole batches, in numbers alone. Days are numbered from 0 and designs by their place in
 * the list; a cost is whatever is to be least, so long as all are in one unit.
 */
export interface BatchProblem {
  readonly days: number;
  readonly designs: readonly DesignNeeds[];
  readonly holds: Holds;
  /** On how many later days what is made can still take room from a day; 0 where each day is for itself. */
  readonly memory?: number;
  /** Cost of a bar that finds no day: more than any batch could save. */
  readonly unmet: number;
  /** What all days have room for together, where that is known: it tells early what can't fit. */
  readonly room?: PooledRoom;
}

/**
 * Whether a day has room for so many bars of each design beside what is made on the next days, the first
 * of them first, as far as it matters. Where it has, it has room for fewer too, of any day.
 */
export type Holds = (
  day: number,
  bars: readonly number[],
  later: readonly (readonly number[])[],
) => boolean;

export interface DesignNeeds {
  /** Bars by the last day on which they can be made. */
  readonly needs: readonly number[];
  /** Cost of a batch, however large, on each day. */
  readonly batchCost: readonly number[];
  /** Cost of each bar for each day from its batch to its need. */
  readonly waitCost: number;
}

/** A resource that batches take in proportion, such as minutes. */
export interface PooledRoom {
  readonly ofDay: readonly number[];
  /** By design: what a batch takes, and what each bar adds at the least. */
  readonly perBatch: readonly number[];
  readonly perBar: readonly number[];
}

export interface WholeBatch {
  readonly design: number;
  readonly day: number;
  readonly bars: number;
}

export interface BatchPlan {
  /** In order of days, then of designs. */
  readonly batches: readonly WholeBatch[];
  readonly cost: number;
  /** No plan costs less; the cost itself where the plan is known to be the best. */
  readonly bound: number;
}
