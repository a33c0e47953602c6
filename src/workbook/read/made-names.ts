import { findMade } from '../../domain/book/find.ts';
import { quoted } from '../../domain/kernel/names.ts';
import type { Reading } from './context.ts';
import type { Rows } from './rows.ts';

/**
 * Leftover soap and spare pieces are kept in stock under names of their own ("Teal leftover"): a
 * material or design may not bear one, or two things would share one shelf.
 */
export function checkMadeNames(
  materials: Rows<'materials'>,
  designs: Rows<'designs'>,
  reading: Reading,
): void {
  const check = (table: string, row: number, column: string, name: string): void => {
    const made = findMade(reading, name);
    if (made === undefined) return;
    const what = made.kind === 'leftover' ? 'leftover soap' : 'spare pieces';
    reading.findings.add(
      table,
      row,
      column,
      `is ${quoted(name)}, which is the name of ${what} in stock. Give it another name`,
    );
  };
  for (const { row, material } of materials) check('Materials', row, 'Material', material);
  for (const { row, design } of designs) check('Designs', row, 'Design', design);
}
