import type { Book, PlanLine } from '../book/book.ts';
import { itemOfBars } from '../book/find.ts';
import { type Day, isoDate, wholeDay } from '../kernel/day.ts';
import { notBelowZero, toCell } from '../kernel/exact.ts';
import { compareNames } from '../kernel/names.ts';
import { answer, notYet, type Result } from '../kernel/result.ts';
import { onHand } from '../stock/on-hand.ts';

/** A line of Plan with the bars on hand taken off. */
export interface OpenLine {
  readonly line: PlanLine;
  readonly barsOnHand: number;
  readonly barsToMake: number;
}

export interface OpenPlan {
  /** By Ready by, then by the name of the plan line. */
  readonly open: readonly OpenLine[];
  /** Ready by a day before `from`: nothing can be done for them any more. */
  readonly past: readonly PlanLine[];
}

/**
 * The plan from a day on. Good bars on hand go to the earliest lines of their design first. Fails where
 * Plan has no line.
 */
export function openPlan(book: Book, from: Day): Result<OpenPlan> {
  const day = wholeDay(from);
  if (book.plan.length === 0)
    return notYet(
      'Plan has no lines. Add the bars you mean to make and the day they must be ready.',
    );
  const inTime = book.plan.filter(({ readyBy }) => wholeDay(readyBy) >= day).sort(inOrder);
  const shelf = new Map<string, number>();
  const open = inTime.map((line): OpenLine => {
    const { name } = line.design;
    const there =
      shelf.get(name) ??
      Math.floor(toCell(notBelowZero(onHand(book, itemOfBars(line.design), day))));
    const barsOnHand = Math.min(there, line.bars);
    shelf.set(name, there - barsOnHand);
    return { line, barsOnHand, barsToMake: line.bars - barsOnHand };
  });
  return answer({
    open,
    past: book.plan.filter(({ readyBy }) => wholeDay(readyBy) < day).sort(inOrder),
  });
}

const inOrder = (a: PlanLine, b: PlanLine): number =>
  wholeDay(a.readyBy) - wholeDay(b.readyBy) || compareNames(a.planLine, b.planLine);

/** Why a line of the past is in no plan. */
export function pastSentence({ planLine, readyBy }: PlanLine, from: Day): string {
  return `Plan line ${planLine} was to be ready by ${isoDate(readyBy)}, before ${isoDate(from)}. Give it a later day or take it out of Plan.`;
}
