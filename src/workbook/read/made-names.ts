import type { Item } from '../../domain/book/book.ts';
import {
  findMade,
  leftoverName,
  placedName,
  readingsOfMade,
  secondsName,
  soapsWithSign,
  spareName,
} from '../../domain/book/find.ts';
import { nameKey, quoted } from '../../domain/kernel/names.ts';
import type { FindingPlace, Reading } from './context.ts';
import type { Rows } from './rows.ts';

/**
 * What was made is kept in stock under names of their own ("Teal leftover"): a material or design may
 * not bear one, nor may two of them spell the same, or two things would share one shelf.
 */
export function checkMadeNames(
  {
    materials,
    designs,
    molds,
  }: {
    readonly materials: Rows<'materials'>;
    readonly designs: Rows<'designs'>;
    readonly molds: Rows<'molds'>;
  },
  reading: Reading,
): void {
  const check = (table: string, row: number, column: string, name: string): void => {
    const made = findMade(reading, name);
    if (made === undefined) return;
    const what = madeWords[made.kind];
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

const madeWords: Readonly<Record<Item['kind'], string>> = {
  material: 'a material',
  bars: 'bars',
  leftover: 'leftover soap',
  spare: 'spare pieces',
  seconds: 'seconds',
  placed: 'bars at a place',
};

/** "A @ B @ C" could be A at the place "B @ C", and "A @ B" at the place "C"; seconds may spell like spares. */
export function checkPlacedNames(
  designs: Rows<'designs'>,
  places: Rows<'places'>,
  reading: Reading,
): void {
  for (const { row, design: named } of designs) {
    const design = reading.designs.get(nameKey(named));
    if (design === undefined) continue;
    sayTwoReadings(
      secondsName(design),
      { table: 'Designs', row, column: 'Design' },
      named,
      reading,
    );
    for (const { row: placeRow, place: name } of places) {
      const place = reading.places.get(nameKey(name));
      if (place === undefined) continue;
      const at = { table: 'Places', row: placeRow, column: 'Place' };
      sayTwoReadings(placedName(design, place), at, name, reading);
    }
  }
}

function sayTwoReadings(made: string, at: FindingPlace, name: string, reading: Reading): void {
  const readings = readingsOfMade(reading, made);
  if (readings.length < 2) return;
  reading.findings.add(
    at.table,
    at.row,
    at.column,
    `is ${quoted(name)}, so that ${quoted(made)} could be ${readings.map(inWords).join(' or ')}. Give one of them another name`,
  );
}

function inWords(made: Item): string {
  if (made.kind === 'placed')
    return `bars of ${quoted(made.design.name)} at ${quoted(made.place.name)}`;
  if (made.kind === 'seconds') return `seconds of ${quoted(made.design.name)}`;
  if (made.kind === 'spare')
    return `spare pieces of ${quoted(made.soap.name)} from ${quoted(made.mold.name)}`;
  return `leftover soap of ${quoted(made.kind === 'leftover' ? made.soap.name : made.name)}`;
}
