import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findItem } from '../../../src/domain/book/find.ts';
import { Exact } from '../../../src/domain/kernel/exact.ts';
import { postStocktake } from '../../../src/domain/ledger/stocktake.ts';
import { onHand } from '../../../src/domain/stock/on-hand.ts';
import { stockValue } from '../../../src/domain/stock/valuation.ts';
import { changeForStocktake } from '../../../src/workbook/change.ts';
import { findTables } from '../../../src/workbook/find-tables.ts';
import { applyChange } from '../../support/apply-change.ts';
import { post, readTables, sure } from '../../support/ledger-of.ts';
import { day, pourOf } from '../../support/pour-of.ts';
import { table, tableData, type Tables, workshop } from '../../support/small-book.ts';

const TODAY = day('2024-03-10');
const tables = post(workshop, pourOf('Tide Pool', 12), TODAY)?.after ?? workshop;

function count(counted: Readonly<Record<string, string>>, from: Tables = tables) {
  const book = readTables(from);
  const counts = Object.entries(counted).map(([name, amount]) => ({
    item: sure(findItem(book, name)),
    counted: new Exact(amount),
  }));
  return postStocktake(book, { id: 'K1', day: TODAY, counts, by: '' });
}

const after = (counted: Readonly<Record<string, string>>): Tables =>
  applyChange(
    tables,
    sure(changeForStocktake(sure(count(counted)), findTables(tableData(tables)))),
  );

describe('postStocktake', () => {
  it('writes nothing where shelf and ledger agree', () => {
    const posting = sure(count({ Box: '38' }));
    expect([posting.differences, posting.moves]).toEqual([[], []]);
  });

  it('takes what is missing from the lot picked first, at its cost', () => {
    // 2 of the 38 boxes left of 50 for 20.
    const { differences, moves } = sure(count({ Box: '36' }));
    expect(
      moves.map(({ reason, quantity, lot, value }) => [
        reason,
        quantity.toString(),
        lot,
        value.toString(),
      ]),
    ).toEqual([['counted', '-2', 'B1', '-0.8']]);
    expect(differences[0]?.difference.toString()).toBe('-2');
  });

  it('puts what was found with the newest lot', () => {
    const { moves } = sure(count({ 'White base': '5000' }));
    expect(moves.map(({ lot }) => lot)).toEqual(['W1']);
    expect(moves[0]?.quantity.isPositive()).toBe(true);
  });

  it.each([
    // A came first, was best before last and stands last in picking order; B is the newest, 2.00 each.
    ['FIFO', '20'],
    ['Average', '15'],
  ])('writes for what was found what the stock gains (%s)', (valuation, value) => {
    const lots: Tables = {
      Settings: table('Setting | Value', ['Valuation', valuation]),
      Materials: table('Material | Kind | Unit', ['Clay', 'extra', 'g']),
      Lots: table(
        'Lot | Material | Received | Quantity | Paid | Best before',
        ['A', 'Clay', '2024-01-01', 100, 100, '2025-12-31'],
        ['B', 'Clay', '2024-01-02', 100, 200, '2025-01-31'],
      ),
      LedgerLines: table(
        'Entry | When | Reason | Material | Quantity | Lot | Value | Batch | By | Note',
      ),
    };
    const posting = sure(count({ Clay: '210' }, lots));
    expect(posting.moves.map((move) => [move.lot, move.value.toString()])).toEqual([['B', value]]);
    expect(posting.differences[0]?.value.toString()).toBe(value);
    const change = sure(changeForStocktake(posting, findTables(tableData(lots))));
    const worth = (of: Tables): Exact => {
      const book = readTables(of);
      return sure(stockValue(book, sure(findItem(book, 'Clay')), TODAY));
    };
    expect(worth(applyChange(lots, change)).minus(worth(lots)).toString()).toBe(value);
  });

  it('values soap that the ledger never had by its recipe', () => {
    // A Mist tile is 25/36 g: 15 parts Slate (97 % clear, 3 % mica at 0.20) to 10 of white at 0.009.
    // Clear is C1 at 0.008 and C2 at 0.009; C2 went first, so what is left is worth between the two.
    const { moves } = sure(count({ 'Mist × Tiles': '36' }));
    const value = moves[0]?.value.toNumber() ?? 0;
    const atClear = (cost: number) => 25 * (0.6 * (0.97 * cost + 0.03 * 0.2) + 0.4 * 0.009);
    expect(value).toBeGreaterThanOrEqual(atClear(0.008) - 0.005);
    expect(value).toBeLessThanOrEqual(atClear(0.009) + 0.005);
  });

  it('refuses less than nothing', () => {
    const result = count({ Box: '-1' });
    expect(!result.ok && result.failure.sentence).toMatch(/Box is counted as -1/);
  });

  it('leaves the ledger at what was counted, whatever was counted', () => {
    const names = [
      'Clear base',
      'White base',
      'Orange oil',
      'Box',
      'Tide Pool',
      'Mist leftover',
      'Mist × Tiles',
    ];
    const amount = fc
      .integer({ min: 0, max: 6_000_000 })
      .map((n) => new Exact(n).div(1000).toString());
    fc.assert(
      fc.property(fc.constantFrom(...names), amount, (name, amountCounted) => {
        const book = readTables(after({ [name]: amountCounted }));
        expect(onHand(book, sure(findItem(book, name)), TODAY).toString()).toBe(amountCounted);
      }),
      { numRuns: 40 },
    );
  });
});
