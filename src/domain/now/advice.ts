import { count } from '../kernel/count.ts';
import { type Day, isoDate } from '../kernel/day.ts';

/** Kinds of work; of two that are due on one day, the one that stands first here comes first. */
export const adviceKinds = ['order', 'pour', 'sell', 'count'] as const;
export type AdviceKind = (typeof adviceKinds)[number];

/** One thing worth doing. */
export interface Advice {
  readonly kind: AdviceKind;
  /** What to do, in a few words. */
  readonly title: string;
  /** Why, a sentence each. */
  readonly reasons: readonly string[];
  /** The last day to do it; before today it is late. */
  readonly due: Day;
}

/** `by 2026-11-28`, or how late it is. */
export function byWhen(due: Day, today: Day): string {
  if (due > today) return `by ${isoDate(due)}`;
  if (due === today) return 'today';
  return `${count(today - due, 'day')} late`;
}
