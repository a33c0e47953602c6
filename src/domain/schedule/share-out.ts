import type { PlanLine } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import type { Batch } from './batch.ts';
import type { OpenLine } from './plan-lines.ts';

/** A line and the last day on which its bars can be poured; undefined where that day is over. */
export interface LineByDay {
  readonly open: OpenLine;
  readonly last: Day | undefined;
}

export interface BarsForLine {
  readonly line: PlanLine;
  readonly bars: number;
}

export interface SharedOut {
  /** What each batch is for, the earliest line first. */
  readonly linesOf: ReadonlyMap<Batch, readonly BarsForLine[]>;
  /** By line, bars that are in no batch. */
  readonly missing: ReadonlyMap<PlanLine, number>;
}

/**
 * Which lines the bars of each batch are for: the latest lines first, each from the latest batches that
 * are in time for it, so that what is missing is missing where time was too short.
 */
export function shareOut(lines: readonly LineByDay[], batches: readonly Batch[]): SharedOut {
  const linesOf = new Map<Batch, BarsForLine[]>(batches.map((batch) => [batch, []]));
  const left = new Map(batches.map((batch) => [batch, batch.bars]));
  const missing = new Map<PlanLine, number>();
  const latestFirst = [...batches].sort((a, b) => b.pourDay - a.pourDay);
  for (const { open, last } of [...lines].reverse().sort((a, b) => dayOf(b) - dayOf(a))) {
    const { line } = open;
    let wanted = open.barsToMake;
    for (const batch of latestFirst) {
      if (batch.design !== line.design || last === undefined || batch.pourDay > last) continue;
      const bars = Math.min(wanted, left.get(batch) ?? 0);
      if (bars === 0) continue;
      wanted -= bars;
      left.set(batch, (left.get(batch) ?? 0) - bars);
      linesOf.get(batch)?.unshift({ line, bars });
    }
    missing.set(line, wanted);
  }
  return { linesOf, missing };
}

const dayOf = ({ last }: LineByDay): Day => last ?? -Infinity;
