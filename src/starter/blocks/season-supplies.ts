import { cell, headerCells } from '../cells/answer-cells.ts';
import { answered, type Ask, shown, shownFirst } from './answered.ts';
import { dateOfIso } from '../cells/dates.ts';
import { at, named, pour, sumOf, unlessFailed } from '../cells/formula.ts';
import { moreNote } from './listed.ts';
import { textBeside } from '../cells/look-up.ts';
import { given, minus } from '../cells/native.ts';
import { bookName } from '../cells/names.ts';
import { onSeason, SEASON, type SeasonAsked, UNPLANNED } from './season-places.ts';
import { unlessUnplanned } from './season-plan.ts';
import type { StarterCell } from '../cells/sheet.ts';
import { columnCells } from '../cells/table-cells.ts';

const { first, lines } = SEASON.supplies;

/** What POUR.SUPPLIES lists, its columns from 1. */
export const supplyColumns = {
  material: 1,
  gross: 2,
  onHand: 3,
  packs: 5,
  orderBy: 6,
  cost: 7,
} as const;
const from = supplyColumns;
const supplies = answered('supplies');

export const supplyAsk: Ask = {
  list: supplies,
  of: unlessUnplanned(pour('SUPPLIES', named(bookName), onSeason.from, onSeason.reuse)),
};

/** What the plan takes of each material, and what to buy of it by when. */
export function supplyCells(asked: SeasonAsked): StarterCell[] {
  return [
    cell(first - 2, 0, 'What to buy', 'heading'),
    cell(
      first - 2,
      2,
      moreNote(suppliesBeyond, 'put POUR.SUPPLIES on a sheet of its own.'),
      'note',
    ),
    ...headerCells(first - 1, 0, [
      ['Material', 'text'],
      ['Order by', 'date'],
      ['Plan takes', 'grams'],
      ['On hand', 'grams'],
      ['Days to order', 'whole'],
      ['Packs', 'whole'],
      ['Cost', 'money'],
      ['Supplier', 'text'],
    ]),
    ...Array.from({ length: lines }, (_, index) => supplyRow(index, asked)).flat(),
  ];
}

function supplyRow(index: number, asked: SeasonAsked): StarterCell[] {
  const row = first + index;
  const line = (column: number) => shown(supplies, index + 1, column);
  const [material, orderBy] = [at(row, 0), at(row, 1)];
  const name = index === 0 ? shownFirst(supplies, from.material, UNPLANNED) : line(from.material);
  const supplier = textBeside(
    material,
    columnCells('materials', 'material'),
    columnCells('materials', 'supplier'),
  );
  return [
    cell(row, 0, name, 'plain', 'text'),
    cell(row, 1, shown(supplies, index + 1, from.orderBy, dateOfIso), 'plain', 'date'),
    cell(row, 2, line(from.gross), 'plain', 'grams'),
    cell(row, 3, line(from.onHand), 'plain', 'grams'),
    cell(row, 4, given([orderBy, asked.today], minus(orderBy, asked.today)), 'plain', 'whole'),
    cell(row, 5, line(from.packs), 'strong', 'whole'),
    cell(row, 6, line(from.cost), 'plain', 'money'),
    cell(row, 7, supplier, 'plain', 'text'),
  ];
}

/** What all of it costs, and the names that find no room in the lines shown. */
export const suppliesHead = supplies.head;
export const costOfSupplies = unlessFailed(supplies.head, sumOf(supplies.column(from.cost)));
export const suppliesBeyond = supplies.beyond(lines, from.material);
