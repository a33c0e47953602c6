import { addUnder } from '../../domain/kernel/add-under.ts';
import { all, andThen, answer, type Result, wrong } from '../../domain/kernel/result.ts';
import { idKey } from '../ids.ts';
import type { Append, Cell, Change, Removal, RowToWrite, Update } from '../port.ts';
import { clearingOf } from './clearing.ts';
import { saysTheSame, whyUnwritable } from './same-cell.ts';
import { type Placed, placing, type WritableTable } from './writable-table.ts';

/** What a change writes into one row, by the table's columns. */
interface Written<T> {
  readonly table: T;
  readonly idColumn: number;
  readonly id: string;
  readonly cells: ReadonlyMap<number, Cell>;
}

/** A row to append, and where its id stands already. */
export interface FoundRow<T> extends Written<T> {
  readonly row: RowToWrite;
  readonly at: number | undefined;
}

/** The row in which cells are set or cleared. */
export interface FoundCells<T> extends Written<T> {
  readonly update: Update;
  readonly at: number;
  /** The removal that it carries out: then the row must still be as it was. */
  readonly removal?: Removal;
}

/** A change as it is met in the tables. */
export interface Found<T> {
  /** Every row to append; of two alike that stand nowhere yet, the first. */
  readonly rows: readonly FoundRow<T>[];
  readonly cells: readonly FoundCells<T>[];
}

/** Finds each row of a change by its id, or says why none of it may be written. */
export function findRows<T extends WritableTable>(
  change: Change,
  tables: readonly T[],
): Result<Found<T>> {
  const placeOf = placing(tables);
  const appended = all(
    change.appends.map((append) =>
      andThen(placeOf(append.table), (placed) => findAppend(append, placed)),
    ),
  );
  return andThen(appended, (rows) =>
    andThen(onceEach(rows.flat()), (once) => {
      const toSet: readonly (readonly [Update, Removal?])[] = [
        ...change.updates.map((update) => [update] as const),
        ...(change.removals ?? []).map((removal) => [clearingOf(removal), removal] as const),
      ];
      const set = toSet.map(([update, removal]) =>
        andThen(placeOf(update.table), (placed) => findSet(placed, update, removal)),
      );
      return andThen(all(set), (cells) => answer({ rows: once, cells: cells.flat() }));
    }),
  );
}

interface Appended<T> extends Written<T> {
  readonly row: RowToWrite;
  readonly append: Append;
}

function findAppend<T extends WritableTable>(
  append: Append,
  placed: Placed<T>,
): Result<Appended<T>[]> {
  const { table } = placed;
  return andThen(placed.column(append.idColumn), (idColumn) =>
    all(
      append.rows.map((row) =>
        andThen(cellsOf(placed, row), (cells): Result<Appended<T>> => {
          const id = String(cells.get(idColumn) ?? '').trim();
          return idKey(id) === ''
            ? wrong(`A row for ${table.name} has no ${append.idColumn}. Nothing was written.`)
            : answer({ table, idColumn, id, cells, row, append });
        }),
      ),
    ),
  );
}

/** Each row with its place; one that the change has twice counts once, if both say the same. */
function onceEach<T extends WritableTable>(rows: readonly Appended<T>[]): Result<FoundRow<T>[]> {
  const seen = new Map<T, Map<string, Appended<T>[]>>();
  const found: FoundRow<T>[] = [];
  for (const one of rows) {
    const { table, idColumn, id, cells, append, row } = one;
    const ids = seen.get(table) ?? new Map<string, Appended<T>[]>();
    seen.set(table, ids);
    const key = `${String(idColumn)} ${idKey(id)}`;
    const before = ids.get(key) ?? [];
    // Rows that share an id are told apart by their order.
    const at = table.idsUnder(idColumn).get(idKey(id))?.[append.shareIds ? before.length : 0];
    const twin = append.shareIds || at !== undefined ? undefined : before[0];
    const differs = twin && unlike(twin, one);
    if (differs !== undefined) {
      return wrong(
        `Two rows for ${table.name} have the same ${append.idColumn} "${id}" but differ in ${differs}. Nothing was written.`,
      );
    }
    addUnder(ids, key, one);
    if (twin === undefined) found.push({ table, idColumn, id, cells, row, at });
  }
  return answer(found);
}

/** The header of a cell in which two rows to append differ; what a row leaves out is blank. */
function unlike<T extends WritableTable>(one: Written<T>, other: Written<T>): string | undefined {
  const column = [...one.cells.keys(), ...other.cells.keys()].find(
    (at) => at !== one.idColumn && !saysTheSame(one.cells.get(at) ?? '', other.cells.get(at) ?? ''),
  );
  return column === undefined ? undefined : (one.table.headers[column] ?? '').trim();
}

function findSet<T extends WritableTable>(
  placed: Placed<T>,
  update: Update,
  removal: Removal | undefined,
): Result<FoundCells<T>[]> {
  const { table } = placed;
  const { id, idColumn: header, nth } = update;
  return andThen(placed.column(header), (idColumn) =>
    andThen(cellsOf(placed, update.set), (cells): Result<FoundCells<T>[]> => {
      const places = table.idsUnder(idColumn).get(idKey(id)) ?? [];
      // A row that no longer bears its id was cleared already.
      if (removal !== undefined && places.length === 0) return answer([]);
      const at = places[nth ?? 0];
      if (at === undefined) {
        return wrong(
          `${table.name} has no row with ${header} "${id}" any more. Was it deleted or renamed? Put it back, then try again.`,
        );
      }
      if (places.length > 1 && nth === undefined) {
        return wrong(
          `${table.name} has ${String(places.length)} rows with ${header} "${id}". Give each its own, then try again.`,
        );
      }
      const found = { table, idColumn, id, cells, update, at };
      return answer([removal === undefined ? found : { ...found, removal }]);
    }),
  );
}

/** A row's cells by column; every header must be there, and every cell one that a workbook can hold. */
function cellsOf<T extends WritableTable>(
  { table, column }: Placed<T>,
  row: RowToWrite,
): Result<ReadonlyMap<number, Cell>> {
  const cells = new Map<number, Cell>();
  for (const [header, cell] of Object.entries(row)) {
    const at = column(header);
    if (!at.ok) return at;
    const why = whyUnwritable(cell);
    if (why !== undefined) return wrong(`${header} for ${table.name} ${why}.`);
    cells.set(at.value, cell);
  }
  return answer(cells);
}
