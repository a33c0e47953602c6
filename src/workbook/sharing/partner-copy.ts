import type { Book } from '../../domain/book/book.ts';
import { type Day, isoDate } from '../../domain/kernel/day.ts';
import { nameKey, quoted } from '../../domain/kernel/names.ts';
import type { TableNames } from '../find-tables.ts';
import type { Cell, ValueSheet, ValueWorkbook } from '../port.ts';
import { answerSheets } from './partner-answers.ts';
import { valueSheet } from './partner-table.ts';

export interface PartnerCopy {
  readonly workbook: ValueWorkbook;
  /** Where a supplier's name still stands, since it is part of a name of the maker's own; a sentence each. */
  readonly stillNamed: readonly string[];
}

/**
 * A copy for a partner: what is in stock, what a bar costs, and every table, as values only. Without
 * costs no column of money, supplier or free text is in it, nor any column or setting that isn't
 * known to be free of them.
 */
export function partnerCopy(
  book: Book,
  names: TableNames,
  today: Day,
  withCosts: boolean,
): PartnerCopy {
  const title = `Pour Ledger, ${withCosts ? 'with' : 'without'} costs, ${isoDate(today)}`;
  const sheets = [
    ...answerSheets(book, today, withCosts),
    ...[...names].flatMap(([kind, table]) => valueSheet(kind, table, withCosts) ?? []),
  ];
  return {
    workbook: {
      fileName: `pour-ledger-${withCosts ? '' : 'no-costs-'}${isoDate(today)}`,
      title,
      sheets,
    },
    stillNamed: withCosts ? [] : sheets.flatMap((sheet) => stillNamed(sheet, suppliersOf(book))),
  };
}

function suppliersOf(book: Book): string[] {
  const all = [...book.materials.values(), ...book.lots].map(({ supplier }) => supplier);
  return [...new Map(all.map((name) => [nameKey(name), name])).values()].filter(Boolean);
}

function stillNamed({ name, rows }: ValueSheet, suppliers: readonly string[]): string[] {
  if (suppliers.length === 0) return [];
  // A long ledger says few things many times.
  const cells = new Set<Cell>();
  for (const row of rows) for (const cell of row) cells.add(cell);
  const texts = Array.from(cells, (cell) => nameKey(String(cell)));
  return suppliers
    .filter((supplier) => texts.some((text) => text.includes(nameKey(supplier))))
    .map(
      (supplier) =>
        `${name} still has ${quoted(supplier)} in it, as part of a name or number of your own. Rename it first if your partner should not see it.`,
    );
}
