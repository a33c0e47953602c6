import { nameKey } from '../../domain/kernel/names.ts';
import { type TableKind, tableKinds, tables } from '../schema.ts';

/** A cell that a finding speaks of; row 1 is the first below the headers. */
export interface FindingPlace {
  readonly kind: TableKind;
  readonly row: number;
  readonly header?: string;
}

/** The cell that a finding's sentence begins with; undefined where it names none. */
export function placeOfFinding(sentence: string): FindingPlace | undefined {
  const [, table = '', row = '', rest = ''] = /^([^,]+), row (\d+)(.*)/su.exec(sentence) ?? [];
  const kind = tableKinds.find((known) => nameKey(tables[known].name) === nameKey(table));
  if (kind === undefined) return undefined;
  const [header] = Object.values(tables[kind].columns)
    .map((column) => column.header)
    .filter((known) => rest.startsWith(`, ${known} `))
    .sort((a, b) => b.length - a.length);
  return { kind, row: Number(row), ...(header === undefined ? {} : { header }) };
}
