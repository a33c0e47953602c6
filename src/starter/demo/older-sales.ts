import { dice } from '../../domain/kernel/dice.ts';
import type { RowOfCells } from '../blocks/table-rows.ts';
import { demoDesigns } from './designs.ts';
import { expectedBars, firstDay, popularity } from './season.ts';

const SEED = 20231101;
const WEEK_DAYS = 7;
/** Two years and a month, so that the forecast looks back on three of each winter month. */
const WEEKS = 109;
/** How strong each year before the ledger was beside the ledger's own, and how much cheaper a bar. */
const earlier = { weeks: 57, strength: 0.72, discount: 1 } as const;
const later = { strength: 0.86, discount: 0.5 } as const;

/**
 * What the invented maker's notebook says of each week before the ledger: so many bars of each design,
 * summed up on its last day. These bars were never in the ledger, so they take nothing out of it. By
 * weeks, since days moved by whole weeks keep them whole.
 */
export function olderSales(): RowOfCells<'sales'>[] {
  const roll = dice(SEED);
  return Array.from({ length: WEEKS }, (_, week) => weekOf(week, roll)).flat();
}

function weekOf(week: number, roll: () => number): RowOfCells<'sales'>[] {
  const first = firstDay - WEEK_DAYS * (WEEKS - week);
  const { strength, discount } = week < earlier.weeks ? earlier : later;
  return demoDesigns.flatMap(({ design, price }, index) => {
    const share = popularity[String(design)] ?? 0;
    const usual = expectedBars(first, WEEK_DAYS) * share * strength;
    const bars = Math.floor(usual * (0.85 + 0.3 * roll()) + roll());
    if (bars === 0) return [];
    return {
      sale: `N-${String(week + 1).padStart(3, '0')}.${String(index + 1).padStart(2, '0')}`,
      soldOn: first + WEEK_DAYS - 1,
      design: String(design),
      bars,
      priceEach: Number(price) - discount,
    };
  });
}
