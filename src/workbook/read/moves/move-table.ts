import type { MoveReason } from '../../../domain/book/words.ts';
import { type Column, isBlankIn } from '../../column.ts';
import { tables } from '../../schema.ts';
import { type BigColumn, NumberColumn, RepeatedColumn, TextColumn } from './big-columns.ts';
import { columnPrint, RowPrints } from '../fingerprint.ts';
import type { RecognisedTable, TableRange } from '../recognise.ts';

/** Rows read at a time: few enough to stay in the processor's cache from one column to the next. */
const ROWS_AT_A_TIME = 500;

/** More changed rows than one edit or one posting makes; the table is then read afresh. */
const MOST_CHANGED = 200;

/** The columns of Moves as they were read, with the fingerprints of its rows. */
export interface MoveTable {
  readonly rows: number;
  /** How its columns were read; a host may hand blanks over otherwise the next time. */
  readonly readers: RecognisedTable['columns'];
  readonly columns: ReturnType<typeof columnsOf>;
  readonly prints: RowPrints;
  /** Rows whose Entry differs from that of the table read before, or all. */
  readonly hasNewEntries: boolean;
}

/** Reads each column of each row, stretch by stretch. */
export function readAfresh(table: RecognisedTable | undefined): MoveTable {
  const room = table === undefined ? 0 : table.range.length - 1;
  const prints = new RowPrints(room);
  const columns = columnsOf(table, prints, room);
  const all = Object.values(columns);
  let rows = 0;
  for (const filled of stretchesOf(table)) {
    for (const column of all) column.read(filled, rows);
    rows += filled.length;
  }
  if (rows < room) for (const column of all) column.cut(rows);
  return { rows, readers: readersOf(table), columns, prints, hasNewEntries: true };
}

/**
 * Reads a table that may be nearly the one read before: each cell is compared with what was read in its
 * place, and only rows that differ or were added are read. Undefined where that would not pay or not do.
 */
export function readAgain(
  table: RecognisedTable | undefined,
  before: MoveTable,
): MoveTable | undefined {
  const known: readonly BigColumn[] = Object.values(before.columns);
  const places = Object.values(columnKeys).map((key) => table?.position.get(key));
  const canCompare = known.every((column, at) => column.canCompare(places[at]));
  if (before.rows === 0 || !canCompare || before.readers !== readersOf(table)) return undefined;
  const changed: { readonly row: number; readonly cells: readonly unknown[] }[] = [];
  let rows = 0;
  for (const filled of stretchesOf(table)) {
    const differs = new Uint8Array(filled.length).fill(1, Math.max(0, before.rows - rows));
    for (const [at, column] of known.entries()) {
      const place = places[at];
      if (place !== undefined) column.compare(filled, rows, place, differs);
    }
    for (let i = differs.indexOf(1); i >= 0; i = differs.indexOf(1, i + 1))
      changed.push({ row: rows + i, cells: filled[i] ?? [] });
    if (changed.length > MOST_CHANGED) return undefined;
    rows += filled.length;
  }
  if (rows < before.rows) return undefined;
  const prints = before.prints.copy(rows);
  const columns = columnsOf(table, prints, rows);
  // The same column of the other table, which the type of a list can't say.
  for (const [at, column] of Object.values(columns).entries()) column.takeOver(known[at] as never);
  for (const { row, cells } of changed) {
    prints.clear(row);
    for (const column of Object.values(columns)) column.read([cells], row);
  }
  const { texts } = before.columns.entries;
  const hasNewEntries = changed.some(({ row }) => columns.entries.texts[row] !== texts[row]);
  return { rows, readers: before.readers, columns, prints, hasNewEntries };
}

const readersOf = (table: RecognisedTable | undefined): RecognisedTable['columns'] =>
  table?.columns ?? tables.moves.columns;

/** The key in the schema of each column, as the ledger calls it. */
const columnKeys = {
  entries: 'entry',
  whens: 'when',
  reasons: 'reason',
  materials: 'material',
  quantities: 'quantity',
  lots: 'lot',
  values: 'value',
  batches: 'batch',
  bys: 'by',
  notes: 'note',
} as const;

function columnsOf(table: RecognisedTable | undefined, prints: RowPrints, rows: number) {
  const place = (name: keyof typeof columnKeys) => {
    const key = columnKeys[name];
    return {
      column: readersOf(table)[key] as Column<unknown>,
      at: table?.position.get(key),
      print: columnPrint('moves', key),
      prints,
    };
  };
  return {
    entries: new TextColumn(place('entries'), rows),
    whens: new NumberColumn(place('whens'), rows),
    reasons: new RepeatedColumn<MoveReason>(place('reasons'), rows),
    materials: new RepeatedColumn<string>(place('materials'), rows),
    quantities: new NumberColumn(place('quantities'), rows),
    lots: new RepeatedColumn<string>(place('lots'), rows),
    values: new NumberColumn(place('values'), rows),
    batches: new RepeatedColumn<string>(place('batches'), rows),
    bys: new RepeatedColumn<string>(place('bys'), rows),
    notes: new RepeatedColumn<string>(place('notes'), rows),
  };
}

/** The rows below the headers but the blank ones, some at a time. */
function* stretchesOf(table: RecognisedTable | undefined): Iterable<TableRange> {
  if (table === undefined) return;
  const { range, position, columns } = table;
  // A row with an Entry, as nearly all have, isn't blank: it comes first.
  const places = Object.keys(columns).flatMap((key) => {
    const at = position.get(key);
    return at === undefined ? [] : [{ at, column: columns[key] as Column<unknown> }];
  });
  const isFilled = (cells: readonly unknown[]): boolean =>
    places.some(({ at, column }) => !isBlankIn(column, cells[at]));
  for (let from = 1; from < range.length; from += ROWS_AT_A_TIME) {
    const rows = range.slice(from, from + ROWS_AT_A_TIME);
    yield rows.every(isFilled) ? rows : rows.filter(isFilled);
  }
}
