import type { Cell } from '../port.ts';
import { tables } from '../schema.ts';
import type { RecognisedTable } from './recognise.ts';

/**
 * The handle of a set of tables: a 64-bit fingerprint of what their known columns hold. Rows are
 * fingerprinted one by one and added up, so neither row, column nor table order changes it.
 */
export function handleOf(recognised: readonly RecognisedTable[]): string {
  const total = { high: 0, low: 0 };
  for (const table of recognised) addTable(table, total);
  return `book ${hex(total.high)}${hex(total.low)}`;
}

interface Fingerprint {
  high: number;
  low: number;
}

const hex = (lane: number): string => (lane >>> 0).toString(16).padStart(8, '0');

function addTable({ kind, position, range }: RecognisedTable, total: Fingerprint): void {
  const columns = Object.keys(tables[kind].columns).map((key) => position.get(key) ?? -1);
  const row: Fingerprint = { high: 0, low: 0 };
  for (let at = 1; at < range.length; at += 1) {
    const cells = range[at] ?? [];
    startRow(row, kind);
    let blank = true;
    for (const column of columns) {
      const cell = cells[column] ?? '';
      if (cell !== '') blank = false;
      mixCell(row, cell);
    }
    if (blank) continue;
    total.high = (total.high + finish(row.high ^ row.low)) | 0;
    total.low = (total.low + finish(row.low)) | 0;
  }
}

function startRow(row: Fingerprint, kind: string): void {
  row.high = 0x9e3779b1;
  row.low = 0x85ebca77;
  mixText(row, kind);
}

const numberBits = new Float64Array(1);
const numberWords = new Uint32Array(numberBits.buffer);

/** A cell's type counts too: the text "1" and the number 1 are not the same. */
function mixCell(row: Fingerprint, cell: Cell): void {
  if (typeof cell === 'number') {
    numberBits[0] = cell;
    mix(row, (numberWords[0] ?? 0) ^ 0x6e);
    mix(row, numberWords[1] ?? 0);
  } else if (typeof cell === 'string') {
    mixText(row, cell);
  } else {
    mix(row, cell ? 0xb1 : 0xb0);
  }
}

function mixText(row: Fingerprint, text: string): void {
  for (let i = 0; i < text.length; i += 1) mix(row, text.charCodeAt(i));
  mix(row, text.length ^ 0x10000);
}

function mix(row: Fingerprint, word: number): void {
  row.high = Math.imul(row.high ^ word, 0x01000193);
  row.low = Math.imul((row.low ^ word) + 0x7ed55d16, 0x85ebca6b) ^ (row.low >>> 15);
}

/** Spreads a lane's bits before it is added (the last steps of a 32-bit mixer). */
function finish(lane: number): number {
  let bits = lane;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return bits ^ (bits >>> 16);
}
