import type { Fair, Item } from '../../domain/book/book.ts';
import {
  findDesign,
  findFair,
  findItem,
  findMaterial,
  findMold,
  findPartner,
  findPlace,
} from '../../domain/book/find.ts';
import { answer, type Result } from '../../domain/kernel/result.ts';
import { tables, type TableKind } from '../schema.ts';
import { findIngredient } from './colours.ts';
import { isExcused, noted, type Reading } from './context.ts';
import type { HalfRow } from './rows.ts';

/** Everything that a name may stand for, once all tables are read. */
interface Known {
  readonly reading: Reading;
  readonly fairs: ReadonlyMap<string, Fair>;
}

type LookUp = (name: string, known: Known) => Result<unknown>;

const design: LookUp = (name, { reading }) => findDesign(reading, name);
const mold: LookUp = (name, { reading }) => findMold(reading, name);
const material: LookUp = (name, { reading }) => findMaterial(reading, name);
const item: LookUp = (name, { reading }) => findItem(reading, name);
const ingredient: LookUp = (name, { reading }) => findIngredient(name, reading);
const place: LookUp = (name, { reading }) => findPlace(reading.places, name);
const partner: LookUp = (name, { reading }) =>
  reading.partners.size === 0 ? answer(name) : findPartner(reading.partners, name);
/** A design's good bars or its seconds. */
const sold: LookUp = (name, known) => {
  const found = item(name, known);
  return found.ok && (found.value as Item).kind === 'seconds' ? found : design(name, known);
};
const fair: LookUp = (name, { fairs }) => findFair(fairs, name);

/** Columns that name something of another table. */
const lookUps: Partial<Readonly<Record<TableKind, Readonly<Record<string, LookUp>>>>> = {
  lots: { material, paidBy: partner },
  moves: { material: item },
  colours: { ingredient },
  designs: { barMold: mold },
  layers: { design, item: ingredient, mold },
  batches: { design },
  plan: { design, fair },
  sales: { design: sold, fair, place, takenBy: partner },
  sets: { item },
  priceBreaks: { material },
};

/**
 * Looks up the names in rows that had a bad cell, so that a second fault of a row is told together
 * with the first. Their book is refused in any case.
 */
export function checkHalfRows(halfRows: readonly HalfRow[], known: Known): void {
  for (const { kind, row, cells } of halfRows) {
    const { name: table, columns } = tables[kind];
    for (const [key, lookUp] of Object.entries(lookUps[kind] ?? {})) {
      const typed = cells[key];
      if (typeof typed !== 'string' || isExcused(typed, known.reading)) continue;
      const header = Object.entries(columns).find(([column]) => column === key)?.[1].header ?? '';
      noted(known.reading, { table, row, column: header }, lookUp(typed, known));
    }
  }
}
