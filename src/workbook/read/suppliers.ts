import type { PriceBreak, SupplierTerms } from '../../domain/book/book.ts';
import { findMaterial } from '../../domain/book/find.ts';
import { exact, zero } from '../../domain/kernel/exact.ts';
import { nameKey, nearestName, quoted } from '../../domain/kernel/names.ts';
import { assume, noted, optional, type Reading } from './context.ts';
import { groupRows, type Rows } from './rows.ts';

/** What Suppliers and PriceBreaks say of a material; without them nothing. */
export interface Buying {
  readonly termsOf: (row: Rows<'materials'>[number]) => SupplierTerms | undefined;
  /** By ascending packs. */
  readonly breaksOf: (material: string) => readonly PriceBreak[];
}

export function readBuying(
  supplierRows: Rows<'suppliers'>,
  breakRows: Rows<'priceBreaks'>,
  reading: Reading,
): Buying {
  const terms = new Map(supplierRows.map((row) => [nameKey(row.supplier), termsIn(row)]));
  const breaks = groupRows(breakRows, ({ material }) => material);
  for (const rows of breaks.values()) checkRepeats(rows, reading);
  const sorted = new Map([...breaks].map(([key, rows]) => [key, breaksIn(rows)]));
  return {
    termsOf: (row) => {
      noteNearSupplier(row, [...terms.values()], reading);
      return terms.get(nameKey(row.supplier ?? ''));
    },
    breaksOf: (material) => sorted.get(nameKey(material)) ?? [],
  };
}

const termsIn = (row: Rows<'suppliers'>[number]): SupplierTerms => ({
  supplier: row.supplier,
  carriage: optional(row.carriage) ?? zero,
  freeFrom: optional(row.freeFrom),
  leadDays: optional(row.leadDays),
});

const breaksIn = (rows: Rows<'priceBreaks'>): PriceBreak[] =>
  rows
    .map(({ fromPacks, packPrice }) => ({ fromPacks, packPrice: exact(packPrice) }))
    .sort((a, b) => a.fromPacks - b.fromPacks);

/** Two prices for the same packs: which of them holds can't be told. */
function checkRepeats(rows: Rows<'priceBreaks'>, { findings }: Reading): void {
  const first = new Map<number, number>();
  for (const { row, material, fromPacks } of rows) {
    const before = first.get(fromPacks);
    if (before === undefined) first.set(fromPacks, row);
    else
      findings.add(
        'PriceBreaks',
        row,
        'From packs',
        `is ${fromPacks}, which row ${before} says of ${quoted(material)} already. Each number of packs may stand once for a material`,
      );
  }
}

/** A slip in a name would lose the supplier's carriage without a word; but two names may be alike, so it is only said. */
function noteNearSupplier(
  { material, supplier = '' }: Rows<'materials'>[number],
  known: readonly SupplierTerms[],
  reading: Reading,
): void {
  const near = nearestName(
    supplier,
    known.map((terms) => terms.supplier),
  );
  if (near === undefined || nameKey(near) === nameKey(supplier)) return;
  assume(reading, {
    kind: 'setting',
    about: supplier,
    sentence: `${material} is bought from ${quoted(supplier)}, which is not in Suppliers: if ${quoted(near)} is meant, write both alike.`,
  });
}

/** Each price must be of a material that there is. */
export function checkBreakNames(rows: Rows<'priceBreaks'>, reading: Reading): void {
  for (const { row, material } of rows) {
    if (reading.findings.excused('Materials', material)) continue;
    const place = { table: 'PriceBreaks', row, column: 'Material' };
    noted(reading, place, findMaterial(reading, material));
  }
}
