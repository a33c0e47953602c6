import { nameKey } from '../../domain/kernel/names.ts';
import { answer, type Result, wrong } from '../../domain/kernel/result.ts';
import type { Cell, Change } from '../port.ts';

/** A table as a change is looked for in it: its headers and ids, and none of its other cells yet. */
export interface WritableTable {
  readonly name: string;
  readonly headers: readonly string[];
  /** Body rows, blank ones included. */
  readonly height: number;
  /** From a column that holds ids (`idColumnsOf`): the body rows of each id by `idKey`, from above. */
  idsUnder(column: number): ReadonlyMap<string, readonly number[]>;
}

/** The cells of the rows that a plan looks at (`rowsToLookAt`). */
export interface CellsOf<T> {
  readonly row: (table: T, at: number) => readonly Cell[];
  /** Whether a cell holds a formula, which a written value would destroy. */
  readonly isFormula: (table: T, at: number, column: number) => boolean;
}

/** By table (`nameKey`), the headers (`nameKey`) of the id columns that a change goes by. */
export function idColumnsOf(change: Change): ReadonlyMap<string, ReadonlySet<string>> {
  const columns = new Map<string, Set<string>>();
  for (const { table, idColumn } of [
    ...change.appends,
    ...change.updates,
    ...(change.removals ?? []),
  ]) {
    const key = nameKey(table);
    columns.set(key, (columns.get(key) ?? new Set()).add(nameKey(idColumn)));
  }
  return columns;
}

/** The place of a header among a table's columns, however it is spaced or cased; of two alike the first. */
export function columnOf(
  { headers }: Pick<WritableTable, 'headers'>,
  header: string,
): number | undefined {
  const wanted = nameKey(header);
  const column = headers.findIndex((other) => nameKey(other) === wanted);
  return column < 0 ? undefined : column;
}

/** A table and the way to its columns; each header is looked for once. */
export interface Placed<T> {
  readonly table: T;
  column(header: string): Result<number>;
}

/** The way to a table by its name, or why there is none. */
export function placing<T extends WritableTable>(
  tables: readonly T[],
): (name: string) => Result<Placed<T>> {
  // Of two tables of one name the first.
  const known = new Map([...tables].reverse().map((table) => [nameKey(table.name), table]));
  const placed = new Map<T, Placed<T>>();
  return (name) => {
    const table = known.get(nameKey(name));
    if (table === undefined) {
      return wrong(
        `This workbook has no table named ${name}. Was it renamed or deleted? Put it back, then try again.`,
      );
    }
    const found = placed.get(table) ?? placedIn(table);
    placed.set(table, found);
    return answer(found);
  };
}

function placedIn<T extends WritableTable>(table: T): Placed<T> {
  const columns = new Map<string, Result<number>>();
  const find = (header: string): Result<number> => {
    const column = columnOf(table, header);
    return column === undefined
      ? wrong(
          `${table.name} has no column "${header}". Was it renamed or deleted? Put the column back, then try again.`,
        )
      : answer(column);
  };
  return {
    table,
    column(header) {
      const found = columns.get(header) ?? find(header);
      columns.set(header, found);
      return found;
    },
  };
}
