import { cellAt } from '../cells/cell-names.ts';
import { type Formula, nextDifferent, type Workings } from '../cells/formula.ts';
import { listsSheet } from '../cells/names.ts';
import { columnCells } from '../cells/table-cells.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';

const HEAD_ROW = 0;
const COLOURS = 0;
const SOAPS_AND_MATERIALS = 1;
const SUPPLIERS = 2;
const MOST_SUPPLIERS = 30;
const MOST_COLOURS = 40;
const MOST_NAMES = 120;
const materialCells = columnCells('materials', 'material');

/** The filled part of one list, as a drop-down's source. */
const filled = (column: number, most: number): string => {
  const first = `${listsSheet}!${cellAt(HEAD_ROW + 1, column, '$')}`;
  const all = `${first}:${cellAt(HEAD_ROW + most, column, '$')}`;
  return `=${first}:INDEX(${all},MAX(1,COUNTIF(${all},"?*")))`;
};

/** Each colour once, though Colours has a line for each of its ingredients. */
export const colourList = filled(COLOURS, MOST_COLOURS);
/** Every colour, then every material: what a recipe or a layer may name. */
export const soapOrMaterialList = filled(SOAPS_AND_MATERIALS, MOST_NAMES);

/** Each supplier once. */
export const supplierList = filled(SUPPLIERS, MOST_SUPPLIERS);

/** The hidden sheet behind the drop-downs that no table's column gives as it stands. */
export function makeListsSheet(): StarterSheet {
  return {
    name: listsSheet,
    group: 'behind',
    widths: { [COLOURS]: 22, [SOAPS_AND_MATERIALS]: 26, [SUPPLIERS]: 26 },
    cells: [
      header(COLOURS, 'Colours'),
      header(SOAPS_AND_MATERIALS, 'Colours and materials'),
      header(SUPPLIERS, 'Suppliers'),
      ...listCells(COLOURS, MOST_COLOURS, (row) =>
        nextDifferent(columnCells('colours', 'colour'), { row: HEAD_ROW, column: COLOURS }, row),
      ),
      ...listCells(SOAPS_AND_MATERIALS, MOST_NAMES, colourThenMaterial),
      ...listCells(SUPPLIERS, MOST_SUPPLIERS, (row) =>
        nextDifferent(
          columnCells('materials', 'supplier'),
          { row: HEAD_ROW, column: SUPPLIERS },
          row,
        ),
      ),
    ],
    landscape: false,
  };
}

const header = (column: number, holds: string): StarterCell => ({
  row: HEAD_ROW,
  column,
  holds,
  look: { role: 'header' },
});

function listCells(column: number, most: number, formula: (row: number) => Formula): StarterCell[] {
  return Array.from({ length: most }, (_, index) => ({
    row: HEAD_ROW + 1 + index,
    column,
    holds: formula(HEAD_ROW + 1 + index),
    look: { role: 'plain' },
  }));
}

function colourThenMaterial(row: number): Formula {
  const first = cellAt(HEAD_ROW + 1, COLOURS, '$');
  const last = cellAt(HEAD_ROW + MOST_COLOURS, COLOURS, '$');
  const count = `COUNTIF(${first}:${last},"?*")`;
  const number = row - HEAD_ROW;
  const colour = `INDEX(${first}:${last},${String(number)})`;
  const material = `INDEX(${materialCells.text},${String(number)}-${count})&""`;
  return {
    text: `IFERROR(IF(${String(number)}<=${count},${colour},${material}),"")`,
    work: (from) => namesOf(from)[number - 1] ?? '',
  };
}

function namesOf(from: Workings): string[] {
  const colours = Array.from({ length: MOST_COLOURS }, (_, index) =>
    String(from.cell(HEAD_ROW + 1 + index, COLOURS)),
  ).filter((name) => name !== '');
  return [...colours, ...materialCells.work(from).map(String)];
}
