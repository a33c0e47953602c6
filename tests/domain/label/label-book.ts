import type { Book, Design, Material } from '../../../src/domain/book/book.ts';
import { findDesign, findMaterial } from '../../../src/domain/book/find.ts';
import type { Result } from '../../../src/domain/kernel/result.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { readBook, recogniseTables } from '../../../src/workbook/read/read-book.ts';
import { ranges, table, type Tables, withRows } from '../../support/small-book.ts';

/** The book of some tables, which must be in order. */
export function bookOf(tables: Tables): Book {
  return sound(readBook(sound(recogniseTables(ranges(tables)))));
}

export function sound<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.failure.sentence);
  return result.value;
}

/** The sentence of a refusal; fails where there is an answer. */
export function refusal<T>(result: Result<T>): { kind: string; sentence: string } {
  if (result.ok) throw new Error(`It answered ${JSON.stringify(result.value)}.`);
  return result.failure;
}

export const designOf = (book: Book, name = 'Bar'): Design => sound(findDesign(book, name));
export const materialOf = (book: Book, name: string): Material => sound(findMaterial(book, name));

/** A material of a bar: its kind, unit and what the label asks of it. */
export interface Ingredient {
  readonly name: string;
  readonly kind?: string;
  readonly unit?: string;
  readonly density?: Cell;
  readonly maxPercent?: Cell;
  readonly inci?: string;
  readonly allergens?: string;
}

const blank: Tables = {
  Settings: table('Setting | Value | Note'),
  Materials: table('Material | Kind | Unit | Density g/ml | Max % | INCI | Allergens'),
  Lots: table('Lot | Material | Received | Quantity | Paid | Best before'),
  LedgerLines: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
  ),
  Molds: table(
    'Mold | Makes | Cavities | Fill g',
    ['Tiles', 'tiles', 36, 25],
    ['Bars', 'bars', 6, ''],
  ),
  Colours: table('Colour | Ingredient | Amount | Measure'),
  Designs: table('Design | Bar mold | Net g'),
  Layers: table('Design | Layer | Part | Item | Mold | Per bar | Per'),
  Batches: table('Batch | Poured | Design | Bars | Good | State'),
};

/** Tables for one design "Bar" whose paint lines weigh what is given, in g, besides its own layers. */
export function barTables(
  parts: readonly (Ingredient & { readonly g?: number })[],
  { netG = '', layers = [] }: { readonly netG?: Cell; readonly layers?: readonly Cell[][] } = {},
): Tables {
  const materials = parts.map(
    ({
      name,
      kind = 'extra',
      unit = 'g',
      density = '',
      maxPercent = '',
      inci = '',
      allergens = '',
    }) => [name, kind, unit, density, maxPercent, inci, allergens],
  );
  const painted = parts.flatMap(({ name, g }) =>
    g === undefined ? [] : [['Bar', '9', 'paint', name, '', g, 'g']],
  );
  let tables = withRows(blank, 'Materials', ...materials);
  tables = withRows(tables, 'Designs', ['Bar', 'Bars', netG]);
  return withRows(tables, 'Layers', ...layers, ...painted);
}
