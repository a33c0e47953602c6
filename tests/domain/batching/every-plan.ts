import type { BatchProblem } from '../../../src/domain/batching/problem.ts';

/** The least cost of a problem by trying every number of bars of every design on every day. */
export function leastOfAll({ days, designs, holds, unmet, memory = 0 }: BatchProblem): number {
  const known = new Map<string, number>();
  const least = (
    day: number,
    left: readonly number[],
    later: readonly (readonly number[])[],
  ): number => {
    if (day < 0) return left.reduce((sum, bars) => sum + bars, 0) * unmet;
    const key = [day, left, ...later].join(';');
    const found = known.get(key);
    if (found !== undefined) return found;
    let best = Infinity;
    for (const made of everyCount(left)) {
      if (!holds(day, made, later)) continue;
      let cost = 0;
      const rest = left.map((bars, at) => {
        const { needs, batchCost, waitCost } = designs[at] ?? {
          needs: [],
          batchCost: [],
          waitCost: 0,
        };
        const some = made[at] ?? 0;
        cost += (some > 0 ? (batchCost[day] ?? 0) : 0) + (bars - some) * waitCost;
        return bars - some + (needs[day - 1] ?? 0);
      });
      best = Math.min(best, cost + least(day - 1, rest, [made, ...later].slice(0, memory)));
    }
    known.set(key, best);
    return best;
  };
  return least(
    days - 1,
    designs.map(({ needs }) => needs[days - 1] ?? 0),
    [],
  );
}

function everyCount([first, ...rest]: readonly number[]): number[][] {
  if (first === undefined) return [[]];
  return everyCount(rest).flatMap((others) =>
    Array.from({ length: first + 1 }, (_, bars) => [bars, ...others]),
  );
}
