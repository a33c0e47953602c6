import { nameKey } from '../../domain/kernel/names.ts';
import { idKey } from '../../workbook/ids.ts';
import type { Append, Cell, Change, Removal, RowToWrite, Update } from '../../workbook/port.ts';
import { clearingOf } from '../../workbook/removal.ts';
import { whyUnwritable } from './cell-text.ts';

/** What a change needs to know of one table before a cell of it is written. */
export interface Target {
  /** Stays the same when the table is renamed. */
  readonly tableId: string;
  readonly name: string;
  readonly sheet: string;
  readonly protected: boolean;
  /** A filter hides some of its rows. */
  readonly filtered: boolean;
  readonly headers: readonly string[];
  /** By id column (header key), then by id (`idKey`): the body's rows that hold it. */
  readonly places: ReadonlyMap<string, ReadonlyMap<string, readonly number[]>>;
}

/** The rows of the change, each with the place in the table where its id stands now, if it does. */
export interface Located {
  readonly appends: readonly {
    readonly append: Append;
    readonly at: readonly (number | undefined)[];
  }[];
  readonly updates: readonly {
    readonly update: Update;
    readonly at: number;
    /** The removal that it carries out: then the row must still be as it was. */
    readonly removal?: Removal;
  }[];
}

/** A refusal, as a sentence. */
export class Refusal {
  readonly sentence: string;

  constructor(sentence: string) {
    this.sentence = sentence;
  }
}

/** Checks the whole change against the tables and finds each id's row, or refuses before any writing. */
export function locate(change: Change, targets: ReadonlyMap<string, Target>): Located | Refusal {
  const appends: { append: Append; at: (number | undefined)[] }[] = [];
  for (const append of change.appends) {
    const at = locateAppend(append, targets.get(nameKey(append.table)));
    if (at instanceof Refusal) return at;
    appends.push({ append, at });
  }
  const updates: { update: Update; at: number; removal?: Removal }[] = [];
  for (const update of change.updates) {
    const at = locateUpdate(update, targets.get(nameKey(update.table)));
    if (at instanceof Refusal) return at;
    updates.push({ update, at });
  }
  for (const removal of change.removals ?? []) {
    const target = targets.get(nameKey(removal.table));
    const update = clearingOf(removal);
    const amiss = whyAmiss(removal.table, removal.idColumn, target);
    if (amiss !== undefined) return new Refusal(amiss);
    // A row that no longer bears its id was cleared already.
    if (placesOf(update, target).length === 0) continue;
    const at = locateUpdate(update, target);
    if (at instanceof Refusal) return at;
    updates.push({ update, at, removal });
  }
  return { appends, updates };
}

function locateAppend(
  append: Append,
  target: Target | undefined,
): (number | undefined)[] | Refusal {
  const ids = append.rows.map((row) => textOf(row[append.idColumn]));
  const keys = ids.map(idKey);
  const problem =
    whyAmiss(append.table, append.idColumn, target) ??
    append.rows.map((row) => whyUnfit(append.table, row, target)).find((why) => why !== undefined);
  if (problem !== undefined) return new Refusal(problem);
  if (ids.includes('')) return new Refusal(`A row for ${append.table} has no ${append.idColumn}.`);
  // A set does not grow by what it holds already.
  const seen = new Set<string>();
  const twice = ids.find((_, at) => seen.size === seen.add(keys[at] ?? '').size);
  if (twice !== undefined && append.shareIds === undefined) {
    return new Refusal(`Two rows for ${append.table} have the same ${append.idColumn} "${twice}".`);
  }
  const places = target?.places.get(nameKey(append.idColumn));
  // Rows that share an id are told apart by their order.
  const counts = new Map<string, number>();
  return keys.map((key) => {
    const number = counts.get(key) ?? 0;
    counts.set(key, number + 1);
    return places?.get(key)?.[number];
  });
}

function locateUpdate(update: Update, target: Target | undefined): number | Refusal {
  const { table, idColumn, id } = update;
  const problem = whyAmiss(table, idColumn, target) ?? whyUnfit(table, update.set, target);
  if (problem !== undefined) return new Refusal(problem);
  const places = placesOf(update, target);
  const place = places[update.nth ?? 0];
  if (place === undefined) {
    return new Refusal(
      `${table} has no row with ${idColumn} "${id}" any more. Was it deleted or renamed? Put it back, then try again.`,
    );
  }
  if (places.length > 1 && update.nth === undefined) {
    return new Refusal(
      `${table} has ${places.length} rows with ${idColumn} "${id}". Give each its own, then try again.`,
    );
  }
  return place;
}

const placesOf = ({ idColumn, id }: Update, target: Target | undefined): readonly number[] =>
  target?.places.get(nameKey(idColumn))?.get(idKey(id)) ?? [];

function whyAmiss(table: string, idColumn: string, target: Target | undefined): string | undefined {
  if (target === undefined) {
    return `This workbook has no table named ${table}. Was it renamed or deleted? Put it back (Table Design tab, Table Name), then try again.`;
  }
  return columnOf(target, idColumn) === undefined ? whyNoColumn(table, idColumn) : undefined;
}

function whyUnfit(table: string, row: RowToWrite, target: Target | undefined): string | undefined {
  for (const [header, cell] of Object.entries(row)) {
    if (target === undefined || columnOf(target, header) === undefined) {
      return whyNoColumn(table, header);
    }
    const why = whyUnwritable(cell);
    if (why !== undefined) return `${header} for ${table} ${why}.`;
  }
  return undefined;
}

const whyNoColumn = (table: string, header: string): string =>
  `${table} has no column "${header}". Was it renamed or deleted? Put the column back, then try again.`;

/** Why Excel would not write into a table as it is, or undefined if it would. */
export function whyShut({
  name,
  sheet,
  protected: isProtected,
  filtered,
}: Target): string | undefined {
  if (isProtected) {
    return `The sheet "${sheet}" is protected, so ${name} cannot take new rows. Unprotect it (Review tab, Unprotect Sheet), then try again.`;
  }
  if (filtered) {
    return `A filter hides rows of ${name}, so Excel would not write there safely. Clear it (Data tab, Clear), then try again.`;
  }
  return undefined;
}

/** The place of a header among a table's columns, however it is spaced or cased. */
export function columnOf(target: Target, header: string): number | undefined {
  const wanted = nameKey(header);
  const index = target.headers.findIndex((other) => nameKey(other) === wanted);
  return index < 0 ? undefined : index;
}

/** An id as it is compared: a batch named 17 is the same as number or as text. */
export const textOf = (cell: Cell | undefined): string => String(cell ?? '').trim();
