import { planBatches, type SearchEffort } from './plan-batches.ts';
import type { BatchProblem, WholeBatch } from './problem.ts';

/** Bars to make in whole batches on days of work, with as little setting up as can be. */
export interface SetupProblem {
  /** The days there are to work, ascending. */
  readonly days: readonly number[];
  readonly designs: readonly SetupNeeds[];
  /** Minutes of each day; Infinity without a limit. */
  readonly minutes: readonly number[];
  readonly holds: BatchProblem['holds'];
  readonly memory?: BatchProblem['memory'];
}

export interface SetupNeeds {
  /** Bars by the last of `days`, by its place among them, on which they can be made. */
  readonly needs: readonly number[];
  readonly setupMinutes: number;
  /** What a bar adds to a batch at the least. */
  readonly barMinutes: number;
}

export interface SetupPlan {
  /** In order of days, then of designs. */
  readonly batches: readonly WholeBatch[];
  readonly setupMinutes: number;
  /** No plan with as few bars unmet takes fewer; 0 where fewer might be unmet. */
  readonly leastMinutes: number;
  /** Bars that find no day. */
  readonly unmet: number;
  /** No plan leaves fewer. */
  readonly leastUnmet: number;
}

/**
 * First as few bars without a day as can be, then the fewest minutes of setup, then the latest days: the
 * least sum, over batches, of the days from a batch to the last day of all.
 */
export function fewestSetups(problem: SetupProblem, efforts?: readonly SearchEffort[]): SetupPlan {
  const { days, designs, minutes, holds, memory } = problem;
  const end = (days.at(-1) ?? 0) + 1;
  const unit = unitOf(designs.map(({ setupMinutes }) => setupMinutes));
  const totals = designs.map(({ needs }) => needs.reduce((sum, need) => sum + need, 0));
  // Whole numbers with room between them keep the order of what counts first: their sums are exact.
  const mostBatches = totals.reduce((sum, total) => sum + Math.min(total, days.length), 0);
  const minuteCost = mostBatches * (end - (days[0] ?? 0)) + 1;
  const setups = designs.map(({ setupMinutes }) => Math.round(setupMinutes / unit));
  const mostSetup = totals.reduce(
    (sum, total, at) => sum + Math.min(total, days.length) * (setups[at] ?? 0),
    0,
  );
  const plan = planBatches(
    {
      days: days.length,
      designs: designs.map(({ needs }, at) => ({
        needs,
        batchCost: days.map((day) => (setups[at] ?? 0) * minuteCost + (end - day)),
        waitCost: 0,
      })),
      holds,
      ...(memory === undefined ? {} : { memory }),
      unmet: (mostSetup + 1) * minuteCost,
      room: {
        ofDay: minutes,
        perBatch: designs.map(({ setupMinutes }) => setupMinutes),
        perBar: designs.map(({ barMinutes }) => barMinutes),
      },
    },
    efforts,
  );
  const partsOf = (cost: number) => {
    const minutes = Math.floor(cost / minuteCost);
    return { unmet: Math.floor(minutes / (mostSetup + 1)), setup: minutes % (mostSetup + 1) };
  };
  const [found, least] = [partsOf(plan.cost), partsOf(plan.bound)];
  return {
    batches: plan.batches,
    setupMinutes: found.setup * unit,
    leastMinutes: least.unmet < found.unmet ? 0 : least.setup * unit,
    unmet: found.unmet,
    leastUnmet: least.unmet,
  };
}

const UNITS = [1, 0.5, 0.25, 0.1, 0.01];

/** The largest part of a minute that all setups are whole numbers of; a thousandth where it is none of these. */
const unitOf = (minutes: readonly number[]): number =>
  UNITS.find((unit) =>
    minutes.every((some) => Math.abs(some / unit - Math.round(some / unit)) < 1e-9),
  ) ?? 0.001;
