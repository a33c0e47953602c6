import type { Item, Lot, Move } from '../../domain/book/book.ts';
import { findItem, findMaterial } from '../../domain/book/find.ts';
import type { MoveReason } from '../../domain/book/words.ts';
import { nameKey, quoted } from '../../domain/kernel/names.ts';
import type { Result } from '../../domain/kernel/result.ts';
import { isExcused, noted, type Reading } from './context.ts';
import type { Rows } from './rows.ts';

export function readLots(rows: Rows<'lots'>, reading: Reading): Lot[] {
  const lots: Lot[] = [];
  for (const row of rows) {
    const found = findMaterial(reading, row.material);
    if (!found.ok) {
      // The lot does stand in Lots, so moves that name it are not blamed.
      reading.findings.excuse('Lots', row.lot);
      if (!reading.findings.excused('Materials', row.material))
        noted(reading, { table: 'Lots', row: row.row, column: 'Material' }, found);
      continue;
    }
    lots.push({
      lot: row.lot,
      material: found.value,
      received: row.received,
      quantity: row.quantity,
      paid: row.paid,
      freight: row.freight ?? 0,
      bestBefore: row.bestBefore,
      supplier: row.supplier ?? '',
    });
  }
  return lots;
}

/** The sign that each reason must have; counted and reversed may have either. */
const signOf: Partial<Readonly<Record<MoveReason, 1 | -1>>> = {
  used: -1,
  sold: -1,
  wasted: -1,
  'left over': 1,
  spare: 1,
  made: 1,
};

/** Reads the ledger; each line's item, sign and lot must make sense. */
export function readMoves(rows: Rows<'moves'>, lots: readonly Lot[], reading: Reading): Move[] {
  const lotsByKey = new Map(lots.map((lot) => [nameKey(lot.lot), lot]));
  // A ledger of years names few things many times: each spelling is looked up once.
  const items = new Map<string, Result<Item>>();
  const moves: Move[] = [];
  for (const row of rows) {
    let found = items.get(row.material);
    if (found === undefined) {
      found = findItem(reading, row.material);
      items.set(row.material, found);
    }
    if (!found.ok) {
      if (!isExcused(row.material, reading))
        noted(reading, { table: 'Moves', row: row.row, column: 'Material' }, found);
      continue;
    }
    checkSign(row, reading);
    checkLot(row, found.value, lotsByKey, reading);
    moves.push({
      entry: row.entry,
      when: row.when,
      reason: row.reason,
      item: found.value,
      quantity: row.quantity,
      lot: row.lot ?? '',
      value: row.value,
      batch: row.batch ?? '',
      by: row.by ?? '',
      note: row.note ?? '',
    });
  }
  return moves;
}

function checkSign(row: Rows<'moves'>[number], reading: Reading): void {
  const sign = signOf[row.reason];
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
      `is ${quoted(row.lot)}, which is a lot of ${lot.material.name}, not of ${item.name}`,
    );
  }
}
