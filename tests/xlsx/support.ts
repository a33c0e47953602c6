import { execFileSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import { parseCell } from '../../src/xlsx/address.ts';
import type { CellImage, SheetEdits, WorkbookImage } from '../../src/xlsx/image.ts';
import { patchWorkbook } from '../../src/xlsx/patch/patch-workbook.ts';
import { readWorkbook } from '../../src/xlsx/read/read-workbook.ts';
import { readZip, unpack } from '../../src/xlsx/zip/zip-read.ts';
import { pack, writeZip } from '../../src/xlsx/zip/zip-write.ts';

/** The image of a workbook that must be readable. */
export function imageOf(bytes: Uint8Array): WorkbookImage {
  const read = readWorkbook(bytes, 'book.xlsx');
  if (read.kind === 'refused') throw new Error(read.sentence);
  return read.workbook;
}

/** The bytes after a patch that must be accepted. */
export function patchedBytes(bytes: Uint8Array, edits: readonly SheetEdits[]): Uint8Array {
  const patched = patchWorkbook(bytes, edits);
  if (patched.kind === 'refused') throw new Error(patched.sentence);
  return patched.bytes;
}

/** The sentence of a patch that must be refused. */
export function refusalOf(bytes: Uint8Array, edits: readonly SheetEdits[]): string {
  const patched = patchWorkbook(bytes, edits);
  if (patched.kind !== 'refused') throw new Error('the patch was accepted');
  return patched.sentence;
}

/** The cell at "B3" of a sheet's image. */
export function cellAt(image: WorkbookImage, sheet: string, name: string): CellImage | undefined {
  const place = parseCell(name);
  return image.sheets
    .find((each) => each.name === sheet)
    ?.cells.find((cell) => cell.row === place?.row && cell.column === place.column);
}

/** Edits of one sheet by cell name. */
export function edits(
  sheet: string,
  cells: Readonly<Record<string, string | number | boolean>>,
): SheetEdits {
  return {
    sheet,
    tables: [],
    cells: Object.entries(cells).map(([name, value]) => {
      const place = parseCell(name);
      if (!place) throw new Error(name);
      return { ...place, value };
    }),
  };
}

/** Each part's unpacked bytes by name. */
export function partsOf(bytes: Uint8Array): ReadonlyMap<string, Uint8Array> {
  return new Map(readZip(bytes).map((entry) => [entry.name, unpack(entry)]));
}

/** The text of one part. */
export function partText(bytes: Uint8Array, part: string): string {
  return new TextDecoder().decode(partsOf(bytes).get(part));
}

/** The same package with some parts' texts changed (undefined removes a part). */
export function withParts(
  bytes: Uint8Array,
  changes: Readonly<Record<string, ((text: string) => string) | undefined>>,
): Uint8Array {
  const entries = [...partsOf(bytes)].flatMap(([name, content]) => {
    if (!(name in changes)) return [pack(name, content)];
    const change = changes[name];
    const text = change?.(new TextDecoder().decode(content));
    return text === undefined ? [] : [pack(name, new TextEncoder().encode(text))];
  });
  const known = new Set(entries.map((entry) => entry.name));
  const added = Object.entries(changes).flatMap(([name, change]) =>
    known.has(name) || !change ? [] : [pack(name, new TextEncoder().encode(change('')))],
  );
  return writeZip([...entries, ...added]);
}

/** The names of the parts that differ between two packages, missing and new ones included. */
export function differingParts(before: Uint8Array, after: Uint8Array): readonly string[] {
  const [old, now] = [partsOf(before), partsOf(after)];
  return [...new Set([...old.keys(), ...now.keys()])]
    .filter((name) => {
      const [a, b] = [old.get(name), now.get(name)];
      return !a || !b || Buffer.compare(a, b) !== 0;
    })
    .sort();
}

/** The workbook as another library reads it. */
export async function byExcelJs(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const book = new ExcelJS.Workbook();
  // The library's types ask for an older Buffer type than Node's.
  await book.xlsx.load(Buffer.from(bytes) as unknown as ExcelJS.Buffer);
  return book;
}

export const soffice = ['/usr/bin/soffice', '/usr/bin/libreoffice'].find((path) =>
  existsSync(path),
);

const CSV_ALL_SHEETS =
  'csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,true,false,false,false,-1';

/** Converts by LibreOffice; answers the files it wrote by name. CSV gives one file a sheet, unformatted. */
export function byLibreOffice(
  bytes: Uint8Array,
  to: 'xlsx' | 'csv' | 'pdf',
  settings?: string,
): ReadonlyMap<string, Buffer> {
  if (!soffice) throw new Error('LibreOffice is not installed');
  const folder = mkdtempSync(join(tmpdir(), 'pour-office-'));
  try {
    writeFileSync(join(folder, 'book.xlsx'), bytes);
    if (settings !== undefined) {
      mkdirSync(join(folder, 'profile', 'user'), { recursive: true });
      writeFileSync(join(folder, 'profile', 'user', 'registrymodifications.xcu'), settings);
    }
    const out = join(folder, 'out');
    const profile = `-env:UserInstallation=file://${join(folder, 'profile')}`;
    const format =
      to === 'csv' ? CSV_ALL_SHEETS : to === 'xlsx' ? 'xlsx:Calc MS Excel 2007 XML' : to;
    execFileSync(
      soffice,
      ['--headless', profile, '--convert-to', format, '--outdir', out, join(folder, 'book.xlsx')],
      { stdio: 'pipe', timeout: 500_000 },
    );
    return new Map(readdirSync(out).map((name) => [name, readFileSync(join(out, name))]));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** 0 = always recalculate on load, whichever program wrote the file. */
const RECALCULATE =
  '<?xml version="1.0" encoding="UTF-8"?><oor:items xmlns:oor="http://openoffice.org/2001/registry"><item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item></oor:items>';

/** The workbook after LibreOffice, which knows no function of ours, has worked out every formula anew. */
export function calculatedAnew(bytes: Uint8Array): Uint8Array {
  const made = byLibreOffice(bytes, 'xlsx', RECALCULATE).get('book.xlsx');
  if (made === undefined) throw new Error('LibreOffice wrote no workbook');
  return made;
}
