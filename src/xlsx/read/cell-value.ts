import type { Cell } from '../../workbook/port.ts';
import { cellName } from '../address.ts';
import { Refusal } from '../refusal.ts';
import type { StoredCell } from './sheet-walk.ts';
import { typedText } from '../xml/xml-text.ts';

/** A stored cell's value: dates are serial numbers, errors their text, a blank is "". */
export function cellValue(cell: StoredCell, strings: readonly string[]): Cell {
  const { value } = cell;
  if (value === undefined) return '';
  switch (cell.type) {
    case 's':
      return sharedString(cell, strings);
    case 'str':
    case 'inlineStr':
      return typedText(value);
    case 'b':
      return value.trim() === '1' || value.trim() === 'true';
    case 'e':
      return value.trim();
    case 'd':
      return isoDate(cell, value);
    default:
      return value.trim() === '' ? '' : numberOf(cell, Number(value));
  }
}

function sharedString(cell: StoredCell, strings: readonly string[]): string {
  const text = strings[Number(cell.value)];
  if (text === undefined) throw bad(cell, `points to text number ${cell.value}, which is missing`);
  return text;
}

function isoDate(cell: StoredCell, value: string): number {
  const iso = /[Zz]|[+-]\d\d:?\d\d$/.test(value)
    ? value
    : `${value}${value.includes('T') ? '' : 'T00:00'}Z`;
  // Day 25569 of the 1900 system is 1 January 1970.
  return numberOf(cell, Date.parse(iso) / 86_400_000 + 25_569);
}

function numberOf(cell: StoredCell, number: number): number {
  if (!Number.isFinite(number)) throw bad(cell, `holds "${cell.value}", which is no number`);
  return number;
}

function bad(cell: StoredCell, why: string): Refusal {
  return new Refusal(`This workbook is damaged: cell ${cellName(cell.row, cell.column)} ${why}.`);
}
