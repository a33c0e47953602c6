import { nameKey } from '../../domain/kernel/names.ts';
import type { Column } from '../column.ts';
import { type TableKind, tableKinds, tables } from '../schema.ts';
import type { Findings } from './findings.ts';

/**
 * Rows of cells with the headers first, as a host hands a table to a function: read where they are,
 * since a copy of a long ledger takes as long as reading it.
 */
export type TableRange = readonly (readonly unknown[])[];

/** A range known to be one of the tables: where each of its columns stands. */
export interface RecognisedTable {
  readonly kind: TableKind;
  /** Position in the range for each column key of the schema; missing keys are absent. */
  readonly position: ReadonlyMap<string, number>;
  /** Each column key of the schema with how its cells are read, as the host hands blank ones over. */
  readonly columns: Readonly<Record<string, Column<unknown>>>;
  /** Whether every 0 in it may be a blank cell of the host's. */
  readonly hasZerosForBlanks: boolean;
  readonly range: TableRange;
}

/**
 * Tells which table a range is by its headers, wherever they stand. The kind with most required
 * headers there and fewest missing wins: a table that lacks one is named, not mistaken, and columns
 * of the maker's own that are called like another table's change nothing.
 */
export function recogniseTable(
  range: TableRange,
  ordinal: number,
  findings: Findings,
): RecognisedTable | undefined {
  const headers = (range[0] ?? []).map((cell) => nameKey(String(cell)));
  const best = tableKinds
    .map((kind) => matchKind(kind, headers))
    .reduce((a, b) => (isNearer(b, a) ? b : a));
  if (best.found === 0) {
    findings.add(
      `Range ${ordinal}`,
      undefined,
      undefined,
      'is none of the tables: its first row must hold the headers of one',
    );
    return undefined;
  }
  for (const header of best.missing) {
    findings.add(
      tables[best.kind].name,
      undefined,
      undefined,
      `has no column "${header}". Type this header above its column again, or give BOOK the whole table with its headers`,
    );
  }
  for (const header of best.twice) {
    findings.add(
      tables[best.kind].name,
      undefined,
      undefined,
      `has the column "${header}" twice. Rename one`,
    );
  }
  if (best.missing.length + best.twice.length > 0) return undefined;
  const { kind, position } = best;
  return { kind, position, columns: tables[kind].columns, hasZerosForBlanks: false, range };
}

type Match = ReturnType<typeof matchKind>;

function isNearer(a: Match, b: Match): boolean {
  const nearness = ({ kind, required, missing }: Match): number =>
    required - missing.length - (missing.length === 0 && leastTelling.has(kind) ? 0.5 : 0);
  return (
    (nearness(a) - nearness(b) || b.missing.length - a.missing.length || a.found - b.found) > 0
  );
}

/** Tables of which every required header is a column of another as well: any that needs a header of its own comes first. */
const leastTelling: ReadonlySet<TableKind> = new Set(
  tableKinds.filter((kind) =>
    headersOf(kind, true).every((header) =>
      tableKinds.some((other) => headersOf(other, false).includes(header)),
    ),
  ),
);

function headersOf(kind: TableKind, required: boolean): string[] {
  return Object.values<Column<unknown>>(tables[kind].columns)
    .filter((column) => column.required === required)
    .map(({ header }) => nameKey(header));
}

function matchKind(kind: TableKind, headers: readonly string[]) {
  const position = new Map<string, number>();
  const missing: string[] = [];
  const twice: string[] = [];
  let required = 0;
  for (const [key, column] of Object.entries(tables[kind].columns)) {
    const wanted = nameKey(column.header);
    const at = headers.indexOf(wanted);
    if (at >= 0) position.set(key, at);
    else if (column.required) missing.push(column.header);
    if (at >= 0 && column.required) required += 1;
    if (at >= 0 && headers.includes(wanted, at + 1)) twice.push(column.header);
  }
  return { kind, position, missing, twice, required, found: position.size };
}
