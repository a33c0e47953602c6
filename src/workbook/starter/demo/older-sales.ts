import type { Day } from '../../../domain/kernel/day.ts';
import { dice } from '../../../domain/kernel/dice.ts';
import type { RowOfCells } from '../table-rows.ts';
import { serial } from '../serial.ts';
import { demoDesigns } from './designs.ts';
import { expectedBars, popularity } from './season.ts';

const SEED = 20231101;

/** Two winters before the ledger began, and how strong each was beside the year of the ledger. */
const years = [
  { from: 2023, firstMonth: 11, strength: 0.72, discount: 1 },
  { from: 2024, firstMonth: 11, strength: 0.86, discount: 0.5 },
] as const;
/** The ledger has December 2025 itself. */
const MONTHS = [12, 13] as const;
const DAYS = 30;

/**
 * What the invented maker's notebook says of each month before the ledger: so many bars of each design,
 * summed up on the month's last day. These bars were never in the ledger, so they take nothing out of it.
 */
export function olderSales(): RowOfCells<'sales'>[] {
  const roll = dice(SEED);
  return years.flatMap(({ from, firstMonth, strength, discount }, year) =>
    Array.from({ length: MONTHS[year] ?? 0 }, (_, after) => {
      const month = firstMonth + after;
      return monthOf(from + Math.floor((month - 1) / 12), ((month - 1) % 12) + 1, roll, {
        strength,
        discount,
      });
    }).flat(),
  );
}

function monthOf(
  year: number,
  month: number,
  roll: () => number,
  { strength, discount }: { readonly strength: number; readonly discount: number },
): RowOfCells<'sales'>[] {
  const iso = `${String(year)}-${String(month).padStart(2, '0')}`;
  const first = serial(`${iso}-01`);
  return demoDesigns.flatMap(({ design, price }, index) => {
    const share = popularity[String(design)] ?? 0;
    const usual = expectedBars(first, DAYS) * share * strength;
    const bars = Math.round(usual * (0.85 + 0.3 * roll()));
    if (bars === 0) return [];
    return {
      sale: `N-${iso}.${String(index + 1).padStart(2, '0')}`,
      soldOn: lastDayOf(year, month),
      design: String(design),
      bars,
      priceEach: Number(price) - discount,
    };
  });
}

const lastDayOf = (year: number, month: number): Day =>
  (month === 12
    ? serial(`${String(year + 1)}-01-01`)
    : serial(`${String(year)}-${String(month + 1).padStart(2, '0')}-01`)) - 1;
