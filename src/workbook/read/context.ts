import type { Catalogue } from '../../domain/book/find.ts';
import type { Assumption, Design, Material, Mold, Soap } from '../../domain/book/book.ts';
import type { Partner, SellingPlace } from '../../domain/book/trade.ts';
import type { Exact } from '../../domain/kernel/exact.ts';
import { exact } from '../../domain/kernel/exact.ts';
import { nameKey } from '../../domain/kernel/names.ts';
import type { Result } from '../../domain/kernel/result.ts';
import { bridgeOf, convert } from '../../domain/measure/convert.ts';
import { findUnit, type Measure } from '../../domain/measure/units.ts';
import type { Findings } from './findings.ts';

/** A book while it is being read: the names found so far, and what was wrong or assumed. */
export interface Reading extends Catalogue {
  readonly materials: Map<string, Material>;
  readonly molds: Map<string, Mold>;
  readonly colours: Map<string, Soap>;
  readonly designs: Map<string, Design>;
  readonly places: Map<string, SellingPlace>;
  readonly partners: Map<string, Partner>;
  readonly findings: Findings;
  /** By their sentence, since many lines may ask for one. */
  readonly assumptions: Map<string, Assumption>;
}

/** Notes an assumption, once. */
export function assume(reading: Reading, assumption: Assumption): void {
  reading.assumptions.set(assumption.sentence, assumption);
}

/** A cell that shows 8 % holds 0.08; a percent below 1 may be meant all the same, so it is only said. */
export function noteSmall(
  reading: Reading,
  kind: Assumption['kind'],
  about: string,
  what: string,
  percent: number,
): void {
  if (percent <= 0 || percent >= 1) return;
  const meant = Number((percent * 100).toPrecision(15));
  const sentence = `${what} is ${percent}, less than 1 %: write ${meant} if ${meant} % is meant.`;
  assume(reading, { kind, about, sentence });
}

/** Where a value stands, for findings. */
export interface FindingPlace {
  readonly table: string;
  readonly row: number;
  readonly column: string;
}

/** The answer of a look-up, or undefined with its sentence noted as a finding at the place. */
export function noted<T>(reading: Reading, place: FindingPlace, result: Result<T>): T | undefined {
  if (result.ok) return result.value;
  const { failure } = result;
  reading.findings.add(place.table, place.row, place.column, () => asEnding(failure.sentence));
  return undefined;
}

/** Turns `"Tael" is not a colour.` into the end of a sentence that begins with the cell. */
function asEnding(sentence: string): string {
  // A name may hold quotation marks of its own, so the sentence is cut where its own words go on.
  return sentence.startsWith('"')
    ? `is ${sentence.replace(/" (is (?=not |a )|has the kind )/u, '", which $1')}`
    : `can't be used: ${sentence}`;
}

/** Whether a name, or a name that stock of it is kept under, belongs to a row that has findings of its own. */
export function isExcused(name: string, { findings }: Reading): boolean {
  const words = nameKey(name)
    .replace(/ (?:leftover|seconds)$/u, '')
    .split(/ [×@] /u);
  const naming = ['Materials', 'Colours', 'Designs', 'Molds', 'Fairs', 'Places', 'Partners'];
  return words.some((word) => naming.some((table) => findings.excused(table, word)));
}

/** A blank optional number, or the exact decimal of the cell. */
export const optional = (cell: number | undefined): Exact | undefined =>
  cell === undefined ? undefined : exact(cell);

/** Converts an amount of a material, noting where its density had to be assumed. */
export function convertNoting(
  reading: Reading,
  amount: Exact,
  from: Measure,
  to: Measure,
  material: Material,
): Result<Exact> {
  const dimensions = [findUnit(from)?.dimension, findUnit(to)?.dimension];
  const crosses = dimensions[0] !== dimensions[1] && !dimensions.includes('count');
  if (
    crosses &&
    dimensions.includes('mass') &&
    bridgeOf(material, from === 'drops' || to === 'drops')?.densityAssumed === true
  ) {
    assume(reading, {
      kind: 'density',
      about: material.name,
      sentence: `${material.name} is taken to weigh 1 g per ml: weigh 10 ml of it and fill in Density g/ml in Materials.`,
    });
  }
  return convert(amount, from, to, material);
}
