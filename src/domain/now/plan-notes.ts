import type { Book } from '../book/book.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { nameKey } from '../kernel/names.ts';
import { oncePerKey } from '../kernel/once-per.ts';
import { andThen, answer, type Result } from '../kernel/result.ts';
import { fairLoad } from '../sell/fair-load.ts';
import { calendar } from '../schedule/calendar.ts';
import { supplies, type SupplyOptions } from '../supplies/supplies.ts';

/** Something that the plan leaves to see to, or had to take for granted. */
export interface PlanNote {
  /**
   * A plan line that does not fit or can't be planned, one of the past, a calendar that may not be the
   * best, a material, a fair whose
   * demand is little known, or what is assumed.
   */
  readonly kind: 'line' | 'past line' | 'calendar' | 'material' | 'fair' | 'assumed';
  /** The plan line's, the material's or the fair's name; Calendar; blank for what is assumed. */
  readonly about: string;
  readonly sentence: string;
}

/**
 * Everything that calendar and supplies have to say beside their figures. Fails where Plan has no line.
 * Kept for the book: finding what would make a plan fit takes a while.
 */
export function planNotes(book: Book, from: Day, options: SupplyOptions): Result<PlanNote[]> {
  const key = `${String(wholeDay(from))} ${String(options.reuse)}`;
  return kept(book, key, () => workOut(book, from, options));
}

const kept = oncePerKey<Book, Result<PlanNote[]>>();

function workOut(book: Book, from: Day, options: SupplyOptions): Result<PlanNote[]> {
  return andThen(calendar(book, from), ({ notices, proof, assumptions }) => {
    const bought = supplies(book, from, options);
    // Where nothing can be bought, the calendar has said why.
    const notes = bought.ok ? bought.value.notes : [];
    return answer([
      ...notices.map(({ line, sentence }): PlanNote => ({
        kind: line.readyBy < wholeDay(from) ? 'past line' : 'line',
        about: line.planLine,
        sentence,
      })),
      ...proof.map((sentence): PlanNote => ({ kind: 'calendar', about: 'Calendar', sentence })),
      ...notes.map(({ material, sentence }): PlanNote => ({
        kind: 'material',
        about: material.name,
        sentence,
      })),
      ...fairNotes(book, from),
      ...assumptions.map((sentence): PlanNote => ({ kind: 'assumed', about: '', sentence })),
    ]);
  });
}

/** What FAIRLOAD has to assume of the fairs that the plan is for. */
function fairNotes(book: Book, from: Day): PlanNote[] {
  const planned = new Set(book.plan.map(({ fair }) => nameKey(fair)));
  return [...book.fairs.values()]
    .filter(({ fair, opens }) => wholeDay(opens) >= wholeDay(from) && planned.has(nameKey(fair)))
    .flatMap((fair) => {
      const load = fairLoad(book, fair);
      const sentences = load.ok ? load.value.assumed : [];
      return sentences.map((sentence): PlanNote => ({ kind: 'fair', about: fair.fair, sentence }));
    });
}
