import type { Book, Material } from '../book/book.ts';
import { leftoverName, spareName } from '../book/find.ts';
import { type Day, wholeDay } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { answer, type Result, wrong } from '../kernel/result.ts';
import { leftoversOnHand } from '../recipe/leftovers-on-hand.ts';
import { materialNeeds } from '../recipe/material-needs.ts';
import { type MeltPlan, planMelts } from '../recipe/melt-plan.ts';
import { dryingDays } from '../schedule/capacity.ts';
import type { LineSchedule } from '../schedule/schedule.ts';

/** A quantity of a material that must be there on a day. */
export interface Need {
  readonly day: Day;
  /** In the material's stock unit. */
  readonly quantity: Exact;
}

/**
 * What the lines take of each material and when: on the first day of a line's work, never before `from`. With `reuse`,
 * leftover soap and spare pieces on hand go in first, and so do those that an earlier line leaves over.
 * Fails on a design that has no layers.
 */
export function explode(
  book: Book,
  lines: readonly LineSchedule[],
  from: Day,
  reuse: boolean,
): Result<Map<Material, Need[]>> {
  const needs = new Map<Material, Need[]>();
  const pool = new Pool(leftoversOnHand(book, from, reuse));
  for (const { open, parts } of lines) {
    const { design, planLine, readyBy } = open.line;
    if (open.barsToMake === 0) continue;
    const plan = planMelts(design, open.barsToMake, book.settings, (name) => pool.get(name));
    if (!plan.ok) return wrong(`Plan line ${planLine}: ${plan.failure.sentence}`);
    if (reuse) pool.settle(plan.value);
    const latestPour = wholeDay(readyBy) - dryingDays(design);
    const placed = Math.min(latestPour, ...parts.map(({ firstDay }) => firstDay));
    // What should have been poured by now is poured today at the soonest, and is needed then.
    const day = Math.max(from, placed);
    for (const { material, quantity } of materialNeeds(plan.value)) {
      const known = needs.get(material) ?? [];
      known.push({ day, quantity });
      needs.set(material, known);
    }
  }
  for (const list of needs.values()) list.sort((a, b) => a.day - b.day);
  return answer(needs);
}

/** Leftover soap and spare pieces as line after line takes from them and adds to them. */
class Pool {
  private readonly changed = new Map<string, Exact>();
  private readonly start: (itemName: string) => Exact;

  constructor(start: (itemName: string) => Exact) {
    this.start = start;
  }

  get(itemName: string): Exact {
    return this.changed.get(itemName) ?? this.start(itemName);
  }

  settle({ melts }: MeltPlan): void {
    for (const { soap, shapes, remeltG, leftoverG } of melts) {
      this.change(leftoverName(soap), leftoverG.minus(remeltG));
      for (const { mold, piecesFromSpares, sparePieces } of shapes) {
        this.change(spareName(soap, mold), sparePieces.minus(piecesFromSpares));
      }
    }
  }

  private change(itemName: string, by: Exact): void {
    if (!by.eq(zero)) this.changed.set(itemName, this.get(itemName).plus(by));
  }
}
