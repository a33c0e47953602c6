import { columnOfCell } from '../address.ts';
import { MAX_COLUMNS } from '../limits.ts';
import type { StoredCell, StoredRow } from './sheet-walk.ts';

/** A row with the cells in it. */
export interface PlainRow {
  readonly row: StoredRow;
  readonly cells: readonly StoredCell[];
}

// Only what reads the same in every version of XML: no entities, no line ends that are normalised.
const TEXT = String.raw`[^<>&\0-\x08\x0b-\x1f\x7f-\x9f\u2028\ud800-\udfff\ufffe\uffff]*`;
const OPEN = /<row r="([1-9]\d{0,6})"((?: [A-Za-z][\w:]*="[\w.: -]*")*)>/y;
const CELL = new RegExp(
  `<c r="([A-Z]{1,3}[0-9]{1,7})"(?: s="([0-9]{1,6})")?(?: t="([A-Za-z]{1,9})")?` +
    `(?:/>|>(?:<v>(${TEXT})</v>|<is><t(?: xml:space="preserve")?>(${TEXT})</t></is>)?</c>)`,
  'y',
);
const CLOSE = '</row>';

/**
 * Reads the row that begins at `at` when it is written as most programs write plain values, many times
 * quicker than the strict walk; undefined at any surprise, which is then left to the strict walk.
 */
export function plainRow(source: string, at: number): PlainRow | undefined {
  OPEN.lastIndex = at;
  const open = OPEN.exec(source);
  const attributes = open && attributesOf(open[1] ?? '', open[2] ?? '');
  if (!attributes) return undefined;
  const row = Number(attributes['r']) - 1;
  const openEnd = OPEN.lastIndex;
  const cells = plainCells(source, openEnd, row);
  const closeStart = cells?.at(-1)?.end ?? openEnd;
  if (!cells || !source.startsWith(CLOSE, closeStart)) return undefined;
  const end = closeStart + CLOSE.length;
  return { row: { row, attributes, start: at, openEnd, closeStart, end, plain: true }, cells };
}

/** The cells up to the first thing that is none; undefined when one is out of its place. */
function plainCells(source: string, from: number, row: number): StoredCell[] | undefined {
  const cells: StoredCell[] = [];
  let last = -1;
  for (let start = from; ; start = CELL.lastIndex) {
    CELL.lastIndex = start;
    const cell = CELL.exec(source);
    if (!cell) return cells;
    const column = columnOfCell(cell[1] ?? '', row);
    if (column === undefined || column <= last || column >= MAX_COLUMNS) return undefined;
    last = column;
    cells.push({
      row,
      column,
      type: cell[3],
      style: Number(cell[2] ?? 0),
      metadata: undefined,
      addressed: true,
      value: cell[4] ?? cell[5],
      formula: undefined,
      start,
      end: CELL.lastIndex,
    });
  }
}

/** The row's attributes; undefined when one is given twice. */
function attributesOf(r: string, others: string): Record<string, string> | undefined {
  const attributes: Record<string, string> = { r };
  for (const [, name = '', value = ''] of others.matchAll(/([\w:]+)="([^"]*)"/g)) {
    if (Object.hasOwn(attributes, name)) return undefined;
    attributes[name] = value;
  }
  return attributes;
}
