import { cell } from '../cells/answer-cells.ts';
import { answered, type Ask } from './answered.ts';
import { at, type Formula, less, named, pour, sumOf, unlessBlank } from '../cells/formula.ts';
import { numberBeside, sumEnding } from '../cells/look-up.ts';
import { given, minus, over, plusCell, times, unlessError, value } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import type { CellFormat, StarterCell } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';

/** The cells of the What if sheet that say what is supposed. */
export interface WhatIfAsked {
  readonly from: Formula;
  readonly today: Formula;
  readonly design: Formula;
  readonly bars: Formula;
  readonly more: Formula;
  /** Percent. */
  readonly up: Formula;
  readonly late: Formula;
  readonly lost: Formula;
  readonly mold: Formula;
  readonly base: Formula;
}

const FIRST = 14;
/** Worked with but not seen. */
const MATERIAL = { row: 4, column: 19 } as const;

/** What one bar of the design costs, and what the lost fills do. */
export function oneBar(asked: WhatIfAsked): StarterCell[] {
  const { design, bars, more, from, up, lost, mold, base } = asked;
  const asIs = pour('COSTPERBAR', design, named(bookName), bars, from);
  const larger = pour('COSTPERBAR', design, named(bookName), plusCell(bars, more), from);
  const rise = times(at(MATERIAL.row, MATERIAL.column), over(up, value(100)));
  // A blank would be one fill to some hosts and none to others.
  const grams = pour('BASEPERMOLD', mold, named(bookName), plusCell(lost, value(0)));
  const perG = pour('UNITCOST', base, named(bookName), from);
  const molds = columnCells('molds', 'mold');
  const ofMold = (key: 'price' | 'lifeFills' | 'setMinutes') =>
    numberBeside(mold, molds, columnCells('molds', key));
  const wear = over(times(ofMold('price'), lost), ofMold('lifeFills'));
  const dearer = plusCell(value(1), over(up, value(100)));
  const lines: readonly (readonly [string, Formula | '', Formula, CellFormat])[] = [
    [
      'Cost of one bar',
      unlessBlank(design, '', asIs),
      unlessBlank(design, '', plusCell(larger, rise)),
      'money',
    ],
    ['Lost fills: base to melt again, g', '', unlessBlank(mold, '', grams), 'grams'],
    [
      'Lost fills: base and mold wear',
      '',
      unlessBlank(
        base,
        '',
        given(
          [at(FIRST + 1, 2)],
          plusCell(times(times(at(FIRST + 1, 2), perG), dearer), unlessError(wear, value(0))),
        ),
      ),
      'money',
    ],
    ['Lost fills: minutes to set again', '', unlessBlank(mold, '', ofMold('setMinutes')), 'whole'],
  ];
  return [
    cell(MATERIAL.row, MATERIAL.column, materialOfLarger(), 'plain', 'unseen'),
    cell(FIRST - 2, 0, 'One bar', 'heading'),
    ...lines.flatMap(([name, now, then, format], index) => [
      cell(FIRST + index, 0, name, 'label'),
      cell(FIRST + index, 1, now, 'plain', format),
      cell(FIRST + index, 2, then, 'strong', format),
      ...(now === ''
        ? []
        : [
            cell(
              FIRST + index,
              3,
              less(at(FIRST + index, 2), at(FIRST + index, 1)),
              'plain',
              format,
            ),
          ]),
    ]),
  ];
}

/** The cost lines of the larger batch. */
const costLines = answered('otherCostLines');

/** `asked` are cells of the What if sheet, as another sheet names them. */
export const costLinesAsk = ({ design, bars, more, from }: WhatIfAsked): Ask => ({
  list: costLines,
  of: unlessBlank(
    design,
    '',
    pour('COSTLINES', design, named(bookName), plusCell(bars, more), from),
  ),
});

/** What the materials of one good bar of the larger batch cost, those of lost bars with them. */
function materialOfLarger(): Formula {
  const [names, amounts] = [costLines.column(1), costLines.column(2)];
  const line = (name: string) => numberBeside(value(name), names, amounts);
  const lost = line('Lost bars');
  const all = sumOf(amounts);
  const known = ['Labour', 'Setup', 'Overhead', 'Lost bars'].map(line);
  const others = plusCell(known.reduce(plusCell), sumEnding(names, ' wear', amounts));
  // Of what lost bars took, materials have the share that they have of the others.
  const material = over(times(minus(all, others), all), minus(all, lost));
  return unlessBlank(costLines.head, '', material);
}
