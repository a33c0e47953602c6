import { idKey } from '../../src/workbook/ids.ts';
import type { TableNames } from '../../src/workbook/find-tables.ts';
import { tables } from '../../src/workbook/schema.ts';
import { isRecord } from '../../src/domain/kernel/is-record.ts';
import {} from './kept.ts';

/**
 * Ids by which a ledger is known again, "" for none of a table: lines are only ever added to it, so that
 * any later state of it still holds those that stand there now.
 */
export type LedgerMark = readonly string[];

/** A kept text and the ledger that it belongs to. */
export interface KeptFor {
  readonly ledger: LedgerMark;
  readonly text: string;
}

/** Text to keep, which `restoreFor` reads. */
export const keepFor = ({ ledger, text }: KeptFor): string => JSON.stringify({ ledger, text });

/** What was kept; undefined where the text is none of ours. */
export function restoreFor(kept: string | undefined): KeptFor | undefined {
  if (kept === undefined) return undefined;
  try {
    const value: unknown = JSON.parse(kept);
    if (!isRecord(value)) return undefined;
    const { ledger, text } = value;
    return isMark(ledger) && typeof text === 'string' ? { ledger, text } : undefined;
  } catch {
    return undefined;
  }
}

/** The mark of a ledger: the first and the last two ids of its purchases and of its moves. */
export const markOf = (names: TableNames): LedgerMark =>
  growing.flatMap((kind) => {
    const { length, idAt } = idsOf(kind, names);
    const ids: string[] = [];
    for (let row = 0; row < length && ids.length < 1; row += 1) ids.push(...idAt(row));
    for (let row = length - 1; row > 0 && ids.length < 3; row -= 1) ids.push(...idAt(row));
    return ids;
  });

/** Whether tables can be a later state of the ledger with that mark; one that held nothing yet fits all. */
export function isOfLedger(mark: LedgerMark, names: TableNames): boolean {
  const wanted = new Set(mark);
  const holdsOne = (kind: GrowingTable): boolean => {
    const { length, idAt } = idsOf(kind, names);
    for (let row = 0; row < length; row += 1) {
      if (idAt(row).some((id) => wanted.has(id))) return true;
    }
    return false;
  };
  return mark.length === 0 || growing.some(holdsOne);
}

const growing = ['lots', 'moves'] as const;
type GrowingTable = (typeof growing)[number];

const idHeader: Readonly<Record<GrowingTable, string>> = {
  lots: tables.lots.columns.lot.header,
  moves: tables.moves.columns.entry.header,
};

/** A table's ids by row, each after its table's kind: no lot's is taken for a move's. */
function idsOf(kind: GrowingTable, names: TableNames) {
  const table = names.get(kind);
  const at = table?.headers.findIndex((header) => idKey(header) === idKey(idHeader[kind])) ?? -1;
  return {
    length: table?.rows.length ?? 0,
    /** The id in a row, none where it is blank. */
    idAt(row: number): readonly string[] {
      const id = idKey(table?.rows[row]?.[at]);
      return id === '' ? [] : [`${kind} ${id}`];
    },
  };
}

const isMark = (value: unknown): value is LedgerMark =>
  Array.isArray(value) && value.every((id) => typeof id === 'string');
