import { overlaps } from '../../../xlsx/address.ts';
import type { CellImage, RangeImage, SheetImage, WorkbookImage } from '../../../xlsx/image.ts';
import { rowsIn, type CellPlace } from './places.ts';
import type { CellWrite, Content, SheetCells } from './sheet-cells.ts';
import { sheetIdAt } from './sheet-ids.ts';

/**
 * The cells as they were read, without any grid: formulas show what they last came to, and nothing is
 * worked out. What is written stands beside the image, which stays as it is.
 */
export function createImageCells(image: WorkbookImage): SheetCells {
  const sheets = new Map(
    image.sheets.map((sheet, index) => [sheetIdAt(index), sheetOf(sheet)] as const),
  );
  const listeners = new Set<(cells: readonly CellPlace[]) => void>();
  const read = ({ sheetId, row, column }: CellPlace): Content =>
    sheets.get(sheetId)?.read(row, column) ?? BLANK;
  const put = (cells: readonly (CellPlace & { readonly content: Content })[]) => {
    for (const { sheetId, row, column, content } of cells) {
      sheets.get(sheetId)?.put(row, column, content);
    }
    for (const listener of listeners) listener(cells);
  };
  return {
    worksOut: false,
    sheetName: (sheetId) => sheets.get(sheetId)?.name ?? '',
    read,
    values: (sheetId, range) =>
      rowsIn(range, (row, column) => read({ sheetId, row, column }).value),
    formulas: () => [],
    isBlank: (sheetId, range) => sheets.get(sheetId)?.isBlank(range) ?? true,
    write(cells) {
      const before = cells.map((place) => ({ ...place, content: read(place) }));
      put(cells.map((cell: CellWrite) => ({ ...cell, content: { value: cell.value } })));
      return () => {
        put(before);
      };
    },
    // Looks are the grid's; the file takes those of the row above by itself.
    takeLook: () => undefined,
    onEdit: (listener) => void listeners.add(listener),
    settled: () => Promise.resolve(),
  };
}

const BLANK: Content = { value: '' };

type Rows = Map<number, (Content | undefined)[]>;

/** One sheet; its cells are put in rows when the first of them is asked for. */
function sheetOf({ name, cells }: SheetImage) {
  let rows: Rows | undefined;
  const filled = (): Rows => (rows ??= rowsOf(cells));
  const spills = cells.flatMap(({ spill }) => spill ?? []);
  const read = (row: number, column: number): Content => filled().get(row)?.[column] ?? BLANK;
  return {
    name,
    read,
    put(row: number, column: number, content: Content) {
      const known = filled().get(row) ?? [];
      known[column] = content;
      filled().set(row, known);
    },
    /** The further cells of a list that spills are not in the image, but they are not blank. */
    isBlank: (range: RangeImage): boolean =>
      !spills.some((spill) => overlaps(spill, range)) &&
      rowsIn(range, read)
        .flat()
        .every(({ value, formula }) => value === '' && formula === undefined),
  };
}

function rowsOf(cells: readonly CellImage[]): Rows {
  const rows: Rows = new Map();
  for (const { row, column, value, formula } of cells) {
    const known = rows.get(row) ?? [];
    known[column] = formula === undefined ? { value } : { value, formula };
    rows.set(row, known);
  }
  return rows;
}
