import { cell, titleCells } from '../cells/answer-cells.ts';
import { cellAt } from '../cells/cell-names.ts';
import { answered } from '../blocks/answered.ts';
import { blockOf, pour } from '../cells/formula.ts';
import { listed, moreNote } from '../blocks/listed.ts';
import type { Mark, StarterSheet } from '../cells/sheet.ts';
import { colourList } from './lists-sheet.ts';
import { widths } from './weigh-sheet.ts';

const NAME = 'Mosaic';
const TOP = 4;
const LEFT = 0;
/** Room for the tiles of most bars, each way; what a bar doesn't have stays blank. */
const SIDE = 8;
const COUNT = LEFT + SIDE + 1;
const COLOURS_SHOWN = 12;

/** A pattern of colour names, row by row, and the shade to show for each name. */
export interface Mosaic {
  readonly pattern: readonly (readonly string[])[];
  readonly shades: Readonly<Record<string, { readonly fill: string; readonly color: string }>>;
}

/** Lay out a bar's mosaic by picking a colour for each tile; the tiles of each colour are counted. */
export function mosaicSheet({ pattern, shades }: Mosaic): StarterSheet {
  const range = {
    startRow: TOP,
    startColumn: LEFT,
    endRow: TOP + SIDE - 1,
    endColumn: LEFT + SIDE - 1,
  };
  const tiles = Array.from({ length: SIDE * SIDE }, (_, index) => {
    const [down, right] = [Math.floor(index / SIDE), index % SIDE];
    return cell(TOP + down, LEFT + right, pattern[down]?.[right] ?? '', 'tile', 'text');
  });
  const tileCounts = answered('tiles');
  return {
    name: NAME,
    group: 'answers',
    widths: widths([...Array.from({ length: SIDE }, () => 11), 4, 20, 9]),
    heights: Object.fromEntries(Array.from({ length: SIDE }, (_, down) => [TOP + down, 44])),
    cells: [
      ...titleCells(
        NAME,
        'Pick a colour for each tile of one bar and leave the other cells blank, then copy the counts into Bar layers.',
      ),
      ...tiles,
      cell(TOP - 2, COUNT, 'Tiles for one bar', 'heading'),
      ...listed({
        row: TOP,
        column: COUNT,
        lines: COLOURS_SHOWN,
        of: tileCounts,
        columns: [
          { header: 'Colour', format: 'text', take: 1 },
          { header: 'Tiles', format: 'whole', take: 2 },
        ],
      }),
      cell(
        TOP + COLOURS_SHOWN,
        COUNT,
        moreNote(tileCounts.beyond(COLOURS_SHOWN), 'put POUR.TILECOUNT on a sheet.'),
        'note',
      ),
    ],
    asks: [{ list: tileCounts, of: pour('TILECOUNT', blockOf(NAME, range)) }],
    dropDowns: [{ range, choices: { source: colourList }, strict: false }],
    marks: Object.entries(shades).map(([name, shade]): Mark => ({
      range,
      formula: `${cellAt(TOP, LEFT)}="${name}"`,
      shows: shade,
    })),
    landscape: true,
  };
}
