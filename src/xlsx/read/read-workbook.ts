import { readColor, readTheme, type ThemeColors } from './colors.ts';
import { typedFormula } from '../formula/formula-text.ts';
import type {
  HighlightImage,
  ListValidationImage,
  NameImage,
  RangeImage,
  SheetImage,
  WorkbookImage,
} from '../image.ts';
import { sheetNotShown, workbookNotShown } from './not-shown.ts';
import { openPackage } from '../parts/package.ts';
import { choicesIn, cutToShown, type ShownSheet } from './shown-ranges.ts';
import { roomForCells } from './sheet-walk.ts';
import { readSheet, type StoredSheet } from './read-sheet.ts';
import { readStrings } from './read-strings.ts';
import { plainStyle, readStyles, type StoredStyles } from './read-styles.ts';
import { sheetTables, tableImage, type StoredTable } from './read-table.ts';
import { refusedOr, type Refused } from '../refusal.ts';
import { resolveReference, type ReferenceScope } from './resolve-reference.ts';
import { versionOf } from '../version.ts';
import {
  readWorkbookParts,
  refuseTwice,
  type SheetPart,
  type WorkbookParts,
} from '../parts/workbook-parts.ts';

export interface WorkbookRead {
  readonly kind: 'read';
  readonly workbook: WorkbookImage;
}

/** Reads the bytes of an .xlsx. Refuses, with a sentence, what is no workbook or no safe one. */
export function readWorkbook(bytes: Uint8Array, fileName: string): WorkbookRead | Refused {
  return refusedOr(() => ({ kind: 'read', workbook: workbookImage(bytes, fileName) }));
}

function workbookImage(bytes: Uint8Array, fileName: string): WorkbookImage {
  const pack = openPackage(bytes);
  const parts = readWorkbookParts(pack);
  const { stringsPart, stylesPart, themePart } = parts;
  const strings = stringsPart ? readStrings(stringsPart, pack.text(stringsPart)) : [];
  const theme = readTheme(themePart, themePart ? pack.text(themePart) : '');
  const styles = stylesPart ? readStyles(stylesPart, pack.text(stylesPart), theme) : noStyles;
  const room = roomForCells();
  const cut = cutToShown();
  const sheets = parts.sheets
    .filter((sheet) => sheet.kind === 'worksheet')
    .map((sheet): SheetRead => {
      const stored = readSheet(
        sheet.part,
        pack.text(sheet.part),
        strings,
        styles.cells.length,
        room,
      );
      return { sheet, stored: cut(stored), tables: sheetTables(pack, sheet) };
    });
  refuseTwice(sheets.flatMap(({ tables }) => tables.map(({ part }) => part)));
  const scope = scopeOf(sheets, parts);
  return {
    fileName,
    version: versionOf(bytes),
    sheets: sheets.map((each) => ({
      ...sheetImage(each, scope),
      ...coloursOf(each.stored, styles, theme),
    })),
    names: nameImages(parts, scope),
    brokenNames: brokenNames(parts),
    styles: styles.cells.length > 0 ? styles.cells : [plainStyle],
    notShown: [
      ...sheets.flatMap(({ sheet, stored }) => sheetNotShown(pack, sheet, stored)),
      ...sheets.flatMap(({ sheet, tables }) => headless(sheet, tables)),
      ...workbookNotShown(parts),
    ],
  };
}

interface ImageScope extends ReferenceScope {
  /** The part of each sheet that is shown, by its name. */
  readonly shown: ReadonlyMap<string, RangeImage>;
}

interface SheetRead {
  readonly sheet: SheetPart;
  readonly stored: ShownSheet;
  readonly tables: readonly StoredTable[];
}

function scopeOf(sheets: readonly SheetRead[], parts: WorkbookParts): ImageScope {
  const tables = sheets.flatMap(({ sheet, tables: own }) =>
    own.map((table) => ({ sheet: sheet.name, table: tableImage(table) })),
  );
  const shown = new Map(sheets.map(({ sheet, stored }) => [sheet.name, stored.shown]));
  return { tables, names: parts.names, shown };
}

type Coloured = Pick<SheetImage, 'tabColor' | 'highlights'>;

function sheetImage(
  { sheet, stored, tables }: SheetRead,
  scope: ImageScope,
): Omit<SheetImage, keyof Coloured> {
  const validations = stored.validations.flatMap(({ ranges, source }) => {
    const choices = choicesOf(source, sheet.name, scope);
    return choices ? ranges.map((range): ListValidationImage => ({ range, choices })) : [];
  });
  return {
    name: sheet.name,
    hidden: sheet.hidden,
    frozenRows: stored.frozenRows,
    frozenColumns: stored.frozenColumns,
    columnWidths: stored.columnWidths,
    rowHeights: stored.rowHeights,
    gridLines: stored.gridLines,
    cells: stored.cells,
    merges: stored.merges,
    tables: tables.filter((table) => table.hasHeaderRow).map(tableImage),
    validations,
  };
}

/** What the sheet colours by its own hand, with the workbook's colours. */
function coloursOf(stored: StoredSheet, styles: StoredStyles, theme: ThemeColors): Coloured {
  const tabColor = readColor(stored.tabColor, theme);
  const highlights = stored.highlights.flatMap(({ ranges, formula, look }): HighlightImage[] => {
    const known = styles.highlights[look];
    return known ? [{ ranges, formula: typedFormula(formula), look: known }] : [];
  });
  return { highlights, ...(tabColor ? { tabColor } : {}) };
}

const noStyles: StoredStyles = { cells: [], highlights: [] };

function choicesOf(source: string, sheet: string, scope: ImageScope) {
  const literal = /^"((?:[^"]|"")*)"$/.exec(source)?.[1];
  if (literal === undefined) {
    const found = resolveReference(source, sheet, scope);
    const shown = scope.shown.get(found?.sheet ?? '');
    const range = found && shown && choicesIn(found.range, shown);
    return range && { sheet: found.sheet, range };
  }
  return literal
    .replaceAll('""', '"')
    .split(',')
    .map((choice) => choice.trim());
}

function nameImages(parts: WorkbookParts, scope: ReferenceScope): readonly NameImage[] {
  return parts.names
    .filter((name) => !name.special)
    .flatMap(({ name, refersTo }) => {
      // Without a sheet of its own a name can only mean a full reference, so no default sheet.
      const found = resolveReference(refersTo, '', scope);
      return found && found.sheet !== '' ? [{ name, ...found }] : [];
    });
}

const brokenNames = ({ names }: WorkbookParts): readonly string[] =>
  names
    .filter(({ special, refersTo }) => !special && refersTo.includes('#REF!'))
    .map(({ name }) => name);

function headless(sheet: SheetPart, tables: readonly StoredTable[]): readonly string[] {
  return tables
    .filter((table) => !table.hasHeaderRow)
    .map((table) => `the table "${table.name}" on ${sheet.name}, which has no header row`);
}
