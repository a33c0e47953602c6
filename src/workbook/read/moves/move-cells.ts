import type { MoveColumns, MovePrints, Repeated } from '../../../domain/book/ledger.ts';
import type { MoveReason } from '../../../domain/book/words.ts';
import type { Fingerprint } from '../fingerprint.ts';
import { type MoveTable, readAfresh, readAgain } from './move-table.ts';
import type { RecognisedTable } from '../recognise.ts';
import { hasRepeats } from '../unique.ts';

/** The cells of Moves in columns, before its names are looked up. */
export interface MoveCells extends Omit<MoveColumns, 'items'> {
  readonly materials: Repeated<string>;
  /** `hashOfName` of each Entry. */
  readonly entryHashes: Int32Array;
  readonly print: Fingerprint;
  readonly prints: MovePrints;
  /** Whether each cell could be read, no Entry stands twice and each sign suits its reason. */
  readonly sound: boolean;
}

/** The tables that ledgers still in use were read from, by the fingerprints they share. */
const tablesRead = new WeakMap<MovePrints, MoveTable>();

/**
 * Reads Moves column by column, in one go with its fingerprint. This is what BOOK spends its time on:
 * no object is made for a row, a text that stands many times is read once, and what is wrong is only
 * noticed here. `explainMoves` says it in words. Rows that stand as they did in the ledger read `before`
 * are taken over from it.
 */
export function readMoveCells(table: RecognisedTable | undefined, before?: MovePrints): MoveCells {
  const known = before && tablesRead.get(before);
  const read = (known && readAgain(table, known)) ?? readAfresh(table);
  const { columns, prints } = read;
  tablesRead.set(prints, read);
  const cells = {
    ...columns,
    entries: columns.entries.texts,
    entryHashes: columns.entries.hashes,
    whens: columns.whens.numbers,
    quantities: columns.quantities.numbers,
    values: columns.values.numbers,
  };
  const sound =
    Object.values(columns).every((column) => column.sound) &&
    !(read.hasNewEntries && hasRepeats(cells.entries, columns.entries.hashes)) &&
    haveRightSigns(cells);
  return { ...cells, print: prints.total(), prints, sound };
}

/** The sign that each reason must have; the others may have either. */
const signs: Partial<Readonly<Record<MoveReason, 1 | -1>>> = {
  used: -1,
  sold: -1,
  wasted: -1,
  given: -1,
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
