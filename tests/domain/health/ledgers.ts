import type { Book } from '../../../src/domain/book/book.ts';
import { type Day, isoDate, readDay } from '../../../src/domain/kernel/day.ts';
import { toCell } from '../../../src/domain/kernel/exact.ts';
import type { HealthFinding, Repair } from '../../../src/domain/health/finding.ts';
import { planPour } from '../../../src/domain/ledger/plan-pour.ts';
import { postBatch } from '../../../src/domain/ledger/post-batch.ts';
import { healthCheck } from '../../../src/domain/health/health-check.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { findDesign, findItem } from '../../../src/domain/book/find.ts';
import type { Cell } from '../../../src/workbook/port.ts';
import { table, type Tables, withRows } from '../../support/small-book.ts';
import { bookOf, sound } from '../label/label-book.ts';

export const TODAY = readDay('2024-06-01') ?? 0;
export const check = (tables: Tables): HealthFinding[] => healthCheck(bookOf(tables), TODAY, 'Ann');
export const kinds = (tables: Tables) => check(tables).map(({ kind, about }) => [kind, about]);

/** A repair as rows appended to the tables, and nothing else. */
export function repaired(tables: Tables, repair: Repair | undefined): Tables {
  if (repair === undefined) throw new Error('There is no repair.');
  const moves = repair.moves.map((move): Cell[] => [
    move.entry,
    isoDate(move.when),
    move.reason,
    move.item.name,
    toCell(move.quantity),
    move.lot,
    move.value === undefined ? '' : toCell(move.value),
    move.batch,
    move.by,
    move.note,
  ]);
  const batches = repair.batches.map((batch): Cell[] => [
    batch.batch,
    isoDate(batch.poured),
    batch.design,
    toCell(batch.bars),
    batch.good,
    batch.state,
  ]);
  return withRows(withRows(tables, 'LedgerLines', ...moves), 'Batches', ...batches);
}

/** One whole batch B1 of 4 bars, a leftover with it, and two bars sold. */
export const wholeLedger: Tables = {
  Materials: table('Material | Kind | Unit', ['Clear base', 'base', 'g']),
  Lots: table('Lot | Material | Received | Quantity | Paid', [
    'L1',
    'Clear base',
    '2024-01-01',
    500,
    50,
  ]),
  Molds: table('Mold | Makes | Cavities | Fill g', ['Tiles', 'tiles', 36, 25]),
  Colours: table('Colour | Ingredient | Amount | Measure', ['Tint', 'Clear base', 1, 'g']),
  Designs: table('Design | Labour minutes', ['Plain', 5]),
  Layers: table('Design | Layer | Part | Item | Per bar | Per', [
    'Plain',
    '1',
    'pour',
    'Tint',
    90,
    'g',
  ]),
  Batches: table('Batch | Poured | Design | Bars | Good | State', [
    'B1',
    '2024-02-01',
    'Plain',
    4,
    4,
    'posted',
  ]),
  LedgerLines: table(
    'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
    ['B1.01', '2024-02-01', 'used', 'Clear base', -400, 'L1', -40, 'B1', '', ''],
    ['B1.02', '2024-02-01', 'left over', 'Tint leftover', 40, 'B1', 4, 'B1', '', ''],
    ['B1.03', '2024-02-01', 'made', 'Plain', 4, 'B1', 36, 'B1', '', ''],
    ['S1', '2024-02-02', 'sold', 'Plain', -2, 'B1', -18, '', '', ''],
  ),
};

export const onHandOf = (book: Book, name: string) =>
  onHand(book, sound(findItem(book, name)), TODAY).toNumber();

/** All rows but one of Moves; 1 is the first. */
export function withoutMove(tables: Tables, row: number): Tables {
  return { ...tables, LedgerLines: (tables['LedgerLines'] ?? []).filter((_, at) => at !== row) };
}

/** Without one row, where there are so many. */
export function withoutRow(tables: Tables, [name, at]: readonly [string, number]): Tables {
  const [headers = [], ...rows] = tables[name] ?? [];
  const row = at % Math.max(1, rows.length);
  return { ...tables, [name]: [headers, ...rows.filter((_, index) => index !== row)] };
}

/** Without reversals of moves that are lost: such a ledger is no book. */
export function withoutLoose(tables: Tables): Tables {
  const [headers = [], ...rows] = tables['LedgerLines'] ?? [];
  const entries = new Set(rows.map(([entry]) => entry));
  const kept = rows.filter((row) => row[2] !== 'reversed' || entries.has(row[9] ?? ''));
  return { ...tables, LedgerLines: [headers, ...kept] };
}

/** With no Lot in any move of a material, so that a lost lot leaves a book that still reads. */
export function withoutLots(tables: Tables): Tables {
  const [headers = [], ...rows] = tables['LedgerLines'] ?? [];
  return {
    ...tables,
    LedgerLines: [headers, ...rows.map((row) => row.map((cell, at) => (at === 5 ? '' : cell)))],
  };
}

/** The whole ledger with a second batch, B2, just as our own posting writes it. */
export function withPosted(poured: Day, by: string): Tables {
  const book = bookOf(wholeLedger);
  const design = sound(findDesign(book, 'Plain'));
  const wanted = { design, bars: 1, poured, useLeftovers: true };
  const posted = sound(
    postBatch(
      book,
      {
        batch: 'B2',
        poured,
        plan: sound(planPour(book, wanted, TODAY)),
        good: 1,
        seconds: 0,
        lost: 0,
        minutes: undefined,
        weighed: new Map(),
        sparePieces: new Map(),
        leftoverG: new Map(),
        countIsOff: new Set(),
        by,
        note: '',
      },
      TODAY,
    ),
  );
  if (posted.kind === 'short') throw new Error('short');
  const { moves, batch } = posted.posting;
  return repaired(wholeLedger, { says: '', moves, batches: [batch] });
}
