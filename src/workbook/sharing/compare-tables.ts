import { readState, saysUndone } from '../../domain/book/words.ts';
import { compareNames, nameKey } from '../../domain/kernel/names.ts';
import { Trouble } from '../column.ts';
import type { Cell, TableData } from '../port.ts';
import { type TableKind, tables } from '../schema.ts';
import { cellOf, groupName, type NamedRow } from './table-keys.ts';
import { type Group, groupsOf, namedRows, sameCells } from './table-groups.ts';

/**
 * What two copies have differently: one row by its id, or all lines of one recipe. Nothing is lost:
 * both versions stand here.
 */
export interface MergeConflict {
  readonly kind: TableKind;
  /** The id or the recipe's name as a person reads it. */
  readonly id: string;
  /** Headers whose cells differ; none for a recipe whose lines differ. */
  readonly differs: readonly string[];
  /** Whether the version of the first copy is the one kept. */
  readonly keepsFirst: boolean;
  readonly kept: readonly NamedRow[];
  readonly setAside: readonly NamedRow[];
}

/** The rows of one table in two copies. */
export interface ComparedTables {
  readonly kind: TableKind;
  /** Our headers in the schema's order, then either copy's own columns by name. */
  readonly headers: readonly string[];
  /** What both have is here in the version kept. */
  readonly all: ReadonlyMap<string, Group>;
  /** What only the second copy has. */
  readonly added: readonly Group[];
  readonly conflicts: readonly MergeConflict[];
}

/** Compares a table's rows by id, those of recipes by the recipe's name. */
export function compareTables(
  kind: TableKind,
  one: TableData | undefined,
  other: TableData | undefined,
): ComparedTables {
  const headers = mergedHeaders(kind, one, other);
  const isSame = sameCells(one, other);
  const all = groupsOf(kind, one);
  const added: Group[] = [];
  const conflicts: MergeConflict[] = [];
  for (const [key, theirs] of groupsOf(kind, other)) {
    const ours = all.get(key);
    if (ours === undefined) {
      all.set(key, theirs);
      added.push(theirs);
    } else if (!isSame(ours, theirs)) {
      const conflict = conflictOf(kind, headers, namedRows(ours, kind), namedRows(theirs, kind));
      if (!conflict.keepsFirst) all.set(key, theirs);
      if (conflict.differs !== undefined)
        conflicts.push({ ...conflict, differs: conflict.differs });
    }
  }
  return { kind, headers, all, added, conflicts };
}

/** Which of two versions is kept, and what they have differently, if not only blanks around it. */
function conflictOf(
  kind: TableKind,
  headers: readonly string[],
  one: readonly NamedRow[],
  other: readonly NamedRow[],
): Omit<MergeConflict, 'differs'> & { readonly differs: MergeConflict['differs'] | undefined } {
  const keepsFirst = rank(one, kind, headers) >= rank(other, kind, headers);
  const [kept, setAside] = keepsFirst ? [one, other] : [other, one];
  const id = kept[0] === undefined ? '' : groupName(kept[0], kind);
  return {
    kind,
    id,
    differs: differing(kind, headers, kept, setAside),
    keepsFirst,
    kept,
    setAside,
  };
}

/** Headers that differ, [] where whole lines do, or undefined where the versions say the same. */
function differing(
  kind: TableKind,
  headers: readonly string[],
  one: readonly NamedRow[],
  other: readonly NamedRow[],
): readonly string[] | undefined {
  if (one.length !== other.length) return [];
  const differs = headers.filter((header) =>
    one.some(
      (row, index) => !sameCell(kind, header, cellOf(row, header), cellOf(other[index], header)),
    ),
  );
  if (differs.length === 0) return undefined;
  return one.length === 1 ? differs : [];
}

function mergedHeaders(kind: TableKind, ...copies: readonly (TableData | undefined)[]): string[] {
  const found = new Map(
    copies
      .flatMap((table) => table?.headers ?? [])
      .sort()
      .map((header) => [nameKey(header), header]),
  );
  const ours = Object.values(tables[kind].columns).map(({ header }) => header);
  const known = ours.filter((header) => found.has(nameKey(header)));
  const added = [...found].filter(([key]) => !ours.some((header) => nameKey(header) === key));
  return [...known, ...added.map(([, header]) => header).sort(compareNames)];
}

/** Whether two cells say the same: a day is the same as a number of days and as text. */
function sameCell(kind: TableKind, header: string, a: Cell, b: Cell): boolean {
  if (plain(a) === plain(b)) return true;
  const column = Object.values(tables[kind].columns).find(
    (known) => nameKey(known.header) === nameKey(header),
  );
  if (column === tables.batches.columns.state) return readState(String(a)) === readState(String(b));
  if (column?.format !== 'date') return false;
  const [one, other] = [column.read(a), column.read(b)];
  return !(one instanceof Trouble) && one === other;
}

const plain = (cell: Cell): Cell => (typeof cell === 'string' ? cell.trim() : cell);

/**
 * Which of two versions is kept: the one with more filled in, then the later text, so that "undone"
 * stands over "recorded". Any rule serves that both sides follow alike.
 */
function rank(rows: readonly NamedRow[], kind: TableKind, headers: readonly string[]): string {
  const cells = rows.map((row) => headers.map((header) => plain(cellOf(row, header))));
  const filled = cells.flat().filter((cell) => cell !== '').length;
  const state = kind === 'batches' ? stateOf(rows) : '';
  return `${state}${String(filled).padStart(6, '0')} ${JSON.stringify(cells)}`;
}

/** A batch that was taken back on one side is taken back. */
const stateOf = ([row]: readonly NamedRow[]): string =>
  saysUndone(String(cellOf(row, tables.batches.columns.state.header))) ? '1' : '0';
