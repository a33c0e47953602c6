import type { Book } from '../../src/domain/book/book.ts';
import { findMold, findSoap } from '../../src/domain/book/find.ts';
import { postShaping } from '../../src/domain/ledger/post-shaping.ts';
import type { ShapedAhead } from '../../src/domain/ledger/pour.ts';
import { leftoversOnHand } from '../../src/domain/recipe/leftovers-on-hand.ts';
import { planPieces } from '../../src/domain/recipe/plan-pieces.ts';
import { changeForBatch } from '../../src/workbook/change.ts';
import { findTables } from '../../src/workbook/find-tables.ts';
import { applyChange } from './apply-change.ts';
import { type Posted, readTables, sure } from './ledger-of.ts';
import { tableData, type Tables } from './small-book.ts';

/** Pieces to shape: how many of which soap, in which mold. */
export type PiecesToShape = readonly (readonly [soap: string, mold: string, pieces: number])[];

/** Pieces shaped ahead as planned; say what differs. */
export const shapedOf =
  (
    wanted: PiecesToShape,
    {
      useLeftovers = false,
      ...differs
    }: Partial<Omit<ShapedAhead, 'plan'>> & { useLeftovers?: boolean } = {},
  ) =>
  (book: Book, today: number): ShapedAhead => ({
    batch: 'S1',
    poured: today,
    plan: sure(
      planPieces(
        wanted.map(([soap, mold, pieces]) => ({
          soap: sure(findSoap(book, soap)),
          mold: sure(findMold(book, mold)),
          pieces,
        })),
        book.settings,
        leftoversOnHand(book, today, useLeftovers),
      ),
    ),
    minutes: undefined,
    weighed: new Map(),
    sparePieces: new Map(),
    leftoverG: new Map(),
    countIsOff: new Set(),
    by: 'me',
    note: '',
    ...differs,
  });

/** What shaping ahead wrote, and the tables after it; undefined where stock is short or it is refused. */
export function shape(
  tables: Tables,
  shaped: (book: Book, today: number) => ShapedAhead,
  today: number,
): Posted | undefined {
  const before = readTables(tables);
  const result = postShaping(before, shaped(before, today), today);
  if (!result.ok || result.value.kind === 'short') return undefined;
  const { posting } = result.value;
  const change = sure(changeForBatch(posting, findTables(tableData(tables))));
  return { posting, before, after: applyChange(tables, change) };
}
