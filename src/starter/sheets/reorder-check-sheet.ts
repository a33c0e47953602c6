import { cell, headerCells, inputCells, titleCells } from '../cells/answer-cells.ts';
import { asOfCells } from './costing-sheet.ts';
import { answered, shown } from '../blocks/answered.ts';
import {
  at,
  cellOn,
  fixedAt,
  type Formula,
  named,
  pour,
  unlessBlank,
  unlessFailed,
} from '../cells/formula.ts';
import { listColumn } from '../blocks/listed.ts';
import { textBeside } from '../cells/look-up.ts';
import { choose, given, largestOf, smallest, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import type { CellFormat, StarterCell, StarterChart, StarterSheet } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';
import { materialNames } from '../blocks/table-choices.ts';
import { oneCell, widths } from './weigh-sheet.ts';

const NAME = 'Reorder check';
const MATERIAL = 3;
const AS_OF = 4;
const GIVEN = 1;
const HEADERS = 6;
const FACTS = HEADERS + 1;
/** Its two answers stand side by side. */
const [USUAL, OWN] = [1, 2];
const WORDS = FACTS + 7;
const LAST_COLUMN = 6;
const PICTURES = WORDS + 2;
const PICTURE_ROWS = 17;
/** The simulated year behind the pictures: its number, then what the function answers. */
const WEEK = 8;
const LOWS = { usual: WEEK + 1, own: WEEK + 2 } as const;
const DRAWN = { usual: WEEK + 3, own: WEEK + 6 } as const;
const weeks = { row: FACTS, lines: 52 };
/** Where POUR.SERVICECHECK lists its lines, from 1 with its header. */
const from = { asked: 2, point: 3, service: 4, without: 5, trust: 6, words: 7, weeks: 8 };

/** Whether a reorder point keeps what it promises: both points, which to trust, and a year with each. */
export function reorderCheckSheet(material: string): StarterSheet {
  const words = { startRow: WORDS, startColumn: 0, endRow: WORDS, endColumn: LAST_COLUMN };
  return {
    name: NAME,
    group: 'answers',
    widths: widths([38, 18, 14, 8, 11, 11, 11, 3, 9, 12, 12, 14, 12, 12, 14, 12, 12]),
    heights: { [WORDS]: 50 },
    cells: [
      ...titleCells(
        NAME,
        'Plays your own days of use again, at random, to see how often stock would have lasted until the order came.',
      ),
      ...inputCells(MATERIAL, GIVEN, 'Material', material, 'text'),
      ...asOfCells(AS_OF),
      ...headerCells(HEADERS, 0, [
        ['Order again at or below', 'text'],
        ['Usual formula', 'grams'],
        ['Own days', 'grams'],
        ['Unit', 'text'],
      ]),
      ...facts(),
      cell(
        WORDS,
        0,
        unlessBlank(asked, 'Pick a material above.', unlessFailed(list.head, line(from.words, 2))),
        'wrapped',
      ),
      ...yearCells(),
    ],
    asks: [{ list, of: question() }],
    merges: [words],
    dropDowns: [
      { range: oneCell(MATERIAL, GIVEN), choices: { source: materialNames }, strict: false },
    ],
    charts: [yearChart('usual', 0), yearChart('own', 1)],
    landscape: false,
    prints: {
      startRow: 0,
      startColumn: 0,
      endRow: PICTURES + 2 * PICTURE_ROWS,
      endColumn: LAST_COLUMN,
    },
  };
}

const asked = fixedAt(MATERIAL, GIVEN);
const list = answered('serviceCheck');

/** The first line, which the figures rest on, lets the error of a question that failed through. */
const line = (row: number, column: number): Formula => shown(list, row - 1, column);

function question(): Formula {
  const material = cellOn(NAME, MATERIAL, GIVEN);
  const check = pour('SERVICECHECK', material, named(bookName), cellOn(NAME, AS_OF, GIVEN));
  return unlessBlank(material, '', check);
}

function facts(): StarterCell[] {
  const lines: readonly (readonly [string, number, CellFormat])[] = [
    ['Reorder point', from.point, 'grams'],
    ['Lasted, of 100 simulated waits', from.service, 'grams'],
    ['Asked for, of 100', from.asked, 'grams'],
    ['Days without stock in the year shown', from.without, 'whole'],
  ];
  const unit = textBeside(
    asked,
    columnCells('materials', 'material'),
    columnCells('materials', 'unit'),
  );
  const stock = pour('ONHAND', asked, named(bookName), fixedAt(AS_OF, GIVEN));
  const trusted = unlessFailed(
    list.head,
    choose(
      [list.at(from.trust - 1, OWN + 1), '=', value('yes')],
      value('Own days'),
      value('Usual formula'),
    ),
  );
  return [
    ...lines.flatMap(([name, row, format], index) => [
      cell(FACTS + index, 0, name, 'label'),
      ...[USUAL, OWN].map((column) =>
        cell(
          FACTS + index,
          column,
          unlessFailed(list.head, line(row, column + 1)),
          index === 0 ? 'strong' : 'plain',
          format,
        ),
      ),
    ]),
    cell(FACTS, OWN + 1, unit, 'plain', 'text'),
    cell(FACTS + lines.length + 1, 0, 'Trust', 'label'),
    cell(FACTS + lines.length + 1, USUAL, unlessBlank(asked, '', trusted), 'answer', 'text'),
    cell(FACTS + lines.length, 0, 'On hand', 'label'),
    cell(FACTS + lines.length, USUAL, unlessBlank(asked, '', stock), 'plain', 'grams'),
    cell(FACTS + lines.length, OWN + 1, unit, 'plain', 'text'),
  ];
}

/** The lowest stock of each week, apart as what lay there and what was missing, with the line to order at. */
function yearCells(): StarterCell[] {
  const drawn = (point: 'usual' | 'own', row: number): StarterCell[] => {
    const low = at(row, LOWS[point]);
    return [
      cell(row, DRAWN[point], given([low], largestOf(value(0), low)), 'plain', 'grams'),
      cell(row, DRAWN[point] + 1, given([low], smallest(value(0), low)), 'plain', 'stock'),
      cell(
        row,
        DRAWN[point] + 2,
        given([low], fixedAt(FACTS, point === 'usual' ? USUAL : OWN)),
        'plain',
        'grams',
      ),
    ];
  };
  return [
    cell(HEADERS - 1, WEEK, 'A simulated year, the lowest stock of each week', 'heading'),
    ...headerCells(HEADERS, WEEK, [
      ['Week', 'whole'],
      ['Usual', 'grams'],
      ['Own days', 'grams'],
      ['Usual: there', 'grams'],
      ['Missing', 'grams'],
      ['Order at', 'grams'],
      ['Own: there', 'grams'],
      ['Missing', 'grams'],
      ['Order at', 'grams'],
    ]),
    ...Array.from({ length: weeks.lines }, (_, index) => {
      const row = weeks.row + index;
      const low = (column: number) => {
        const stock = line(from.weeks + index, column);
        return index === 0 ? unlessFailed(list.head, stock) : stock;
      };
      return [
        cell(row, WEEK, index + 1, 'plain', 'whole'),
        cell(row, LOWS.usual, low(2), 'plain', 'stock'),
        cell(row, LOWS.own, low(3), 'plain', 'stock'),
        ...drawn('usual', row),
        ...drawn('own', row),
      ];
    }).flat(),
  ];
}

function yearChart(point: 'usual' | 'own', place: number): StarterChart {
  const top = PICTURES + place * PICTURE_ROWS;
  const which = point === 'usual' ? 'the usual formula' : 'your own days';
  const series = ['On the shelf', 'Missing', 'Order at'].map((name, index) => ({
    name,
    along: listColumn(weeks, WEEK),
    values: listColumn(weeks, DRAWN[point] + index),
  }));
  return {
    kind: 'lines',
    title: `A year of stock with the point of ${which}`,
    description: `The lowest stock of each simulated week, the level to order at, and below nothing what was missing; with the reorder point of ${which}. Both years have the same days of use.`,
    place: {
      startRow: top,
      startColumn: 0,
      endRow: top + PICTURE_ROWS - 2,
      endColumn: LAST_COLUMN,
    },
    across: 'Week',
    up: 'Stock',
    series,
  };
}
