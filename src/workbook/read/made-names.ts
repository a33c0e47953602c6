import type { Item } from '../../domain/book/book.ts';
import {
  findMade,
  leftoverName,
  readingsOfMade,
  soapsWithSign,
  spareName,
} from '../../domain/book/find.ts';
import { nameKey, quoted } from '../../domain/kernel/names.ts';
import type { Reading } from './context.ts';
import type { Rows } from './rows.ts';

/**
 * Leftover soap and spare pieces are kept in stock under names of their own ("Teal leftover"): a
 * material or design may not bear one, nor may two of them spell the same, or two things would share one
 * shelf.
 */
export function checkMadeNames(
  materials: Rows<'materials'>,
  designs: Rows<'designs'>,
  molds: Rows<'molds'>,
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
  checkSpelling(molds, reading);
}

/** "A × B × C" could be A from the mold "B × C", and "A × B" from the mold "C". */
function checkSpelling(rows: Rows<'molds'>, reading: Reading): void {
  const rowOf = new Map(rows.map(({ mold, row }) => [nameKey(mold), row]));
  for (const soap of soapsWithSign(reading)) {
    const molds = [...reading.molds.values()];
    for (const name of [leftoverName(soap), ...molds.map((mold) => spareName(soap, mold))]) {
      const readings = readingsOfMade(reading, name);
      const [shorter] = readings.flatMap((made) => (made.kind === 'spare' ? [made] : []));
      if (readings.length < 2 || shorter === undefined) continue;
      reading.findings.add(
        'Molds',
        rowOf.get(nameKey(shorter.mold.name)),
        'Mold',
        `is ${quoted(shorter.mold.name)}, so that ${quoted(name)} could be ${readings.map(inWords).join(' or ')}. Give one of them another name`,
      );
    }
  }
}

function inWords(made: Item): string {
  if (made.kind === 'spare')
    return `spare pieces of ${quoted(made.soap.name)} from ${quoted(made.mold.name)}`;
  return `leftover soap of ${quoted(made.kind === 'leftover' ? made.soap.name : made.name)}`;
}
