import type { BatchProblem, DesignNeeds, WholeBatch } from './problem.ts';

/**
 * The same batches on the same days with bars moved between those of one design until no bar more makes
 * them more even, as far as days have room and no need is met later than before.
 */
export function evenOut(
  problem: Room & { readonly designs: readonly Pick<DesignNeeds, 'needs'>[] },
  batches: readonly WholeBatch[],
): WholeBatch[] {
  const { designs } = problem;
  const bars = new Map<number, number[]>();
  for (const { day, design, bars: some } of batches) {
    const ofDay = bars.get(day) ?? designs.map(() => 0);
    ofDay[design] = some;
    bars.set(day, ofDay);
  }
  designs.forEach(({ needs }, design) => {
    const days = batches.filter((batch) => batch.design === design).map(({ day }) => day);
    if (days.length > 1) evenDesign({ needs, design, days, bars, problem });
  });
  return batches.map((batch) => ({
    ...batch,
    bars: bars.get(batch.day)?.[batch.design] ?? batch.bars,
  }));
}

type Room = Pick<BatchProblem, 'holds' | 'memory'>;

/** Whether a day, and those before it that feel what is made on it, have room for what is made on each day. */
export function hasRoom(
  { holds, memory = 0 }: Room,
  barsOn: (day: number) => readonly number[],
  day: number,
): boolean {
  for (let at = day; at >= Math.max(0, day - memory); at -= 1) {
    const later = Array.from({ length: memory }, (_, after) => barsOn(at + 1 + after));
    if (!holds(at, barsOn(at), later)) return false;
  }
  return true;
}

interface OneDesign {
  readonly needs: readonly number[];
  readonly design: number;
  readonly days: readonly number[];
  /** By day, of every design; changed in place. */
  readonly bars: ReadonlyMap<number, number[]>;
  readonly problem: Room;
}

function evenDesign(asked: OneDesign): void {
  const made = (day: number): number => asked.bars.get(day)?.[asked.design] ?? 0;
  for (;;) {
    // From the largest batch to the smallest that can take a bar of it.
    const pairs = asked.days
      .flatMap((from) => asked.days.map((to) => ({ from, to, by: made(from) - made(to) })))
      .filter(({ by }) => by > 1)
      .sort((a, b) => b.by - a.by);
    const pair = pairs.find(({ from, to }) => canMove(asked, from, to));
    if (pair === undefined) return;
    move(asked, pair.from, pair.to);
  }
}

function move({ bars, design }: OneDesign, from: number, to: number): void {
  for (const [day, by] of [
    [from, -1],
    [to, 1],
  ] as const) {
    const ofDay = bars.get(day);
    if (ofDay !== undefined) ofDay[design] = (ofDay[design] ?? 0) + by;
  }
}

function canMove(asked: OneDesign, from: number, to: number): boolean {
  const { bars, design, needs, days, problem } = asked;
  move(asked, from, to);
  const fits = hasRoom(problem, (day) => bars.get(day) ?? [], to);
  move(asked, to, from);
  if (!fits || to < from) return fits;
  // Made from each day on, with the bar moved, is no more than is needed from that day on.
  let left = 0;
  for (let day = needs.length - 1; day > from; day -= 1) {
    left += needs[day] ?? 0;
    if (days.includes(day)) left -= bars.get(day)?.[design] ?? 0;
    if (day <= to && left < 1) return false;
  }
  return true;
}
