import type { Lot } from '../../domain/book/book.ts';
import { findMaterial } from '../../domain/book/find.ts';
import { noted, type Reading } from './context.ts';
import type { Rows } from './rows.ts';
import { checkPartner } from './trade.ts';

export function readLots(rows: Rows<'lots'>, reading: Reading): Lot[] {
  const lots: Lot[] = [];
  for (const row of rows) {
    checkPartner('Lots', row.row, 'Paid by', row.paidBy, reading);
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
      paidBy: row.paidBy ?? '',
    });
  }
  return lots;
}
