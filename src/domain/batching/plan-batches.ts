import { Alone } from './alone.ts';
import { type DayChoices, dayChoices, type Effort, largestFit } from './day-choices.ts';
import type { BatchPlan, BatchProblem, DesignNeeds, PooledRoom, WholeBatch } from './problem.ts';

/** Where a search stands once a day and all later ones are decided. */
interface State {
  /** Still to be made of each design, on the day before or earlier. */
  readonly left: readonly number[];
  readonly cost: number;
  /** No plan that goes on from here costs less. */
  readonly bound: number;
  readonly made: readonly number[];
  readonly later: State | undefined;
}

export interface SearchEffort extends Effort {
  /** How often room is asked for in all; each day has its share, however many states it has. */
  readonly questions: number;
}

/** At first a quick look; where that can't tell that it found the best, a longer one. */
const usualEfforts: readonly SearchEffort[] = [
  { allWays: 40, someWays: 10, questions: 40_000 },
  { allWays: 1500, someWays: 16, questions: 90_000 },
];

/**
 * The whole batches of least cost, worked back from the last day: each state goes on with every way of
 * the next day that can be best, states that another one equals or betters are dropped, and so are those
 * whose bound says that they can't beat the best plan known. Where a day has more states or ways than
 * there is time for, the bound of the best one let go says how far from the optimum the plan may be.
 */
export function planBatches(
  problem: BatchProblem,
  efforts: readonly SearchEffort[] = usualEfforts,
): BatchPlan {
  let best: BatchPlan = { batches: [], cost: Infinity, bound: 0 };
  for (const effort of efforts) {
    const found = new Search(problem, effort, best.cost).run();
    const bound = Math.max(best.bound, Math.min(found.bound, best.cost));
    best = { ...(found.cost < best.cost ? found : best), bound };
    if (best.bound >= best.cost) break;
  }
  return best;
}

class Search {
  private readonly problem: BatchProblem;
  private readonly effort: SearchEffort;
  private readonly alone: readonly Alone[];
  /** By design, the largest batch of any day. */
  private readonly largest: readonly number[];
  private readonly room: SummedRoom | undefined;
  /** Cost of a plan that is known already. */
  private readonly known: number;
  private readonly memory: number;
  private lowest = Infinity;
  private questions = 0;

  constructor(problem: BatchProblem, effort: SearchEffort, known: number) {
    this.problem = problem;
    this.effort = effort;
    this.known = known;
    this.memory = problem.memory ?? 0;
    const mostOn = problem.designs.map((_, at) => this.mostOn(at));
    this.alone = problem.designs.map(
      (design, at) => new Alone(design, mostOn[at] ?? [], problem.unmet),
    );
    this.largest = mostOn.map((most) => Math.max(0, ...most));
    this.room = problem.room && summed(problem.room, problem.designs);
  }

  run(): BatchPlan {
    const { days, designs } = this.problem;
    const left = designs.map(({ needs }) => needs[days - 1] ?? 0);
    const start = this.state(
      left,
      0,
      days - 1,
      left.map(() => 0),
      undefined,
    );
    let states = [start];
    for (let day = days - 1; day >= 0; day -= 1) states = this.dayBefore(states, day);
    const [best] = states;
    const cost = best?.bound ?? Infinity;
    return { batches: batchesOf(best, 0), cost, bound: Math.min(cost, this.lowest, this.known) };
  }

  private dayBefore(states: readonly State[], day: number): State[] {
    const next = new Map<string, State>();
    const upTo = this.questions + this.effort.questions / this.problem.days;
    for (const state of states) {
      if (this.questions > upTo) {
        this.letGo(state);
        break;
      }
      const { choices, all } = this.choicesOf(state, day);
      if (!all) this.letGo(state);
      for (const made of choices) {
        const after = this.after(state, day, made);
        if (after.bound >= this.known) continue;
        const key = [after.left, ...this.felt(after)].join(';');
        if (after.cost < (next.get(key)?.cost ?? Infinity)) next.set(key, after);
      }
    }
    const sorted = [...next.values()].sort((a, b) => a.bound - b.bound);
    const kept: State[] = [];
    for (const state of sorted) {
      if (kept.some((better) => this.isAsGood(better, state))) continue;
      if (kept.length === MOST_STATES) {
        this.letGo(state);
        break;
      }
      kept.push(state);
    }
    return kept;
  }

  private letGo({ bound }: State): void {
    this.lowest = Math.min(this.lowest, bound);
  }

  private choicesOf(state: State, day: number): DayChoices {
    const { left } = state;
    if (left.every((bars) => bars === 0)) return { choices: [left], all: true };
    const felt = this.felt(state);
    const fits = (bars: readonly number[]): boolean => {
      this.questions += 1;
      return this.problem.holds(day, bars, felt);
    };
    const isFelt = this.memory > 0;
    return dayChoices({ day, left, alone: this.alone, fits, isFelt }, this.effort);
  }

  /** What a state made on the next days, as far as earlier ones feel it. */
  private felt(state: State): (readonly number[])[] {
    const made: (readonly number[])[] = [];
    for (let at: State | undefined = state; made.length < this.memory; at = at.later) {
      if (at === undefined) break;
      made.push(at.made);
    }
    return made;
  }

  /** Nothing more to make, nor felt of later days, at no more cost: whatever the other does, this one can. */
  private isAsGood(a: State, b: State): boolean {
    if (a.cost > b.cost || !isNoMore(a.left, b.left)) return false;
    const others = this.felt(b);
    return this.felt(a).every((made, at) => isNoMore(made, others[at] ?? []));
  }

  private after(state: State, day: number, made: readonly number[]): State {
    let { cost } = state;
    const left = this.alone.map((alone, design) => {
      const some = made[design] ?? 0;
      const rest = (state.left[design] ?? 0) - some;
      cost += alone.costOf(day, rest, some);
      return rest + alone.needOn(day - 1);
    });
    return this.state(left, cost, day - 1, made, state);
  }

  private state(
    left: readonly number[],
    cost: number,
    day: number,
    made: readonly number[],
    later: State | undefined,
  ): State {
    const ahead = this.alone.reduce(
      (sum, alone, design) => sum + alone.leastCost(day, left[design] ?? 0),
      0,
    );
    const bound = cost + Math.max(ahead, this.unmetAhead(left, day) * this.problem.unmet);
    return { left, cost, bound, made, later };
  }

  /** Bars that find no day, at the least: what is left takes more than all days up to one have room for. */
  private unmetAhead(left: readonly number[], day: number): number {
    const { room } = this;
    if (room === undefined || day < 0) return 0;
    let work = 0;
    left.forEach((bars, design) => {
      const all = bars + (room.before[design]?.[day] ?? 0);
      const most = this.largest[design] ?? 0;
      if (most === 0) return;
      work +=
        all * (room.perBar[design] ?? 0) + Math.ceil(all / most) * (room.perBatch[design] ?? 0);
    });
    const missing = work - (room.upTo[day] ?? 0);
    return missing > ROUNDING ? Math.ceil(missing / room.mostPerBar - ROUNDING) : 0;
  }

  private mostOn(design: number): number[] {
    const { days, designs, holds } = this.problem;
    const bars = designs.map(() => 0);
    const total = (designs[design]?.needs ?? []).reduce((sum, need) => sum + need, 0);
    return Array.from({ length: days }, (_, day) =>
      largestFit(bars, design, total, (some) => holds(day, some, [])),
    );
  }
}

/** What a day can be left with: comparing each with each takes the square of it. */
const MOST_STATES = 250;

/** Sums of floating-point minutes may be off by this much. */
const ROUNDING = 1e-6;

interface SummedRoom extends PooledRoom {
  /** Of a day and all before it. */
  readonly upTo: readonly number[];
  /** By design and day, what is needed before that day. */
  readonly before: readonly (readonly number[])[];
  /** What leaving out one bar saves at the most. */
  readonly mostPerBar: number;
}

function summed(room: PooledRoom, designs: readonly DesignNeeds[]): SummedRoom {
  const upTo: number[] = [];
  for (const some of room.ofDay) upTo.push((upTo.at(-1) ?? 0) + some);
  const before = designs.map(({ needs }) => {
    const sums = [0];
    for (const need of needs) sums.push((sums.at(-1) ?? 0) + need);
    return sums;
  });
  const perBar = room.perBar.map((bar, design) => bar + (room.perBatch[design] ?? 0));
  return { ...room, upTo, before, mostPerBar: Math.max(ROUNDING, ...perBar) };
}

const isNoMore = (a: readonly number[], b: readonly number[]): boolean =>
  a.every((bars, design) => bars <= (b[design] ?? 0));

/** The batches of a state and all later days; the state before the last day made nothing. */
function batchesOf(state: State | undefined, day: number): WholeBatch[] {
  const batches: WholeBatch[] = [];
  for (let at = state, on = day; at?.later !== undefined; at = at.later, on += 1) {
    at.made.forEach((bars, design) => {
      if (bars > 0) batches.push({ design, day: on, bars });
    });
  }
  return batches;
}
