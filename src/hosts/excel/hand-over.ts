import { findTables } from '../../workbook/find-tables.ts';
import type { TableData } from '../../workbook/port.ts';

/**
 * Excel on the web, and no other, hands a worksheet function at most 5 MB in one call:
 * https://learn.microsoft.com/office/dev/add-ins/concepts/resource-limits-and-performance-optimization,
 * for functions github.com/OfficeDev/office-js/issues/4654. It says no more exactly, so the smaller MB is taken.
 */
const MOST_BYTES = 5_000_000;

/** From this share on it is said. */
const SAID_FROM = 0.8;

/** What POUR.BOOK takes in one call. */
export interface HandedOver {
  readonly bytes: number;
  /** Lines of the ledger in it. */
  readonly lines: number;
  /** The ledger's lines where the same workbook, grown in all its tables alike, comes to the limit. */
  readonly mostLines: number;
}

/** Measures our tables among all as they are handed over, in JSON. */
export function handedOver(all: readonly TableData[]): HandedOver {
  const ours = findTables(all);
  const cells = [...ours.values()].map(({ headers, rows }) => [headers, ...rows]);
  const bytes = new TextEncoder().encode(JSON.stringify(cells)).length;
  const lines = ours.get('moves')?.rows.length ?? 0;
  return { bytes, lines, mostLines: Math.floor((lines * MOST_BYTES) / bytes) };
}

/** Says that the ledger comes near what Excel on the web hands over, and what to do; undefined while it is far. */
export function nearTheLimit(all: readonly TableData[]): string | undefined {
  const { bytes, lines, mostLines } = handedOver(all);
  if (bytes < SAID_FROM * MOST_BYTES) return undefined;
  const most = grouped(Math.floor(mostLines / 1_000) * 1_000);
  const begins = `Your ledger has ${grouped(lines)} lines. Excel on the web hands over at most about ${most} of a workbook like yours`;
  const elsewhere =
    'open it in Excel for Windows or Mac, or with npm start: there is no such limit. Don’t delete old lines: stock is counted from them.';
  return bytes > MOST_BYTES
    ? `${begins}, so the cell named Book may fail here: ${elsewhere}`
    : `${begins}; with more, the cell named Book fails here. Before that, ${elsewhere}`;
}

const grouped = (count: number): string => count.toLocaleString('en');
