import { nameKey } from '../../domain/kernel/names.ts';
import { findTables, type TableNames } from '../find-tables.ts';
import type { Append, Cell, Change, RowToWrite, TableData, Update } from '../port.ts';
import { type TableKind, tables } from '../schema.ts';
import type { ComparedTables, MergeConflict } from './compare-tables.ts';
import { compareCopies } from './compare-copies.ts';
import { type Group, namedRows } from './table-groups.ts';
import { cellOf, groupName, idHeader, isOfRecipes, type NamedRow } from './table-keys.ts';

export type Side = 'this copy' | 'other copy';

/** What both copies have and have differently. */
export interface Difference {
  /** Tells it from all others. */
  readonly key: string;
  readonly kind: TableKind;
  readonly id: string;
  /** Headers whose cells differ; none where whole lines of a recipe do. */
  readonly differs: readonly string[];
  readonly mine: readonly NamedRow[];
  readonly theirs: readonly NamedRow[];
  readonly keeps: Side;
  /** Lines of the ledger go by one rule, so that both sides come to the same; recipes are never replaced. */
  readonly mayChoose: boolean;
  /** It may be chosen and is not yet: `keeps` is only what the rule would say. */
  readonly isOpen: boolean;
}

export interface MergePlan {
  readonly change: Change;
  /** What only the other copy has, by table. */
  readonly added: readonly { readonly kind: TableKind; readonly ids: readonly string[] }[];
  readonly differences: readonly Difference[];
  /** What stays in the other copy alone, a sentence each. */
  readonly leftOut: readonly string[];
}

const ledgerKinds: readonly TableKind[] = ['moves', 'lots', 'batches', 'sales'];

/**
 * What brings another copy's lines into this workbook: rows that are missing here are appended; of
 * rows that differ the version kept is written by the rule of `compareCopies`, or as `chosen` by key.
 * `compared` is what `compareCopies` says of the two, where that is known already.
 */
export function mergeInto(
  here: readonly TableData[],
  other: readonly TableData[],
  chosen: Readonly<Record<string, Side>> = {},
  compared: readonly ComparedTables[] = compareCopies(here, other),
): MergePlan {
  const [mine, theirs] = [findTables(here), findTables(other)];
  const leftOut = missingTables(mine, theirs);
  const byKind = new Map(compared.map((tables) => [tables.kind, tables.added]));
  const appended = [...theirs].flatMap(([kind, table]) =>
    missingRows(kind, byKind.get(kind) ?? [], table, mine, leftOut),
  );
  const differences = compared
    .flatMap(({ conflicts }) => conflicts)
    .map((found) => differenceOf(found, chosen));
  const updates = differences.flatMap((found) => updateOf(found, mine, leftOut));
  return {
    change: { appends: appended.map(({ append }) => append), updates },
    added: appended.map(({ kind, ids }) => ({ kind, ids })),
    differences,
    leftOut: [...new Set(leftOut)],
  };
}

/** Tables filled here that the other copy lacks, or that are too damaged there to be known. */
const missingTables = (mine: TableNames, theirs: TableNames): string[] =>
  [...mine].flatMap(([kind, { rows }]) =>
    theirs.has(kind) || !rows.some((row) => row.some((cell) => cell !== ''))
      ? []
      : [
          `The other copy has no ${tables[kind].name} table that can be read, so none of its ${tables[kind].name} come in.`,
        ],
  );

/** The rows of a table whose ids, or whose recipes, are not here. */
function missingRows(
  kind: TableKind,
  added: readonly Group[],
  theirs: TableData,
  names: TableNames,
  leftOut: string[],
): { kind: TableKind; ids: string[]; append: Append }[] {
  const mine = names.get(kind);
  const missing = added.map((group) => namedRows(group, kind));
  if (missing.length === 0) return [];
  const { name } = tables[kind];
  if (mine === undefined) {
    leftOut.push(`This workbook has no ${name} table, so the other copy's ${name} are left out.`);
    return [];
  }
  const write = writerTo(mine, theirs, leftOut);
  const rows = missing.flat().map(write);
  const idColumn = headerIn(mine, idHeader(kind));
  const append: Append = { table: mine.name, idColumn, rows };
  return [
    {
      kind,
      ids: missing.flatMap(([row]) => (row === undefined ? [] : groupName(row, kind))),
      append: isOfRecipes(kind) ? { ...append, shareIds: true } : append,
    },
  ];
}

/** Puts rows into this workbook's own headers; columns that it lacks are named. */
function writerTo(
  mine: TableData,
  theirs: TableData,
  leftOut: string[],
): (row: NamedRow) => RowToWrite {
  const headers = theirs.headers.map(
    (header) => [header, hasHeader(mine, header) ? headerIn(mine, header) : undefined] as const,
  );
  return (row) =>
    Object.fromEntries(
      headers.flatMap(([header, own]): (readonly [string, Cell])[] => {
        const cell = cellOf(row, header);
        if (cell === '') return [];
        if (own !== undefined) return [[own, cell]];
        leftOut.push(noColumn(mine.name, header));
        return [];
      }),
    );
}

function differenceOf(
  { kind, id, differs, keepsFirst, kept, setAside }: MergeConflict,
  chosen: Readonly<Record<string, Side>>,
): Difference {
  const key = `${kind} ${nameKey(id)}`;
  const byRule: Side = keepsFirst ? 'this copy' : 'other copy';
  const mayChoose = !ledgerKinds.includes(kind) && !isOfRecipes(kind);
  const keeps = isOfRecipes(kind) ? 'this copy' : mayChoose ? (chosen[key] ?? byRule) : byRule;
  const [mine, theirs] = keepsFirst ? [kept, setAside] : [setAside, kept];
  const isOpen = mayChoose && chosen[key] === undefined;
  return { key, kind, id, differs, mine, theirs, keeps, mayChoose, isOpen };
}

/** Writes the other copy's version over this one's, where that is the one kept. */
function updateOf(difference: Difference, names: TableNames, leftOut: string[]): Update[] {
  const { kind, id, differs, keeps, mine, theirs } = difference;
  const table = names.get(kind);
  if (table === undefined) return [];
  if (isOfRecipes(kind)) {
    const what = kind === 'colours' ? `The recipe of ${id} differs` : `The layers of ${id} differ`;
    leftOut.push(
      `${what} in the two copies. This workbook keeps its own: change it by hand if the other's is right.`,
    );
  }
  if (keeps === 'this copy') return [];
  const idColumn = headerIn(table, idHeader(kind));
  const set = differs.flatMap((header): (readonly [string, Cell])[] => {
    if (nameKey(header) === nameKey(idColumn)) return [];
    if (hasHeader(table, header)) return [[headerIn(table, header), cellOf(theirs[0], header)]];
    leftOut.push(noColumn(table.name, header));
    return [];
  });
  const update = { table: table.name, idColumn, id: String(cellOf(mine[0], idColumn)).trim() };
  return set.length === 0 ? [] : [{ ...update, set: Object.fromEntries(set) }];
}

const hasHeader = ({ headers }: TableData, header: string): boolean =>
  headers.some((known) => nameKey(known) === nameKey(header));

/** A header as this table spells it. */
const headerIn = ({ headers }: TableData, header: string): string =>
  headers.find((known) => nameKey(known) === nameKey(header)) ?? header;

const noColumn = (table: string, header: string): string =>
  `${table} has no column "${header}" here, so what the other copy has in it is left out.`;
