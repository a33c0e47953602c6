import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { macroFiles } from './office-macro.js';
import { editedMove, materials } from './workbook.js';

/**
 * On hand and value of each material by native formulas, in two layouts that a careful person may
 * choose. Neither works out daily statistics, and both keep each move's value in the ledger.
 */
export const layouts = {
  'SUMIFS over the ledger': { sort: false, formulas: sumifs },
  'ledger sorted by material, row ranges looked up': { sort: true, formulas: rowRanges },
};

/**
 * Hard-recalculates a layout in LibreOffice, timed inside the office so that neither its start nor
 * loading the file counts. Answers milliseconds and numbers, before and after one edited move.
 */
export function measureNative(tables, layout) {
  const folder = mkdtempSync(join(tmpdir(), 'pour-bench-'));
  try {
    const ledger = ledgerRows(tables.moves, layout);
    writeFileSync(join(folder, 'stock.fods'), workbook(tables.lots, ledger, layout));
    const profile = `-env:UserInstallation=file://${folder}/profile`;
    const office = (...args) =>
      execFileSync('soffice', [profile, '--headless', '--norestore', '--nologo', ...args], {
        stdio: 'ignore',
        timeout: 240_000,
      });
    // The first start makes the profile; the macro goes into it.
    office('--terminate_after_init');
    const basic = join(folder, 'profile/user/basic/Standard');
    mkdirSync(basic, { recursive: true });
    for (const [name, text] of Object.entries(macroFiles)) writeFileSync(join(basic, name), text);
    const out = join(folder, 'out.txt');
    office(
      `macro:///Standard.Bench.Run("file://${folder}/stock.fods","${editedRow(tables.moves, ledger)}","${out}")`,
    );
    return read(readFileSync(out, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function read(text) {
  const lines = text.split('\n').map((line) => line.trim().split(/\s+/u));
  const numbers = (word) => lines.filter(([first]) => first === word).map(([, number]) => +number);
  return {
    recalcMs: numbers('recalc'),
    editMs: numbers('edit'),
    before: numbers('before'),
    after: numbers('after'),
  };
}

function ledgerRows(moves, { sort }) {
  const rows = moves.slice(1).map((row) => [row[3], row[4], row[6]]);
  return sort ? rows.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)) : rows;
}

/** Where the edited move stands in the layout; it is its material's last in either. */
const editedRow = (moves, ledger) =>
  ledger.findLastIndex(([material]) => material === moves[editedMove(moves)][3]);

function workbook(lots, ledger, { formulas }) {
  const lotRows = lots.slice(1).map((row) => [row[1], row[3], row[4], row[5]]);
  const stock = materials.map((name, at) => [name, ...formulas(at + 1, ledger.length)]);
  return `<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet>${sheet('Stock', stock)}${sheet('Lots', lotRows)}${sheet('Moves', ledger)}</office:spreadsheet></office:body></office:document>`;
}

const sheet = (name, rows) =>
  `<table:table table:name="${name}">${rows.map((cells) => `<table:table-row>${cells.map(cellXml).join('')}</table:table-row>`).join('\n')}</table:table>`;

function cellXml(cell) {
  if (typeof cell === 'number')
    return `<table:table-cell office:value-type="float" office:value="${cell}"/>`;
  if (cell.startsWith('of:')) return `<table:table-cell table:formula="${cell}"/>`;
  return `<table:table-cell office:value-type="string"><text:p>${cell}</text:p></table:table-cell>`;
}

const LOTS = materials.length * 10;
const lotSum = (column, row) =>
  `SUMIFS([$Lots.$${column}$1:.$${column}$${LOTS}];[$Lots.$A$1:.$A$${LOTS}];[.$A${row}])`;

function sumifs(row, moves) {
  const moved = (column) =>
    `SUMIFS([$Moves.$${column}$1:.$${column}$${moves}];[$Moves.$A$1:.$A$${moves}];[.$A${row}])`;
  return [
    `of:=${lotSum('B', row)}+${moved('B')}`,
    `of:=${lotSum('C', row)}+${lotSum('D', row)}+${moved('C')}`,
  ];
}

/** Columns D and E hold the first and last row of the material in the sorted ledger. */
function rowRanges(row, moves) {
  const cell = (column, place) =>
    `INDEX([$Moves.$${column}$1:.$${column}$${moves}];[.$${place}${row}])`;
  const moved = (column) => `SUM(${cell(column, 'D')}:${cell(column, 'E')})`;
  const ledger = `[$Moves.$A$1:.$A$${moves}]`;
  return [
    `of:=${lotSum('B', row)}+${moved('B')}`,
    `of:=${lotSum('C', row)}+${lotSum('D', row)}+${moved('C')}`,
    row === 1 ? `of:=MATCH([.$A1];${ledger};0)` : `of:=[.$E${row - 1}]+1`,
    `of:=MATCH([.$A${row}];${ledger};1)`,
  ];
}
