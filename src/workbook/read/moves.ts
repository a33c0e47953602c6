import type { Item, Lot, Material } from '../../domain/book/book.ts';
import { type Catalogue, findItem } from '../../domain/book/find.ts';
import { Ledger, nameKeysIn } from '../../domain/book/ledger.ts';
import { nameKey, quoted } from '../../domain/kernel/names.ts';
import { oncePer } from '../../domain/kernel/once-per.ts';
import type { Result } from '../../domain/kernel/result.ts';
import { isExcused, noted, type Reading } from './context.ts';
import { type MoveCells, signOf } from './move-cells.ts';
import type { Rows } from './rows.ts';

/** The ledger, where each line's cells, item and lot make sense; else undefined. */
export function ledgerOf(
  cells: MoveCells,
  lots: readonly Lot[],
  catalogue: Catalogue,
): Ledger | undefined {
  const found = cells.materials.values.map((name) => findItem(catalogue, name));
  const items = found.flatMap((item) => (item.ok ? [item.value] : []));
  if (!cells.sound || items.length < found.length) return undefined;
  const columns = { ...cells, items: { values: items, places: cells.materials.places } };
  return haveRightLots(columns, lots) ? new Ledger(columns, cells.prints) : undefined;
}

/** `checkLot` for all rows at once: whether each material's lot is blank or one of its own. */
function haveRightLots(
  { items, lots }: Pick<Ledger['columns'], 'items' | 'lots'>,
  known: readonly Lot[],
): boolean {
  const byKey = ownersOf(known);
  const materials = items.values.map((item) => (item.kind === 'material' ? item.material : ANY));
  const owners = nameKeysIn(lots.values).map((key) => (key === '' ? ANY : byKey.get(key)));
  for (let row = 0; row < items.places.length; row += 1) {
    const material = materials[items.places[row] as number];
    const owner = owners[lots.places[row] as number];
    if (material !== owner && material !== ANY && owner !== ANY) return false;
  }
  return true;
}

/** The material of each lot by the lot's `nameKey`. */
const ownersOf = oncePer(
  (lots: readonly Lot[]): ReadonlyMap<string, Material> =>
    new Map(lots.map((lot) => [nameKey(lot.lot), lot.material])),
);

/** Stands for every material. */
const ANY = Symbol('any material');

/** Notes what is wrong with the lines of Moves: item, sign and lot. */
export function explainMoves(rows: Rows<'moves'>, lots: readonly Lot[], reading: Reading): void {
  const lotsByKey = new Map(lots.map((lot) => [nameKey(lot.lot), lot]));
  // A ledger of years names few things many times: each spelling is looked up once.
  const items = new Map<string, Result<Item>>();
  for (const row of rows) {
    let found = items.get(row.material);
    if (found === undefined) {
      found = findItem(reading, row.material);
      items.set(row.material, found);
    }
    if (found.ok) {
      checkSign(row, reading);
      checkLot(row, found.value, lotsByKey, reading);
    } else if (!isExcused(row.material, reading)) {
      noted(reading, { table: 'Moves', row: row.row, column: 'Material' }, found);
    }
  }
}

function checkSign(row: Rows<'moves'>[number], reading: Reading): void {
  const sign = signOf(row.reason);
  if (sign === undefined || row.quantity === 0 || Math.sign(row.quantity) === sign) return;
  const way =
    sign < 0 ? 'takes stock away: type it with a minus' : 'adds to stock: type it without a minus';
  reading.findings.add(
    'Moves',
    row.row,
    'Quantity',
    `is ${row.quantity}, but "${row.reason}" ${way}`,
  );
}

/** A material's lot must be one of its own; soap and bars name the batch they come from instead. */
function checkLot(
  row: Rows<'moves'>[number],
  item: Item,
  lots: ReadonlyMap<string, Lot>,
  reading: Reading,
): void {
  if (row.lot === undefined || item.kind !== 'material') return;
  const lot = lots.get(nameKey(row.lot));
  if (lot === undefined) {
    if (reading.findings.excused('Lots', row.lot)) return;
    reading.findings.add(
      'Moves',
      row.row,
      'Lot',
      `is ${quoted(row.lot)}, which is not a lot in Lots. Leave it blank if you don't know the lot`,
    );
  } else if (lot.material !== item.material) {
    reading.findings.add(
      'Moves',
      row.row,
      'Lot',
      `is ${quoted(row.lot)}, which is a lot of ${lot.material.name}, not of ${item.name}. Name a lot of ${item.name}, or leave it blank if you don't know the lot`,
    );
  }
}
