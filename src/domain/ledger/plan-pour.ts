import type { Book, Design } from '../book/book.ts';
import type { Day } from '../kernel/day.ts';
import type { Result } from '../kernel/result.ts';
import { leftoversOnHand } from '../recipe/leftovers-on-hand.ts';
import { type MeltPlan, planByHand } from '../recipe/melt-plan.ts';

/** What a pour is to be. */
export interface PourWanted {
  readonly design: Design;
  /** Good bars. */
  readonly bars: number;
  readonly poured: Day;
  readonly useLeftovers: boolean;
}

/**
 * The plan that a pour is made and recorded by, in amounts that a hand can weigh, with the leftovers that
 * are on hand `today`, or on its own day where that is later. Fails as `planByHand`.
 */
export function planPour(
  book: Book,
  { design, bars, poured, useLeftovers }: PourWanted,
  today: Day,
): Result<MeltPlan> {
  const onHand = leftoversOnHand(book, Math.max(today, poured), useLeftovers);
  return planByHand(design, bars, book.settings, onHand);
}
