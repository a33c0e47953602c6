import { describe, expect, it } from 'vitest';
import { undoBatch } from '../../../src/domain/ledger/undo-batch.ts';
import { readTables, post, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { withRows, workshop } from '../../support/small-book.ts';

const TODAY = day('2024-03-09');
const TOMORROW = day('2024-03-10');
const poured =
  post(workshop, pourOf('Tide Pool', 12, { poured: TOMORROW }), TOMORROW)?.after ?? workshop;

describe('undoBatch', () => {
  it('takes back a batch that a partner dated tomorrow on that day, with stock as of then', () => {
    const { moves, changes } = sure(undoBatch(readTables(poured), 'B1', TODAY, ''));
    expect(new Set(moves.map(({ when }) => when))).toEqual(new Set([TOMORROW]));
    const bars = changes.find(({ item }) => item.kind === 'bars');
    expect([bars?.before.toNumber(), bars?.after.toNumber()]).toEqual([12, 0]);
  });

  it('refuses where a sale of a later day needs the bars', () => {
    const sold = withRows(poured, 'LedgerLines', [
      'S1',
      '2024-03-12',
      'sold',
      'Tide Pool',
      -5,
      'B1',
      '',
      '',
      '',
      '',
    ]);
    const undone = undoBatch(readTables(sold), 'B1', TODAY, '');
    expect(!undone.ok && undone.failure.sentence).toBe(
      "Batch B1 can't be undone, since 5 of Tide Pool it gave are no longer in stock. Undo the sale or pour that took them first.",
    );
  });
});
