import type { SheetIndex } from './sheet-index.ts';
import type { StoredRow } from '../read/sheet-walk.ts';
import { withAttribute, type Splice } from '../xml/splice.ts';

/** A cell's new text, "" to remove it. */
export interface CellText {
  readonly row: number;
  readonly column: number;
  readonly text: string;
}

/** The changes to a sheet's text that put the given cells in their places. */
export function patchRows(
  index: SheetIndex,
  cells: readonly CellText[],
  prefix: string,
): readonly Splice[] {
  const byRow = new Map<number, CellText[]>();
  for (const cell of cells) byRow.set(cell.row, [...(byRow.get(cell.row) ?? []), cell]);
  const stored = new Map(index.rows.map((row) => [row.row, row]));
  const splices: Splice[] = [];
  const fresh: { row: number; text: string }[] = [];
  for (const [row, unordered] of [...byRow].sort(([a], [b]) => a - b)) {
    const ordered = unordered.sort((a, b) => a.column - b.column);
    const standing = stored.get(row);
    if (standing) splices.push(...inRow(index, standing, ordered, prefix));
    else {
      const content = ordered.map(({ text }) => text).join('');
      if (content)
        fresh.push({ row, text: `<${prefix}row r="${row + 1}">${content}</${prefix}row>` });
    }
  }
  return [...splices, ...newRows(index, fresh, prefix)];
}

function inRow(
  index: SheetIndex,
  row: StoredRow,
  cells: readonly CellText[],
  prefix: string,
): readonly Splice[] {
  const stored = index.cellsIn(row.row);
  const columns = new Map(stored.map((cell) => [cell.column, cell]));
  const splices: Splice[] = [];
  const added = cells.filter(({ column, text }) => !columns.has(column) && text !== '');
  for (const { column, text } of cells) {
    const cell = columns.get(column);
    if (cell) splices.push({ start: cell.start, end: cell.end, text });
  }
  const tag = index.source.slice(row.start, row.openEnd);
  if (row.closeStart === row.start && added.length > 0) {
    const open = withAttribute(tag, 'spans', undefined).replace(/\s*\/>$/, '>');
    const content = added.map(({ text }) => text).join('');
    return [{ start: row.start, end: row.end, text: `${open}${content}</${prefix}row>` }];
  }
  for (const { column, text } of added) {
    const at = stored.find((each) => each.column > column)?.start ?? row.closeStart;
    splices.push({ start: at, end: at, text });
  }
  // `spans` is only a hint, and a stale one would be wrong.
  if (added.length > 0 && row.attributes['spans'] !== undefined) {
    const text = withAttribute(tag, 'spans', undefined);
    splices.push({ start: row.start, end: row.openEnd, text });
  }
  return splices;
}

function newRows(
  { source, rows, data }: SheetIndex,
  fresh: readonly { readonly row: number; readonly text: string }[],
  prefix: string,
): readonly Splice[] {
  if (fresh.length === 0) return [];
  if (data.closeStart === data.start) {
    const content = fresh.map(({ text }) => text).join('');
    const open = source.slice(data.start, data.end).replace(/\s*\/>$/, '>');
    return [{ start: data.start, end: data.end, text: `${open}${content}</${prefix}sheetData>` }];
  }
  let next = 0;
  return fresh.map(({ row, text }) => {
    for (let at = rows[next]; at && at.row < row; at = rows[next]) next += 1;
    const place = rows[next]?.start ?? data.closeStart;
    return { start: place, end: place, text };
  });
}
