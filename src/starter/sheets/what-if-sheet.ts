import { cell, headerCells, titleCells } from '../cells/answer-cells.ts';
import type { Cell } from '../../workbook/port.ts';
import { asOfCells } from './costing-sheet.ts';
import { orToday } from '../cells/dates.ts';
import { at, cellOn, type Formula } from '../cells/formula.ts';
import { whatIfName } from '../cells/names.ts';
import { otherPlan } from '../blocks/other-plan.ts';
import type { StarterCell, StarterSheet } from '../cells/sheet.ts';
import { soapOrMaterialList } from './lists-sheet.ts';
import { designNames, moldNames } from '../blocks/table-choices.ts';
import { costLinesAsk, oneBar, type WhatIfAsked } from '../blocks/what-if-bar.ts';
import { otherAsks, theSeason } from '../blocks/what-if-season.ts';
import { oneCell, widths } from './weigh-sheet.ts';

/** What the demo supposes; a maker starts with nothing supposed. */
export interface Supposed {
  readonly design: string;
  readonly mold: string;
  readonly base: string;
  readonly moreBars: number;
  readonly pricesUp: number;
  readonly lateDays: number;
  readonly lostFills: number;
}

export const nothingSupposed: Supposed = {
  design: '',
  mold: '',
  base: '',
  moreBars: 0,
  pricesUp: 0,
  lateDays: 0,
  lostFills: 0,
};

const AS_OF = 3;
const GIVEN = 1;
const DESIGN = 4;
const BARS = 5;
const MORE = 6;
const UP = 7;
const LATE = 8;
const LOST = 9;
const MOLD = 10;
const BASE = 11;
/** Beyond what prints. */
const UNSEEN = 9;

/** Suppose more bars, dearer supplies, late suppliers or lost fills: what it does, and nothing is written. */
export function whatIfSheet(supposed: Supposed): StarterSheet {
  const asked = askedAt(at);
  const there = askedAt((row, column) => cellOn(whatIfName, row, column));
  return {
    name: whatIfName,
    group: 'answers',
    widths: widths([34, 20, 14, 14, 16, 14]),
    cells: [
      ...titleCells(
        whatIfName,
        'Change a sand-coloured cell and see cost, money and days move. Nothing here touches stock or ledger.',
      ),
      ...asOfCells(AS_OF),
      cell(AS_OF, UNSEEN, orToday(AS_OF, GIVEN), 'plain', 'unseen'),
      ...questions(supposed),
      ...otherPlan(asked.more),
      ...oneBar(asked),
      ...theSeason(asked),
      ...headerCells(13, 1, [
        ['As it is', 'money'],
        ['What if', 'money'],
        ['Difference', 'money'],
      ]),
    ],
    asks: [costLinesAsk(there), ...otherAsks(there.from)],
    dropDowns: [
      { range: oneCell(DESIGN, GIVEN), choices: { source: designNames }, strict: false },
      { range: oneCell(MOLD, GIVEN), choices: { source: moldNames }, strict: false },
      { range: oneCell(BASE, GIVEN), choices: { source: soapOrMaterialList }, strict: false },
    ],
    landscape: false,
    prints: { startRow: 0, startColumn: 0, endRow: 62, endColumn: 5 },
  };
}

/** The cells asked, as its own sheet or another one names them. */
const askedAt = (place: (row: number, column: number) => Formula): WhatIfAsked => ({
  from: place(AS_OF, GIVEN),
  today: place(AS_OF, UNSEEN),
  design: place(DESIGN, GIVEN),
  bars: place(BARS, GIVEN),
  more: place(MORE, GIVEN),
  up: place(UP, GIVEN),
  late: place(LATE, GIVEN),
  lost: place(LOST, GIVEN),
  mold: place(MOLD, GIVEN),
  base: place(BASE, GIVEN),
});

function questions(supposed: Supposed): StarterCell[] {
  const lines: readonly (readonly [number, string, Cell, string])[] = [
    [DESIGN, 'Design', supposed.design, ''],
    [BARS, 'Good bars in one batch', 12, ''],
    [MORE, 'More bars', supposed.moreBars, 'in that batch, and in each line of the plan'],
    [UP, 'Supplies cost more, %', supposed.pricesUp, 'as if all stock had been bought at it'],
    [LATE, 'Suppliers late, days', supposed.lateDays, ''],
    [LOST, 'Fills lost', supposed.lostFills, 'spoilt and melted again from fresh base'],
    [MOLD, 'of the mold', supposed.mold, ''],
    [BASE, 'in the base', supposed.base, ''],
  ];
  return lines.flatMap(([row, name, holds, aside]) => [
    cell(row, 0, name, 'label'),
    cell(row, GIVEN, holds, 'input', typeof holds === 'number' ? 'number' : 'text'),
    cell(row, GIVEN + 1, aside, 'aside'),
  ]);
}
