import type { MoveColumns, MovePrints, Repeated } from '../../domain/book/ledger.ts';
import type { MoveReason } from '../../domain/book/words.ts';
import { isBlank } from '../column.ts';
import { tables } from '../schema.ts';
import { NumberColumn, RepeatedColumn, TextColumn } from './big-columns.ts';
import { columnPrint, type Fingerprint, RowPrints } from './fingerprint.ts';
import type { RecognisedTable, TableRange } from './recognise.ts';
import { hasRepeats } from './unique.ts';

/** The cells of Moves in columns, before its names are looked up. */
export interface MoveCells extends Omit<MoveColumns, 'items'> {
  readonly materials: Repeated<string>;
  readonly print: Fingerprint;
  readonly prints: MovePrints;
  /** Whether each cell could be read, no Entry stands twice and each sign suits its reason. */
  readonly sound: boolean;
}

/** Rows read at a time: few enough to stay in the processor's cache from one column to the next. */
const ROWS_AT_A_TIME = 500;

/**
 * Reads Moves column by column, in one go with its fingerprint. This is what BOOK spends its time on:
 * no object is made for a row, a text that stands many times is read once, and what is wrong is only
 * noticed here. `explainMoves` says it in words.
 */
export function readMoveCells(table: RecognisedTable | undefined): MoveCells {
  const room = table === undefined ? 0 : table.range.length - 1;
  const prints = new RowPrints(room);
  const columns = columnsOf(table, prints, room);
  const all = Object.values(columns);
  let rows = 0;
  for (let from = 1; table !== undefined && from <= room; from += ROWS_AT_A_TIME) {
    const filled = filledRows(table, from, Math.min(from + ROWS_AT_A_TIME, room + 1));
    for (const column of all) column.read(filled, rows);
    rows += filled.length;
  }
  if (rows < room) for (const column of all) column.cut(rows);
  const cells = {
    ...columns,
    entries: columns.entries.texts,
    whens: columns.whens.numbers,
    quantities: columns.quantities.numbers,
    values: columns.values.numbers,
  };
  const sound =
    all.every((column) => column.sound) &&
    !hasRepeats(cells.entries, columns.entries.hashes) &&
    haveRightSigns(cells);
  return { ...cells, print: prints.total(), prints, sound };
}

function columnsOf(table: RecognisedTable | undefined, prints: RowPrints, rows: number) {
  const place = (key: keyof typeof tables.moves.columns) => ({
    column: tables.moves.columns[key],
    at: table?.position.get(key),
    print: columnPrint('moves', key),
    prints,
  });
  return {
    entries: new TextColumn(place('entry'), rows),
    whens: new NumberColumn(place('when'), rows),
    reasons: new RepeatedColumn<MoveReason>(place('reason'), rows),
    materials: new RepeatedColumn<string>(place('material'), rows),
    quantities: new NumberColumn(place('quantity'), rows),
    lots: new RepeatedColumn<string>(place('lot'), rows),
    values: new NumberColumn(place('value'), rows),
    batches: new RepeatedColumn<string>(place('batch'), rows),
    bys: new RepeatedColumn<string>(place('by'), rows),
    notes: new RepeatedColumn<string>(place('note'), rows),
  };
}

/** The sign that each reason must have; counted and reversed may have either. */
const signs: Partial<Readonly<Record<MoveReason, 1 | -1>>> = {
  used: -1,
  sold: -1,
  wasted: -1,
  'left over': 1,
  spare: 1,
  made: 1,
};

/** 1 or -1 where quantities of the reason may have that sign only. */
export const signOf = (reason: MoveReason): 1 | -1 | undefined => signs[reason];

function haveRightSigns({ reasons, quantities }: Pick<MoveCells, 'reasons' | 'quantities'>) {
  const signAt = reasons.values.map((reason) => signOf(reason) ?? 0);
  for (let row = 0; row < quantities.length; row += 1) {
    const sign = signAt[reasons.places[row] as number] as number;
    if (!((quantities[row] as number) * sign >= 0)) return false;
  }
  return true;
}

/** Some rows of the range but the blank ones. A row with an Entry, as nearly all have, isn't blank. */
function filledRows({ range, position }: RecognisedTable, from: number, to: number): TableRange {
  const entry = position.get('entry') ?? -1;
  const isFilled = (cells: readonly unknown[]): boolean =>
    !isBlank(cells[entry]) || Array.from(position.values()).some((at) => !isBlank(cells[at]));
  const rows = range.slice(from, to);
  return rows.every(isFilled) ? rows : rows.filter(isFilled);
}
