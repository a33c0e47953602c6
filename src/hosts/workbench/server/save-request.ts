import type { Cell } from '../../../workbook/port.ts';
import type {
  CellEdit,
  RangeImage,
  SaveRequest,
  SheetEdits,
  TableImage,
} from '../../../xlsx/image.ts';
import { isRecord } from '../../../domain/kernel/is-record.ts';

/** Reads a request's JSON text; undefined when it is not a save request in every detail. */
export function parseSaveRequest(text: string): SaveRequest | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return undefined;
  }
  if (!isRecord(value)) return undefined;
  const { id, baseVersion, after, edits } = value;
  return isId(id) &&
    isText(baseVersion) &&
    (after === undefined || isId(after)) &&
    isListOf(edits, isSheetEdits)
    ? { id, baseVersion, edits, ...(after === undefined ? {} : { after }) }
    : undefined;
}

const isId = (value: unknown): value is string =>
  typeof value === 'string' && /^[\w-]{1,64}$/.test(value);

function isSheetEdits(value: unknown): value is SheetEdits {
  return (
    isRecord(value) &&
    isText(value['sheet']) &&
    isListOf(value['cells'], isCellEdit) &&
    isListOf(value['tables'], isTable)
  );
}

function isCellEdit(value: unknown): value is CellEdit {
  if (!isRecord(value)) return false;
  const { formula, spill } = value;
  return (
    isIndex(value['row']) &&
    isIndex(value['column']) &&
    isCell(value['value']) &&
    (formula === undefined || (isText(formula) && formula.startsWith('='))) &&
    (spill === undefined || (formula !== undefined && isListOf(spill, isRow)))
  );
}

function isTable(value: unknown): value is TableImage {
  return (
    isRecord(value) &&
    isText(value['name']) &&
    isRange(value['range']) &&
    isListOf(value['headers'], isText)
  );
}

function isRange(value: unknown): value is RangeImage {
  return (
    isRecord(value) &&
    ['startRow', 'startColumn', 'endRow', 'endColumn'].every((key) => isIndex(value[key]))
  );
}

function isRow(value: unknown): value is readonly Cell[] {
  return isListOf(value, isCell);
}

function isCell(value: unknown): value is Cell {
  return typeof value === 'string' || typeof value === 'boolean' || Number.isFinite(value);
}

function isIndex(value: unknown): value is number {
  return Number.isInteger(value) && (value as number) >= 0;
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function isListOf<T>(value: unknown, is: (item: unknown) => item is T): value is readonly T[] {
  return Array.isArray(value) && value.every(is);
}
