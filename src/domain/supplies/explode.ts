import type { Book, Material } from '../book/book.ts';
import { leftoverName, spareName } from '../book/find.ts';
import { addUnder } from '../kernel/add-under.ts';
import type { Day } from '../kernel/day.ts';
import { type Exact, zero } from '../kernel/exact.ts';
import { answer, type Result } from '../kernel/result.ts';
import { leftoversOnHand } from '../recipe/leftovers-on-hand.ts';
import { materialNeeds } from '../recipe/material-needs.ts';
import { planSitting, type Sitting } from '../recipe/melt-plan.ts';
import type { Batch } from '../schedule/batch.ts';

/** A quantity of a material that must be there on a day. */
export interface Need {
  readonly day: Day;
  /** In the material's stock unit. */
  readonly quantity: Exact;
}

/**
 * What batches take of each material and when: those poured on one day are one sitting, and need theirs
 * on the first day of its work. With `reuse`, leftover soap and spare pieces on hand go in first, and so
 * do those that an earlier sitting leaves over.
 */
export function explode(
  book: Book,
  batches: readonly Batch[],
  from: Day,
  reuse: boolean,
): Result<Map<Material, Need[]>> {
  const byDay = new Map<Day, Batch[]>();
  for (const batch of batches) addUnder(byDay, batch.pourDay, batch);
  const needs = new Map<Material, Need[]>();
  const pool = new Pool(leftoversOnHand(book, from, reuse));
  for (const [, together] of [...byDay].sort(([a], [b]) => a - b)) {
    const sitting = planSitting(together, book.settings, (name) => pool.get(name));
    if (!sitting.ok) return sitting;
    if (reuse) pool.settle(sitting.value);
    const day = Math.min(...together.map(({ firstDay }) => firstDay));
    for (const { material, quantity } of materialNeeds(sitting.value))
      addUnder(needs, material, { day, quantity });
  }
  for (const list of needs.values()) list.sort((a, b) => a.day - b.day);
  return answer(needs);
}

/** Leftover soap and spare pieces as sitting after sitting takes from them and adds to them. */
class Pool {
  private readonly changed = new Map<string, Exact>();
  private readonly start: (itemName: string) => Exact;

  constructor(start: (itemName: string) => Exact) {
    this.start = start;
  }

  get(itemName: string): Exact {
    return this.changed.get(itemName) ?? this.start(itemName);
  }

  settle({ melts }: Sitting): void {
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
