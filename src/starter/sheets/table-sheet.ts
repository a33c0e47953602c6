import type { Column } from '../../workbook/column.ts';
import type { TableData } from '../../workbook/port.ts';
import { type TableKind, tables } from '../../workbook/schema.ts';
import { HEADER_ROW } from '../cells/table-cells.ts';
import { dropDownsFor } from '../blocks/table-choices.ts';
import { noteOf, tableSheets } from '../cells/names.ts';
import type { CellFormat, StarterCell, StarterSheet } from '../cells/sheet.ts';

const NOTE_ROW = 0;
const HELP_ROW = 1;

/** The sheet of one table: a line on what it is for, help above each header, then the table. */
export function tableSheet(kind: TableKind, data: TableData): StarterSheet {
  const place = placeOf(kind);
  const columns = columnsOf(kind);
  const widths = columns.map(([key, column]) => widthOf(key, column));
  const helpLines = columns.map(([, { help }], index) =>
    // Small print: a column of w characters holds about 1.2 w of them.
    Math.ceil(help.length / ((widths[index] ?? 10) * 1.15)),
  );
  const help = columns.map(([, column], index): StarterCell => ({
    row: HELP_ROW,
    column: index,
    holds: column.help,
    look: { role: 'note' },
  }));
  return {
    name: place.sheet,
    group: place.group,
    widths: { ...widths },
    heights: { [HELP_ROW]: 6 + 12.5 * Math.max(...helpLines) },
    frozenRows: HEADER_ROW + 1,
    frozenColumns: 1,
    cells: [{ row: NOTE_ROW, column: 0, holds: noteOf(place), look: { role: 'label' } }, ...help],
    table: {
      row: HEADER_ROW,
      data,
      formats: columns.map(([key, column]) => formatOf(kind, key, column)),
    },
    dropDowns: dropDownsFor(kind, HEADER_ROW, data.rows.length),
    landscape: widths.reduce((a, b) => a + b, 0) > 95,
  };
}

function placeOf(kind: TableKind) {
  const place = tableSheets.find((each) => each.kind === kind);
  if (place === undefined) throw new Error(`No sheet is named for the table ${kind}`);
  return place;
}

const columnsOf = (kind: TableKind): [string, Column<unknown>][] =>
  Object.entries(tables[kind].columns);

/** Where a column's own format would show too little, or too much. */
const formatsOf: Partial<Readonly<Record<string, CellFormat>>> = {
  // A setting's value may be a number or a word, which a text format would not tell apart.
  'settings value': 'general',
  'moves quantity': 'grams',
  'lots quantity': 'grams',
};

const formatOf = (kind: TableKind, key: string, { format }: Column<unknown>): CellFormat =>
  formatsOf[`${kind} ${key}`] ?? format;

const wide: Readonly<Record<string, number>> = {
  material: 26,
  ingredient: 22,
  item: 22,
  design: 20,
  colour: 18,
  mold: 20,
  fair: 26,
  setting: 24,
  inci: 42,
  allergens: 46,
  maxPercent: 15,
  note: 58,
  supplier: 22,
  layer: 12,
  entry: 12,
};

function widthOf(key: string, { header, format, choices }: Column<unknown>): number {
  // The filter button takes the room of three characters.
  return Math.max(wide[key] ?? (choices ? 14 : format === 'text' ? 12 : 11), header.length + 4);
}
