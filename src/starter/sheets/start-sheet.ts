import { cell, titleCells } from '../cells/answer-cells.ts';
import { allOf, pour } from '../cells/formula.ts';
import { noteOf, tableSheets } from '../cells/names.ts';
import { firstTables, tables } from '../../workbook/schema.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { widths } from './weigh-sheet.ts';

/** Where the Book cell stands on the first sheet. */
export const bookPlace = { sheet: 'Start here', row: 3, column: 1 } as const;

/** The first sheet: how to begin, the Book cell, where everything is, and what burns. */
export function startSheet(demo: boolean): StarterSheet {
  const parts = [
    block('How to begin', demo ? demoSteps : emptySteps),
    block(
      'Sheets you type in',
      tableSheets
        .filter(({ group }) => group === 'yours')
        .map((place) => [place.sheet, noteOf(place)]),
    ),
    block('Sheets that answer', answerSheets),
    block(
      'Sheets the pane writes',
      tableSheets
        .filter(({ group }) => group === 'ledger')
        .map((place) => [place.sheet, noteOf(place)]),
    ),
    block('Take care', cautions),
  ];
  const lines: StarterCell[] = [];
  let row = bookPlace.row + 3;
  for (const part of parts) {
    lines.push(...part.map((each) => ({ ...each, row: each.row + row })));
    row += Math.max(...part.map((each) => each.row)) + 2;
  }
  const book = pour('BOOK', ...tableOrder.map((kind) => allOf(tables[kind].name)));
  return {
    name: bookPlace.sheet,
    group: 'start',
    widths: widths([18, 96]),
    cells: [
      ...titleCells(
        'Pour Ledger',
        'What to weigh out, what a bar costs, what to reorder, and a ledger of every pour.',
      ),
      cell(bookPlace.row, 0, 'Book', 'label'),
      cell(bookPlace.row, bookPlace.column, book, 'answer', 'text'),
      cell(
        bookPlace.row + 1,
        1,
        'Reads every table for all formulas. It names a row that is wrong: row 1 is the first below the headers.',
        'note',
      ),
      ...lines,
    ],
    landscape: false,
  };
}

const tableOrder = Object.keys(tables) as (keyof typeof tables)[];

type Lines = readonly (readonly [string, string])[];

/** A heading and its lines, from row 0. */
function block(heading: string, lines: Lines): StarterCell[] {
  return [
    cell(0, 0, heading, 'heading'),
    cell(0, 1, '', 'heading'),
    ...lines.flatMap(([name, text], index) => [
      cell(index + 1, 0, name, 'label'),
      cell(index + 1, 1, text, 'plain', 'text'),
    ]),
  ];
}

/** What must be typed before the first pour. */
const firstSheets = tableSheets
  .filter(({ kind }) => firstTables.includes(kind))
  .map(({ sheet }) => sheet);

const inOrder = (names: readonly string[]): string =>
  `${names.slice(0, -1).join(', ')} and ${names.at(-1) ?? ''}`;

const steps: Lines = [
  ['1', `Fill in ${inOrder(firstSheets)}, in this order.`],
  ['', "Above each column stands what it wants. What you don't know may stay blank."],
  ['2', 'The pane beside the sheet leads to each of them, and to any cell that must be mended.'],
  ['3', 'There, choose a design and how many bars, and weigh out from top to bottom.'],
  ['4', 'Record the pour: stock is taken lot by lot. Undo takes it back.'],
];
const demoSteps: Lines = [
  ['Invented', 'All here is made up: workshop, suppliers, prices, bars and fairs.'],
  [
    'Its days',
    'A year of ledger up to the days before this copy was made; sales before it are weekly sums.',
  ],
  ['Blank copy', 'Start your own in pour-ledger-empty.xlsx: the same sheets without the demo.'],
  ...steps,
];
const emptySteps: Lines = steps;

const answerSheets: Lines = [
  ['What to weigh', 'What to weigh out for a batch, in pouring order, and what stock is short of.'],
  [
    'Costing',
    'What a bar of each design costs, where the money goes, and how batch size changes it.',
  ],
  ['Pricing', "What to ask for a bar, what today's price leaves, and one price for a set of bars."],
  [
    'Fair prices',
    'What a fair leaves at each price and number of bars sold, and where it breaks even.',
  ],
  ['Fair results', 'What each fair took, cost and brought home.'],
  ['Batch check', 'What a batch should have used, what it used, and why the cost differs.'],
  ['Reorder', 'What is on the shelf, what it is worth, and what to order now.'],
  [
    'Reorder check',
    'Whether a reorder point lasts until the order comes, tried on simulated years.',
  ],
  ['Season', 'Bars still to make for the plan, what to buy by when, and the days to pour.'],
  ['Shopping', 'What to order for the season, by supplier, on one page; money by week.'],
  ['Calendar', 'The season as a month: pours and fairs.'],
  ['Forecast', 'Bars sold of each design by month, and the months ahead.'],
  ['What if', 'More bars, dearer supplies, late suppliers, lost fills: what they would do.'],
  ['Label', 'Ingredients, net weight and checks of a design; prints the label.'],
  [
    'Recall',
    'Every batch that a lot went into, with what was sold and is on hand of their designs.',
  ],
  ['Mosaic', 'Lay out a bar tile by tile and count the tiles of each colour.'],
];

const cautions: Lines = [
  [
    'Hot base',
    'Melted soap base burns skin: melt in short bursts, stir between them, never leave it.',
  ],
  ['Alcohol', 'Rubbing alcohol catches fire: no flame or hot plate near it, and open a window.'],
  ['Mica', "Don't breathe mica or other dry powder: open jars away from your face."],
  ['Fragrance', 'Undiluted it irritates skin and eyes and can burn: gloves, and no flame near it.'],
  ['Your local rules', 'They come first: on making, labelling and selling soap.'],
];
