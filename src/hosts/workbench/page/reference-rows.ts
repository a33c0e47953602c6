import {
  CellValueType,
  isTextFormat,
  type ICellData,
  type Nullable,
  type ObjectMatrix,
} from '@univerjs/presets';
import type { BaseReferenceObject, BaseValueObject } from '@univerjs/preset-sheets-core';

/**
 * The rows of a range, straight from its sheet: a table of 100,000 lines is handed over in a moment,
 * where the engine's own way makes an object of each cell first. `slowly` reads the value that the
 * engine makes of a cell; it is asked for formulas and all that is no plain number or text. Undefined
 * where the sheet is not there.
 */
export function rowsOfReference(
  reference: BaseReferenceObject,
  slowly: (value: BaseValueObject) => unknown,
): unknown[][] | undefined {
  const { startRow, startColumn, endRow, endColumn } = reference.getRangePosition();
  const cells = sheetOf(reference)?.cellData.getMatrix();
  if (!cells || startRow < 0 || startColumn < 0) return undefined;
  const asText = textFormats(reference);
  const mayShowSpill =
    isFilled(reference.getCurrentActiveArrayFormulaCellData()) ||
    isFilled(reference.getCurrentRuntimeActiveArrayFormulaCellData());
  const read = (cell: Nullable<ICellData>, row: number, column: number): unknown => {
    if (isBlank(cell) && !mayShowSpill) return '';
    if (cell && isPlain(cell)) {
      return cell.t === CellValueType.NUMBER && asText(cell) ? String(cell.v) : cell.v;
    }
    const shown = reference.getCellData(row, column);
    return !shown || isBlank(shown) ? '' : slowly(reference.getCellValueObject(shown));
  };
  return Array.from({ length: endRow - startRow + 1 }, (_, down) => {
    const row = cells[startRow + down];
    return Array.from({ length: endColumn - startColumn + 1 }, (__, right) =>
      read(row?.[startColumn + right], startRow + down, startColumn + right),
    );
  });
}

/** Typed never to be missing, which it is where a formula names no sheet of the workbook. */
const sheetOf = (reference: BaseReferenceObject) =>
  reference.getCurrentActiveSheetData() as
    ReturnType<BaseReferenceObject['getCurrentActiveSheetData']> | undefined;

const isFilled = (matrix: ObjectMatrix<Nullable<ICellData>> | undefined): boolean =>
  matrix !== undefined && matrix.getSizeOf() > 0;

/** A cell that shows nothing of its own; it may still have a look. */
const isBlank = (cell: Nullable<ICellData>): boolean =>
  !cell || ((cell.v === undefined || cell.v === null) && !cell.f && !cell.si && !cell.p);

const isPlain = ({ v, t, f, si, p }: ICellData): boolean =>
  !f &&
  !si &&
  !p &&
  ((t === CellValueType.NUMBER && typeof v === 'number') ||
    ((t === CellValueType.STRING || t === CellValueType.FORCE_STRING) && typeof v === 'string'));

/** Whether a cell's format makes text of its number, looked up once for each look. */
function textFormats(reference: BaseReferenceObject): (cell: ICellData) => boolean {
  const styles = reference.getCurrentStylesData();
  const known = new Map<unknown, boolean>();
  return (cell) => {
    let isText = known.get(cell.s);
    if (isText === undefined) {
      isText = isTextFormat(styles.getStyleByCell(cell)?.n?.pattern);
      known.set(cell.s, isText);
    }
    return isText;
  };
}
