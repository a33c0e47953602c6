import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { evenOut } from '../../../src/domain/batching/even-out.ts';
import { fewestSetups, type SetupProblem } from '../../../src/domain/batching/fewest-setups.ts';
import { leastOfAll } from './every-plan.ts';

/** Days on which bars of each design take minutes, and nothing else is in the way. */
function workshop(
  days: readonly number[],
  minutes: number,
  designs: readonly (readonly [setup: number, bar: number, needs: readonly number[]])[],
): SetupProblem {
  return {
    days,
    minutes: days.map(() => minutes),
    designs: designs.map(([setupMinutes, barMinutes, needs]) => ({
      setupMinutes,
      barMinutes,
      needs,
    })),
    holds: (_, bars) =>
      bars.reduce((sum, some, at) => {
        const [setup = 0, bar = 0] = designs[at] ?? [];
        return some === 0 ? sum : sum + setup + bar * some;
      }, 0) <= minutes,
  };
}

const lines = ({
  batches,
}: {
  batches: readonly { design: number; day: number; bars: number }[];
}) => batches.map(({ design, day, bars }) => [day, design, bars]);

describe('fewest setups', () => {
  it('makes one batch of all needs where days are long enough, on the last day of the first of them', () => {
    const plan = fewestSetups(workshop([1, 2, 3, 4], 500, [[30, 10, [0, 4, 0, 9]]]));
    expect(lines(plan)).toEqual([[1, 0, 13]]);
    expect([plan.setupMinutes, plan.leastMinutes, plan.unmet]).toEqual([30, 30, 0]);
  });

  it('counts parts of a minute', () => {
    const plan = fewestSetups(workshop([1, 2], 100, [[12.5, 10, [8, 8]]]));
    expect([plan.setupMinutes, plan.leastMinutes]).toEqual([25, 25]);
  });

  it('takes two small setups before a large one', () => {
    // A day holds both setups of the small one; the large one can't be saved.
    const plan = fewestSetups(
      workshop([1, 2, 3], 60, [
        [5, 10, [0, 0, 6]],
        [40, 10, [0, 0, 2]],
      ]),
    );
    expect(plan.setupMinutes).toBe(50);
    expect(plan.leastMinutes).toBe(50);
  });

  it('leaves out as few bars as can be where time is too short, and says what no plan does better', () => {
    const plan = fewestSetups(workshop([1, 2], 50, [[20, 10, [9, 0]]]));
    expect(lines(plan)).toEqual([[0, 0, 3]]);
    expect([plan.unmet, plan.leastUnmet]).toEqual([6, 6]);
  });

  it('is the best of all plans: bars first, then setup, then the latest days', () => {
    const design = (days: number) =>
      fc.tuple(
        fc.constantFrom(0, 5, 7.5, 10, 20),
        fc.integer({ min: 1, max: 9 }),
        fc.array(fc.integer({ min: 0, max: 3 }), { minLength: days, maxLength: days }),
      );
    const asked = fc
      .uniqueArray(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 4 })
      .map((days) => [...days].sort((a, b) => a - b))
      .chain((days) =>
        fc.tuple(
          fc.constant(days),
          fc.integer({ min: 5, max: 60 }),
          fc.array(design(days.length), { minLength: 1, maxLength: 3 }),
        ),
      );
    fc.assert(
      fc.property(asked, ([days, minutes, designs]) => {
        const problem = workshop(days, minutes, designs);
        const plan = fewestSetups(problem);
        const end = (days.at(-1) ?? 0) + 1;
        // Far enough apart: at most 12 batches, so at most 144 days and 240 minutes.
        const [ofBar, ofMinute] = [1e9, 1e4];
        const least = leastOfAll({
          days: days.length,
          designs: designs.map(([setup, , needs]) => ({
            needs,
            batchCost: days.map((day) => setup * ofMinute + end - day),
            waitCost: 0,
          })),
          holds: problem.holds,
          unmet: ofBar,
        });
        const late = plan.batches.reduce((sum, { day }) => sum + end - (days[day] ?? 0), 0);
        expect(plan.unmet * ofBar + plan.setupMinutes * ofMinute + late).toBeCloseTo(least, 3);
        expect([plan.leastUnmet, plan.leastMinutes]).toEqual([plan.unmet, plan.setupMinutes]);
      }),
      { numRuns: 150 },
    );
  });
});

describe('batches of one design', () => {
  it('are as even as their days and needs allow', () => {
    const asked = fc.tuple(
      fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 3, maxLength: 3 }),
      fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 3, maxLength: 3 }),
    );
    fc.assert(
      fc.property(asked, ([needs, most]) => {
        const holds = (day: number, [bars = 0]: readonly number[]): boolean =>
          bars <= (most[day] ?? 0);
        const plan = fewestSetups({
          days: [1, 2, 3],
          minutes: most,
          designs: [{ needs, setupMinutes: 0, barMinutes: 1 }],
          holds,
        });
        const days = plan.batches.map(({ day }) => day);
        const even = evenOut({ designs: [{ needs }], holds }, plan.batches);
        expect(even.map(({ day }) => day)).toEqual(days);
        const made = [0, 1, 2].map((day) => even.find((batch) => batch.day === day)?.bars ?? 0);
        const total = made.reduce((sum, bars) => sum + bars, 0);
        let best = Infinity;
        // Every way to make as many bars on those days, each from a day on no more than is needed from it on.
        for (let a = 0; a <= total; a += 1)
          for (let b = 0; a + b <= total; b += 1) {
            const ways = [a, b, total - a - b];
            const from = (list: readonly number[], day: number): number =>
              list.slice(day).reduce((sum, bars) => sum + bars, 0);
            const isWay = ways.every(
              (bars, day) =>
                bars <= (most[day] ?? 0) &&
                bars > 0 === days.includes(day) &&
                from(ways, day) <= from(needs, day),
            );
            if (isWay) best = Math.min(best, squares(ways));
          }
        expect(total === 0 || squares(made) === best).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});

const squares = (bars: readonly number[]): number => bars.reduce((sum, some) => sum + some ** 2, 0);
