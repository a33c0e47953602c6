import { cell, headerCells } from './answer-cells.ts';
import { dateOfIso } from './dates.ts';
import { at, type Formula, named, pour, unlessBlank } from './formula.ts';
import { moreNote } from './listed.ts';
import { textBeside } from './look-up.ts';
import { blank, given, minus, pick, unlessError } from './native.ts';
import { bookName } from './names.ts';
import { SEASON, type SeasonAsked } from './season-places.ts';
import { firstOrUnplanned } from './season-plan.ts';
import type { StarterCell } from './sheet.ts';
import { columnCells } from './table-cells.ts';

const { first, lines } = SEASON.supplies;

/** What POUR.SUPPLIES lists, its columns from 1. */
const from = { material: 1, gross: 2, onHand: 3, net: 4, packs: 5, orderBy: 6, cost: 7 };

/** What the plan takes of each material, and what to buy of it by when. */
export function supplyCells(asked: SeasonAsked): StarterCell[] {
  return [
    cell(first - 2, 0, 'What to buy', 'heading'),
    cell(
      first - 2,
      2,
      moreNote(
        pick(supplies(asked), lines + 2, from.material),
        'More materials than these: put POUR.SUPPLIES on a sheet of its own.',
      ),
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

const supplies = ({ from: day, reuse }: SeasonAsked): Formula =>
  pour('SUPPLIES', named(bookName), day, reuse);

function supplyRow(index: number, asked: SeasonAsked): StarterCell[] {
  const row = first + index;
  const line = (column: number): Formula => pick(supplies(asked), index + 2, column);
  const [material, iso, orderBy] = [at(row, 0), at(row, SEASON.unseen), at(row, 1)];
  const rest = (column: number): Formula =>
    unlessBlank(material, '', unlessError(line(column), blank));
  const name =
    index === 0 ? firstOrUnplanned(line(from.material)) : unlessError(line(from.material), blank);
  const supplier = textBeside(
    material,
    columnCells('materials', 'material'),
    columnCells('materials', 'supplier'),
  );
  return [
    cell(row, 0, name, 'plain', 'text'),
    cell(row, SEASON.unseen, rest(from.orderBy), 'plain', 'unseen'),
    cell(row, 1, dateOfIso(iso), 'plain', 'date'),
    cell(row, 2, rest(from.gross), 'plain', 'grams'),
    cell(row, 3, rest(from.onHand), 'plain', 'grams'),
    cell(row, 4, given([orderBy, asked.today], minus(orderBy, asked.today)), 'plain', 'whole'),
    cell(row, 5, rest(from.packs), 'strong', 'whole'),
    cell(row, 6, rest(from.cost), 'plain', 'money'),
    cell(row, 7, supplier, 'plain', 'text'),
  ];
}
