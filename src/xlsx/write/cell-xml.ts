import type { Cell } from '../../workbook/port.ts';
import { cellName, rangeName } from '../address.ts';
import { mayFillCells, storedFormula } from '../formula/formula-text.ts';
import { MAX_FORMULA, MAX_TEXT } from '../limits.ts';
import { Refusal } from '../refusal.ts';
import { escapeXml, storeText, textElement } from '../xml/xml-text.ts';

/** What one `<c>` is to hold. */
export interface CellContent {
  readonly row: number;
  readonly column: number;
  readonly value: Cell;
  readonly formula?: string;
  readonly spill?: readonly (readonly Cell[])[];
}

/** How the workbook around it wants cells written. */
export interface CellManner {
  /** The style number; 0 is plain. */
  readonly style: number;
  /** The prefix of the sheet's elements, "" or such as "x:". */
  readonly prefix: string;
  /** The metadata entry for dynamic arrays; undefined writes an older array formula instead. */
  readonly dynamic: number | undefined;
  /** True where an error's text is the result of a formula (in a spilled range). */
  readonly computed?: boolean;
}

/** The `<c>` for a cell; "" for a blank without style. Text is never read as a formula. */
export function cellXml(content: CellContent, manner: CellManner): string {
  const { row, column, value, formula } = content;
  const { prefix: p, style } = manner;
  const place = `r="${cellName(row, column)}"${style ? ` s="${style}"` : ''}`;
  if (formula === undefined) {
    if (value === '') return style ? `<${p}c ${place}/>` : '';
    const { type, body } = plainValue(content, manner);
    return `<${p}c ${place}${type}>${body}</${p}c>`;
  }
  const stored = storedFormula(formula);
  if (stored.length > MAX_FORMULA)
    throw bad(content, `a formula longer than ${MAX_FORMULA} characters`);
  const { attributes, cellAttributes } = formulaAttributes(content, manner, stored);
  const { type, body } = resultXml(content, p);
  return `<${p}c ${place}${type}${cellAttributes}><${p}f${attributes}>${escapeXml(stored)}</${p}f>${body}</${p}c>`;
}

function formulaAttributes(content: CellContent, manner: CellManner, stored: string) {
  const rows = content.spill?.length ?? 1;
  const columns = Math.max(1, ...(content.spill ?? []).map((line) => line.length));
  const many = rows > 1 || columns > 1;
  if (!many && !(mayFillCells(stored) && manner.dynamic !== undefined)) {
    return { attributes: '', cellAttributes: '' };
  }
  const { row, column } = content;
  const range = {
    startRow: row,
    startColumn: column,
    endRow: row + rows - 1,
    endColumn: column + columns - 1,
  };
  const cellAttributes = manner.dynamic === undefined ? '' : ` cm="${manner.dynamic}"`;
  return { attributes: ` t="array" ref="${rangeName(range)}"`, cellAttributes };
}

function plainValue(content: CellContent, { prefix: p, computed }: CellManner) {
  const { value } = content;
  if (typeof value !== 'string') return resultXml(content, p);
  if (computed && errorText(value)) return resultXml(content, p);
  checkText(content, value);
  return { type: ' t="inlineStr"', body: `<${p}is>${textElement(`${p}t`, value)}</${p}is>` };
}

/** A formula's cached result. */
export function resultXml(content: CellContent, p: string): { type: string; body: string } {
  const { value } = content;
  if (typeof value === 'boolean')
    return { type: ' t="b"', body: `<${p}v>${value ? 1 : 0}</${p}v>` };
  if (typeof value === 'number') {
    if (!Number.isFinite(value)) throw bad(content, 'a number that is not finite');
    return { type: '', body: `<${p}v>${Object.is(value, -0) ? 0 : value}</${p}v>` };
  }
  const error = errorText(value);
  if (error) return { type: ' t="e"', body: `<${p}v>${error}</${p}v>` };
  checkText(content, value);
  return { type: ' t="str"', body: `<${p}v>${storeText(value)}</${p}v>` };
}

/** The error that the file format has for this text; later errors are stored as #VALUE!. */
function errorText(value: string): string | undefined {
  if (/^#(NULL!|DIV\/0!|VALUE!|REF!|NAME\?|NUM!|N\/A|GETTING_DATA)$/.test(value)) return value;
  return /^#(SPILL|CALC|BUSY|CONNECT|BLOCKED|UNKNOWN|FIELD|PYTHON)!$/.test(value)
    ? '#VALUE!'
    : undefined;
}

function checkText(content: CellContent, text: string): void {
  if (text.length > MAX_TEXT) throw bad(content, `more than ${MAX_TEXT} characters of text`);
}

function bad({ row, column }: CellContent, what: string): Refusal {
  return new Refusal(`Cell ${cellName(row, column)} would hold ${what}, which no workbook can.`);
}
