import {
  CellValueType,
  ICommandService,
  IUniverInstanceService,
  UniverInstanceType,
  type ICellData,
  type Injector,
  type Workbook,
} from '@univerjs/presets';
import {
  FormulaCalculationSessionService,
  FormulaDataModel,
  SetRangeValuesMutation,
  SetWorksheetRowCountMutation,
  type ISetRangeValuesMutationParams,
} from '@univerjs/preset-sheets-core';
import type { Cell } from '../../../workbook/port.ts';
import type { RangeImage } from '../../xlsx/image.ts';
import { TEXT_FORMAT } from './grid-styles.ts';
import { looksLikeFormula, plainCell, UNIT_ID } from './snapshot.ts';

/** A cell's place in the grid. */
export interface Place {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

/** What stands in one cell now. */
export interface Content {
  readonly value: Cell;
  readonly formula?: string;
  /** A spilling formula's rows, its own cell first. */
  readonly spill?: readonly (readonly Cell[])[];
}

/** One value to put into a cell. */
export interface CellWrite extends Place {
  readonly value: Cell;
  /** The row whose look (number format, colours) the cell takes. */
  readonly likeRow?: number;
}

/** The live grid as rows and columns of plain values; everything else here talks to it only. */
export interface Grid {
  sheetName(sheetId: string): string;
  sheetIdOf(name: string): string | undefined;
  read(place: Place): Content;
  /** Every formula cell of every sheet. */
  formulas(): readonly Place[];
  /** Whether all cells of the range are blank. */
  isBlank(sheetId: string, range: RangeImage): boolean;
  /** Writes plain values, never formulas, outside the undo history. Returns how to put all back. */
  write(cells: readonly CellWrite[]): () => void;
  /** Calls back with the cells that change, by whoever's hand; formula results are not reported. */
  onEdit(listener: (cells: readonly Place[]) => void): void;
  /** Resolves once the engine has answered everything written up to now. */
  settled(): Promise<void>;
}

/** Wraps the grid's own services. The workbook must exist. */
export function createGrid(injector: Injector): Grid {
  const commands = injector.get(ICommandService);
  const model = injector.get(FormulaDataModel);
  const workbook = injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(UNIT_ID, UniverInstanceType.UNIVER_SHEET);
  if (!workbook) throw new Error('The grid has no workbook.');
  const sheetOf = (sheetId: string) => {
    const sheet = workbook.getSheetBySheetId(sheetId);
    if (!sheet) throw new Error(`The grid has no sheet ${sheetId}.`);
    return sheet;
  };
  const raw = (place: Place): ICellData | undefined =>
    sheetOf(place.sheetId).getCellRaw(place.row, place.column) ?? undefined;
  const spilled = (place: Place): ICellData | undefined =>
    model.getArrayFormulaCellData()[UNIT_ID]?.[place.sheetId]?.[place.row]?.[place.column] ??
    undefined;
  const valueAt = (place: Place): Cell => valueOf(spilled(place) ?? raw(place));
  const formulaAt = (place: Place): string | undefined => {
    const cell = raw(place);
    if (!cell?.f && !cell?.si) return undefined;
    return (
      model.getFormulaStringByCell(place.row, place.column, place.sheetId, UNIT_ID) ?? undefined
    );
  };
  const setRaw = (cells: readonly (Place & { readonly cell: ICellData | null })[]) => {
    for (const [subUnitId, cellValue] of bySheet(cells)) {
      const params: ISetRangeValuesMutationParams = { unitId: UNIT_ID, subUnitId, cellValue };
      commands.syncExecuteCommand(SetRangeValuesMutation.id, params);
    }
  };
  const growSheets = (cells: readonly Place[]) => {
    for (const { sheetId, row } of cells) {
      if (row < sheetOf(sheetId).getRowCount()) continue;
      const params = { unitId: UNIT_ID, subUnitId: sheetId, rowCount: row + 1 + SPARE_ROWS };
      commands.syncExecuteCommand(SetWorksheetRowCountMutation.id, params);
    }
  };
  return {
    sheetName: (sheetId) => sheetOf(sheetId).getName(),
    sheetIdOf: (name) => workbook.getSheetBySheetName(name)?.getSheetId(),
    read(place) {
      const formula = formulaAt(place);
      if (formula === undefined) return { value: valueAt(place) };
      const range =
        model.getArrayFormulaRange()[UNIT_ID]?.[place.sheetId]?.[place.row]?.[place.column];
      const value = valueAt(place);
      if (!range || isOneCell(range) || value === '#SPILL!') return { value, formula };
      const spill = rowsOf(range, (row, column) =>
        valueAt({ sheetId: place.sheetId, row, column }),
      );
      return { value: spill[0]?.[0] ?? '', formula, spill };
    },
    formulas: () => formulaPlaces(model),
    isBlank: (sheetId, range) =>
      rowsOf(range, (row, column) => ({ sheetId, row, column }))
        .flat()
        .every((place) => valueAt(place) === '' && formulaAt(place) === undefined),
    write(cells) {
      growSheets(cells);
      const before = cells.map((place) => ({ ...place, cell: wholeCell(raw(place)) }));
      setRaw(
        cells.map((cell) => ({
          ...cell,
          cell: { ...lookOf(cell, raw), ...writtenCell(cell.value) },
        })),
      );
      return () => {
        setRaw(before);
      };
    },
    onEdit(listener) {
      commands.onCommandExecuted((command, options) => {
        if (command.id !== SetRangeValuesMutation.id) return;
        // The engine writes its results through the same mutation; they are no one's edit.
        if (options?.onlyLocal === true) return;
        const params = command.params as ISetRangeValuesMutationParams;
        if (params.unitId !== UNIT_ID || !params.cellValue) return;
        listener(placesOf(params.subUnitId, params.cellValue));
      });
    },
    settled: () => settle(injector.get(FormulaCalculationSessionService)),
  };
}

/** Rows added below when a table grows past the sheet's end. */
const SPARE_ROWS = 200;

async function settle(session: FormulaCalculationSessionService): Promise<void> {
  const { started, resultApplied } = session.state;
  await session.waitForLatestApplied();
  // A run under way when we came knew nothing of the newest cells: wait for the next one too.
  if (started && !resultApplied) await session.waitForLatestApplied();
}

function valueOf(cell: ICellData | undefined): Cell {
  if (!cell) return '';
  if (cell.p?.body) return cell.p.body.dataStream.replace(/\r\n$/, '').replaceAll('\r', '\n');
  if (cell.v === undefined || cell.v === null) return '';
  if (cell.t === CellValueType.BOOLEAN) return Number(cell.v) === 1;
  return cell.v;
}

/** `null` in each slot that the new value does not fill, or the old formula would stay. */
function writtenCell(value: Cell): ICellData {
  const cleared = { f: null, si: null, p: null };
  if (value === '') return { ...cleared, v: null };
  if (looksLikeFormula(value)) return { ...cleared, ...plainCell(value), s: { n: TEXT_FORMAT } };
  return {
    ...cleared,
    ...plainCell(value),
    ...(typeof value === 'string' ? { t: CellValueType.FORCE_STRING } : {}),
  };
}

const lookOf = (cell: CellWrite, raw: (place: Place) => ICellData | undefined): ICellData =>
  cell.likeRow === undefined ? {} : { s: raw({ ...cell, row: cell.likeRow })?.s ?? null };

const wholeCell = (cell: ICellData | undefined): ICellData | null =>
  cell ? { f: null, si: null, p: null, v: null, t: null, s: null, ...cell } : null;

function formulaPlaces(model: FormulaDataModel): Place[] {
  const places: Place[] = [];
  for (const [sheetId, matrix] of Object.entries(model.getFormulaData()[UNIT_ID] ?? {})) {
    for (const [row, columns] of Object.entries(matrix ?? {})) {
      for (const [column, cell] of Object.entries(columns ?? {})) {
        if (cell) places.push({ sheetId, row: Number(row), column: Number(column) });
      }
    }
  }
  return places;
}

function placesOf(
  sheetId: string,
  matrix: Readonly<Record<number, Readonly<Record<number, unknown>>>>,
): Place[] {
  return Object.entries(matrix).flatMap(([row, columns]) =>
    Object.keys(columns).map((column) => ({ sheetId, row: Number(row), column: Number(column) })),
  );
}

function bySheet(cells: readonly (Place & { readonly cell: ICellData | null })[]) {
  const sheets = new Map<string, Record<number, Record<number, ICellData | null>>>();
  for (const { sheetId, row, column, cell } of cells) {
    const matrix = sheets.get(sheetId) ?? {};
    (matrix[row] ??= {})[column] = cell;
    sheets.set(sheetId, matrix);
  }
  return sheets;
}

const isOneCell = (range: RangeImage): boolean =>
  range.startRow === range.endRow && range.startColumn === range.endColumn;

/** Reads a range row by row. */
export function rowsOf<T>(range: RangeImage, read: (row: number, column: number) => T): T[][] {
  return Array.from({ length: range.endRow - range.startRow + 1 }, (_, row) =>
    Array.from({ length: range.endColumn - range.startColumn + 1 }, (__, column) =>
      read(range.startRow + row, range.startColumn + column),
    ),
  );
}
